/** The thing that is picked, moved on the drawing by hand or by keys. */
import { useCallback, useMemo, useRef, useState } from "react";
import { flushSync } from "react-dom";
import type { Design } from "../../design.ts";
import { type Message, message } from "../../text/message.ts";
import type { Elevation } from "../drawing/elevation.ts";
import type { Hold } from "../drawing/use-view.ts";
import type { Pick } from "../picks/pick.ts";
import type { Edit } from "../sheet/use-project.ts";
import type { Ghost, Handle, Part } from "./handles/handle.ts";
import { handleOf } from "./handles/index.ts";
import { AS_GIVEN, snappingFor } from "./snap.ts";

/** Pixels: how near a press takes a side. */
const SIDE = { mouse: 7, touch: 16 };

export interface Drag {
  /** Of what is picked, where it can be moved. */
  readonly handle: Handle | undefined;
  grab(at: readonly [x: number, y: number], k: number, touch: boolean): Hold | undefined;
  /** What the keys hold of the picked thing, and what is said of it. */
  readonly held: Part | undefined;
  readonly says: Message | undefined;
  /**
   * Moves what the keys hold of the picked thing by so much; where that cannot go this way they take the first that can.
   * False where nothing of it can.
   */
  nudge(by: readonly [number, number]): boolean;
  /** Takes the next side or corner; false where there are none to choose from. */
  next(): boolean;
}

export interface DragOptions {
  readonly design: Design | undefined;
  readonly document: unknown;
  readonly elevation: Elevation | undefined;
  readonly pick: Pick | undefined;
  readonly units: "mm" | "feet-inch";
  onEdit(edit: Edit): void;
  onPick(pick: Pick): void;
  /** Hears where the hand holds it; undefined once it has let go. */
  onGhost(ghost: Ghost | undefined): void;
}

export function useDrag({
  design,
  document,
  elevation,
  pick,
  units,
  onEdit,
  onPick,
  onGhost,
}: DragOptions): Drag {
  const drags = useRef(0);
  const handle = useMemo(() => design && pick && handleOf(design, document, pick), [design, document, pick]);

  // A joint is named anew as it moves; what is held of it stays held.
  const of = handle ? `${handle.face} ${handle.name}` : "";
  const [held, setHeld] = useState({ of, index: -1 });
  const at = held.of === of ? held.index : -1;
  const part = handle?.parts[at];

  const grab = useCallback(
    (at: readonly [number, number], k: number, touch: boolean): Hold | undefined => {
      const placed = handle && elevation?.faces.find(({ face }) => face.id === handle.face);
      if (!placed) return undefined;
      const taken = handle.take([at[0] - placed.dx, at[1]], (touch ? SIDE.touch : SIDE.mouse) / k);
      if (!taken) return undefined;
      drags.current += 1;
      const merge = `drag ${drags.current}`;
      let says: Edit["says"] | undefined;
      let then: Pick | undefined;
      return {
        move(by, free) {
          const moved = taken.to([by[0] / k, -by[1] / k], snappingFor(taken.lines, { k, units, free }));
          const { change } = moved;
          // In this frame: left to its own time it would be drawn in the next.
          flushSync(() => {
            onGhost(moved.ghost);
            if (change) onEdit({ ...change, merge });
          });
          if (!change) return;
          says = change.says;
          then = moved.pick;
        },
        drop() {
          onGhost(undefined);
          if (then) onPick(then);
        },
        cancel() {
          onGhost(undefined);
          if (says) onEdit({ operations: taken.back, says, merge });
        },
      };
    },
    [elevation, handle, units, onEdit, onPick, onGhost],
  );

  const nudge = useCallback(
    (by: readonly [number, number]): boolean => {
      const goes = ({ at }: Part): boolean => (by[0] === 0 ? at.y : at.x) !== undefined;
      const index = part && goes(part) ? at : (handle?.parts.findIndex(goes) ?? -1);
      const moved = handle?.parts[index]?.taken.to(by, AS_GIVEN);
      if (!handle || !moved?.change) return false;
      setHeld({ of, index });
      onEdit({ ...moved.change, merge: `nudge ${handle.face} ${handle.name}` });
      if (moved.pick) onPick(moved.pick);
      return true;
    },
    [handle, of, part, at, onEdit, onPick],
  );
  const next = useCallback((): boolean => {
    const count = handle?.parts.length ?? 0;
    if (count < 2) return false;
    setHeld({ of, index: (at + 1) % count });
    return true;
  }, [handle, of, at]);
  return { handle, grab, held: part, says: part && placeSaid(part), nudge, next };
}

function placeSaid({ name, at: { x, y } }: Part): Message {
  if (x === undefined || y === undefined) {
    return x === undefined
      ? message("page.edit.held-y", { name, y: y ?? 0 })
      : message("page.edit.held-x", { name, x });
  }
  return message("page.edit.held-xy", { name, x, y });
}
