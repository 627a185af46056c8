/** Drawing something new on a face: by hand, by a tap, or by the size typed and the face picked. */
import { useCallback, useRef, useState } from "react";
import type { Design } from "../../../design.ts";
import type { Rect } from "../../../geometry/rect.ts";
import type { Added } from "../../../project/editing/change.ts";
import type { Elevation } from "../../drawing/elevation.ts";
import type { Hold } from "../../drawing/use-view.ts";
import type { Pick } from "../../picks/pick.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { type Ghost, sourceOf } from "../handles/handle.ts";
import { NO_LINES, roundLines, type SnapLines, snappingFor } from "../snap.ts";
import {
  addAt,
  addWhereRoom,
  drawnRect,
  type Extent,
  isDrawn,
  isRound,
  metBy,
  type NewThing,
  pickOf,
  placedPoint,
  rectAround,
  usualExtent,
} from "./new-thing.ts";

export interface Draw {
  /** What is being drawn; undefined while nothing is. */
  readonly thing: NewThing | undefined;
  readonly ghost: Ghost | undefined;
  /** Whether a rectangle is in the hand. */
  readonly holding: boolean;
  begin(thing: NewThing | undefined): void;
  /** What was typed for its size; what is undefined follows the hand. */
  type(typed: Partial<Extent>): void;
  grab(at: readonly [x: number, y: number], k: number): Hold | undefined;
  tap(at: readonly [x: number, y: number], k: number): void;
  /** Where the hand holds it, else where the face has room. */
  place(face: string): void;
}

export interface DrawOptions {
  readonly design: Design | undefined;
  readonly document: unknown;
  readonly elevation: Elevation | undefined;
  readonly units: "mm" | "feet-inch";
  onEdit(edit: Edit): void;
  onPick(pick: Pick): void;
}

export function useDraw({ design, document, elevation, units, onEdit, onPick }: DrawOptions): Draw {
  const [thing, setThing] = useState<NewThing>();
  const [ghost, setGhost] = useState<Ghost>();
  const typed = useRef<Partial<Extent>>({});
  const held = useRef<{ readonly face: string; readonly rect: () => Rect }>(undefined);
  /** Counts what was begun: a hand still down must not draw on after its thing was placed. */
  const turn = useRef(0);

  const begin = useCallback((next: NewThing | undefined) => {
    turn.current += 1;
    typed.current = {};
    held.current = undefined;
    setGhost(undefined);
    setThing(next);
  }, []);

  /** The face under a point of the drawing, where the file itself has it: a soffit follows its recess. */
  const faceUnder = (x: number) => {
    const under = elevation?.faces.find(({ extent }) => x >= extent.x[0] && x <= extent.x[1]);
    return design?.project.faces.some(({ id }) => id === under?.face.id) ? under : undefined;
  };
  const linesOf = (face: string): SnapLines => (design ? roundLines(design, { face, id: "" }) : NO_LINES);
  const done = (added: Added | undefined): void => {
    if (!added || !thing) return;
    onEdit(added);
    onPick(pickOf(thing, added));
    begin(undefined);
  };
  const extentNow = (of: NewThing): Extent => {
    const extent = { ...usualExtent(of), ...typed.current };
    return isRound(of) ? { width: extent.width, height: extent.width } : extent;
  };
  const show = (of: NewThing, face: string, rect: Rect): void => {
    const met = metBy(rect, linesOf(face));
    const diameter = rect.x[1] - rect.x[0];
    const at = [rect.x[0] + diameter / 2, rect.y[0] + diameter / 2] as const;
    setGhost(
      isRound(of) ? { kind: "round", face, at, diameter, met: NO_LINES } : { kind: "rect", face, rect, met },
    );
  };

  const grab = (at: readonly [number, number], k: number): Hold | undefined => {
    const under = thing && faceUnder(at[0]);
    if (!thing || !design || !under) return undefined;
    const face = under.face.id;
    const source = sourceOf(design, document);
    const from = [at[0] - under.dx, at[1]] as const;
    const lines = linesOf(face);
    const mine = turn.current;
    const letGo = (): void => {
      held.current = undefined;
      setGhost(undefined);
    };
    return {
      move(by, free) {
        if (turn.current !== mine) return;
        const to = [from[0] + by[0] / k, from[1] - by[1] / k] as const;
        const snapping = snappingFor(lines, { k, units, free });
        const rect = (): Rect =>
          isRound(thing)
            ? rectAround(placedPoint(to, snapping), extentNow(thing))
            : drawnRect(from, to, { snapping, typed: typed.current });
        held.current = { face, rect };
        show(thing, face, rect());
      },
      drop() {
        const rect = held.current?.rect();
        letGo();
        if (rect && (isRound(thing) || isDrawn(rect))) done(addAt(source, thing, { face, rect }));
      },
      cancel: letGo,
    };
  };

  const tap = (at: readonly [number, number], k: number): void => {
    const under = thing && faceUnder(at[0]);
    if (!thing || !design || !under) return;
    const snapping = snappingFor(NO_LINES, { k, units, free: false });
    const rect = rectAround(placedPoint([at[0] - under.dx, at[1]], snapping), extentNow(thing));
    done(addAt(sourceOf(design, document), thing, { face: under.face.id, rect }));
  };

  const place = (face: string): void => {
    if (!design || !thing) return;
    const source = sourceOf(design, document);
    const { current } = held;
    done(
      current
        ? addAt(source, thing, { face: current.face, rect: current.rect() })
        : addWhereRoom(source, thing, { face, extent: extentNow(thing) }),
    );
  };

  const type = (next: Partial<Extent>): void => {
    typed.current = next;
    if (thing && held.current) show(thing, held.current.face, held.current.rect());
  };

  return { thing, ghost, holding: ghost !== undefined, begin, type, grab, tap, place };
}
