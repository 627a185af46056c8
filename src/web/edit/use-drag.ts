/** The thing that is picked, moved on the drawing by hand or by keys. */
import { useCallback, useMemo, useRef, useState } from "react";
import type { Design } from "../../design.ts";
import type { Elevation } from "../drawing/elevation.ts";
import type { Hold } from "../drawing/use-view.ts";
import type { Pick } from "../picks/pick.ts";
import type { Edit } from "../sheet/use-project.ts";
import type { Ghost } from "./handles/handle.ts";
import { handleOf } from "./handles/index.ts";
import { AS_GIVEN, snappingFor } from "./snap.ts";

/** Pixels: how near a press takes a side. */
const SIDE = { mouse: 7, touch: 16 };

export interface Drag {
  readonly ghost: Ghost | undefined;
  grab(at: readonly [x: number, y: number], k: number, touch: boolean): Hold | undefined;
  /** Moves the picked thing by so much; false where none is picked. */
  nudge(by: readonly [number, number]): boolean;
}

export interface DragOptions {
  readonly design: Design | undefined;
  readonly document: unknown;
  readonly elevation: Elevation | undefined;
  readonly pick: Pick | undefined;
  readonly units: "mm" | "feet-inch";
  onEdit(edit: Edit): void;
  onPick(pick: Pick): void;
}

export function useDrag({ design, document, elevation, pick, units, onEdit, onPick }: DragOptions): Drag {
  const [ghost, setGhost] = useState<Ghost>();
  const drags = useRef(0);
  const handle = useMemo(() => design && pick && handleOf(design, document, pick), [design, document, pick]);

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
          setGhost(moved.ghost);
          if (!moved.change) return;
          says = moved.change.says;
          then = moved.pick;
          onEdit({ ...moved.change, merge });
        },
        drop() {
          setGhost(undefined);
          if (then) onPick(then);
        },
        cancel() {
          setGhost(undefined);
          if (says) onEdit({ operations: taken.back, says, merge });
        },
      };
    },
    [elevation, handle, units, onEdit, onPick],
  );

  const nudge = useCallback(
    (by: readonly [number, number]): boolean => {
      const moved = handle?.whole?.to(by, AS_GIVEN);
      if (!handle || !moved?.change) return false;
      onEdit({ ...moved.change, merge: `nudge ${handle.face} ${handle.name}` });
      if (moved.pick) onPick(moved.pick);
      return true;
    },
    [handle, onEdit, onPick],
  );
  return { ghost, grab, nudge };
}
