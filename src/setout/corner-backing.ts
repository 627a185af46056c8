/**
 * Posts at insulated outside corners. A batten that stands past the sheathing has the edge of the neighbour's insulation
 * behind it; a timber as thick as that insulation takes its place there and carries the batten.
 */
import type { Interval } from "../geometry/interval.ts";
import { rectOutline } from "../geometry/rect.ts";
import { message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import type { DraftBatten } from "./battens.ts";
import { faceLength } from "./corners.ts";
import type { DraftPiece } from "./draft.ts";
import { NO_HOLES, SQUARE_ENDS } from "./facade.ts";
import { markOf } from "./marks.ts";
import type { ZoneTask } from "./zone-layout-task.ts";

/** Depth of the post along the neighbour's wall. */
export const POST_DEPTH_MM = 89;
/** Thinner insulation than this leaves no room for timber that holds a screw. */
export const LEAST_POST_MM = 38;

export function cornerBacking(task: ZoneTask, battens: readonly DraftBatten[]): DraftPiece[] {
  const { ground, ends, project } = task;
  const length = faceLength(ground.face);
  return battens
    .filter(({ reason, x }) => reason === "corner" || (reason === "post" && x[0] >= length))
    .flatMap((batten): DraftPiece[] => {
      const onLeft = batten.x[0] < 0;
      const thick = (onLeft ? ends.left : ends.right).neighbourInsulation;
      if (thick < LEAST_POST_MM) return [];
      const x: Interval = onLeft ? [-thick, 0] : [length, snap(length + thick)];
      return [
        {
          mark: markOf({
            face: ground.face,
            zone: ground.zone.id,
            kind: "backing",
            number: `${onLeft ? "L" : "R"}${batten.mark.split("-L")[1] ?? ""}`,
          }),
          kind: "backing",
          face: ground.face.id,
          zone: ground.zone.id,
          outline: rectOutline({ x, y: batten.y }),
          holes: NO_HOLES,
          z: [-POST_DEPTH_MM, 0],
          ends: SQUARE_ENDS,
          grain: "y",
          material: project.structure.studs.species,
          cut: { length: batten.cut.length, width: POST_DEPTH_MM, thickness: thick },
          why: { rule: message("setout.why.corner-post", { batten: batten.mark }) },
        },
      ];
    });
}
