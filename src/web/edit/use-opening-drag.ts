/** The opening that is picked, moved on the drawing by hand or by keys: the whole of it, or one of its sides. */
import { useCallback, useMemo, useRef, useState } from "react";
import type { Design } from "../../design.ts";
import type { Rect } from "../../geometry/rect.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { Elevation } from "../drawing/elevation.ts";
import type { Hold } from "../drawing/use-view.ts";
import type { Pick } from "../picks/pick.ts";
import type { Edit } from "../sheet/use-project.ts";
import { placeOpening } from "./opening.ts";
import { type Dragged, dragged, type Grip, snapLines } from "./snap.ts";

/** Pixels: how near a press takes a side, and how near a line draws. */
const SIDE = { mouse: 7, touch: 16 };
const DRAWS = 7;

/** Even steps where no line draws (mm): what a hand on a tape sets out. */
const STEP_MM = { mm: 5, "feet-inch": 6.35 };

export interface OpeningDrag {
  /** Where the opening is held, before the facade has followed. */
  readonly ghost: (Dragged & { readonly face: string }) | undefined;
  grab(at: readonly [x: number, y: number], k: number, touch: boolean): Hold | undefined;
  /** Moves the picked opening by so much; false where none is picked. */
  nudge(by: readonly [number, number]): boolean;
}

export interface OpeningDragOptions {
  readonly design: Design | undefined;
  readonly document: unknown;
  readonly elevation: Elevation | undefined;
  readonly pick: Pick | undefined;
  readonly units: "mm" | "feet-inch";
  onEdit(edit: Edit): void;
}

export function useOpeningDrag(options: OpeningDragOptions): OpeningDrag {
  const { design, elevation, pick, units, onEdit } = options;
  const [ghost, setGhost] = useState<OpeningDrag["ghost"]>();
  const drags = useRef(0);
  const latest = useRef(options);
  latest.current = options;
  const picked = useMemo(() => {
    if (!design || pick?.kind !== "opening") return undefined;
    const face = design.facade.faces.find(({ id }) => id === pick.face);
    const opening = face?.openings.find(({ id }) => id === pick.id);
    const given = design.project.faces
      .find(({ id }) => id === pick.face)
      ?.openings.find(({ id }) => id === pick.id);
    return (
      opening &&
      given && { face: pick.face, id: pick.id, rect: opening.region, standsOnBase: given.toBase === true }
    );
  }, [design, pick]);

  const place = useCallback(
    (rect: Rect, of: { readonly face: string; readonly id: string; readonly merge?: string }) => {
      onEdit({
        operations: placeOpening(latest.current.document, of, rect),
        says: message("page.edit.opening", { id: of.id }),
        ...(of.merge !== undefined && { merge: of.merge }),
      });
    },
    [onEdit],
  );

  const grab = useCallback(
    (at: readonly [number, number], k: number, touch: boolean): Hold | undefined => {
      const placed = picked && elevation?.faces.find(({ face }) => face.id === picked.face);
      if (!design || !picked || !placed) return undefined;
      const grip = gripAt(picked.rect, {
        at: [at[0] - placed.dx, at[1]],
        near: (touch ? SIDE.touch : SIDE.mouse) / k,
      });
      if (!grip) return undefined;
      const held: Grip = picked.standsOnBase && grip.y !== "high" ? { ...grip, y: "none" } : grip;
      const lines = snapLines(design, picked);
      drags.current += 1;
      const merge = `drag ${drags.current}`;
      let now: Dragged | undefined;
      return {
        move(by, free) {
          const snapping = free
            ? { lines: { x: [], y: [] }, reach: 0, step: 1 }
            : { lines, reach: DRAWS / k, step: STEP_MM[units] };
          now = dragged(picked.rect, { grip: held, by: [by[0] / k, -by[1] / k], snapping });
          setGhost({ ...now, face: picked.face });
          place(now.rect, { ...picked, merge });
        },
        drop() {
          setGhost(undefined);
        },
        cancel() {
          setGhost(undefined);
          if (now) place(picked.rect, { ...picked, merge });
        },
      };
    },
    [design, elevation, picked, units, place],
  );

  const nudge = useCallback(
    (by: readonly [number, number]): boolean => {
      if (!picked) return false;
      const up = picked.standsOnBase ? 0 : by[1];
      const { x, y } = picked.rect;
      place(
        { x: [snap(x[0] + by[0]), snap(x[1] + by[0])], y: [snap(y[0] + up), snap(y[1] + up)] },
        { ...picked, merge: `nudge ${picked.face} ${picked.id}` },
      );
      return true;
    },
    [picked, place],
  );
  return { ghost, grab, nudge };
}

/** A side, a corner, or the whole; undefined beside the opening. */
function gripAt(
  { x, y }: Rect,
  { at, near }: { at: readonly [number, number]; near: number },
): Grip | undefined {
  if (at[0] < x[0] - near || at[0] > x[1] + near || at[1] < y[0] - near || at[1] > y[1] + near)
    return undefined;
  const side = (value: number, [low, high]: readonly [number, number]): "low" | "high" | "none" =>
    Math.abs(value - low) <= near ? "low" : Math.abs(value - high) <= near ? "high" : "none";
  const grip = { x: side(at[0], x), y: side(at[1], y) };
  return grip.x === "none" && grip.y === "none" ? { x: "both", y: "both" } : grip;
}
