/** Backing where battens miss the timber: blocks between studs, posts at insulated corners. */
import { common, type Interval } from "../geometry/interval.ts";
import { message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import { BLOCK_SECTION, bayAt, blockDepth, blockRegion, freeBlockPlace } from "./batten-screws.ts";
import type { DraftBatten } from "./battens.ts";
import { cornerBacking } from "./corner-backing.ts";
import { faceLength } from "./corners.ts";
import { type DraftPiece, wholePiece } from "./draft.ts";
import { NO_HOLES, type Piece, type Solid, SQUARE_ENDS } from "./facade.ts";
import { markOf } from "./marks.ts";
import { massOf } from "./masses.ts";
import type { ZoneTask } from "./zone-layout-task.ts";

/** Sets backing where battens miss the timber: blocks between studs, posts at insulated corners. */
export function backingMaker(task: ZoneTask, battens: readonly DraftBatten[]) {
  const made: Piece[] = [];
  const { project, ground, solids } = task;
  const sheathing = project.structure.sheathingThickness;
  const depth = blockDepth(project.limits.screwBite.studs.value);
  const add = (draft: DraftPiece): Solid => {
    const solid: Solid = { id: draft.mark, kind: "backing", region: draft.outline, z: draft.z };
    solids.push(solid);
    made.push(
      wholePiece(draft, { massKg: massOf(project, draft), supports: [], removeBefore: [], fixings: [] }),
    );
    return solid;
  };
  for (const draft of cornerBacking(task, battens)) add(draft);
  const addFor =
    (batten: DraftBatten) =>
    (y: number): Solid | undefined => {
      const middle = (batten.x[0] + batten.x[1]) / 2;
      const between = bayAt(solids, middle, y);
      const bay = between && common(between, clearOfCorners(task, depth));
      if (!bay) return undefined;
      const place = freeBlockPlace(solids, bay, y);
      if (place === undefined) return undefined;
      const outline = blockRegion(bay, place);
      return add({
        mark: markOf({
          face: ground.face,
          zone: ground.zone.id,
          kind: "backing",
          number: blockName(bay, place),
        }),
        kind: "backing",
        face: ground.face.id,
        zone: ground.zone.id,
        outline,
        holes: NO_HOLES,
        z: [snap(-sheathing - depth), -sheathing],
        ends: SQUARE_ENDS,
        grain: "x",
        material: project.structure.studs.species,
        cut: {
          length: snap(bay[1] - bay[0]),
          width: BLOCK_SECTION.height,
          thickness: depth,
        },
        why: { rule: message("setout.why.backing", { batten: batten.mark }) },
      });
    };
  return { addFor, pieces: (): readonly Piece[] => made };
}

/** At an outside corner the neighbour's blocks lie in the same corner of the wall: each face's stop short of them. */
function clearOfCorners({ ground, ends, project }: ZoneTask, depth: number): Interval {
  const clear = snap(project.structure.sheathingThickness + depth);
  const length = faceLength(ground.face);
  return [
    ends.left.kind === "external" ? clear : 0,
    ends.right.kind === "external" ? snap(length - clear) : length,
  ];
}

/** A block is named by its place (centimetres right and up), so that its mark stays when others come or go. */
function blockName(bay: Interval, y: number): string {
  const right = Math.round((bay[0] + bay[1]) / 20);
  const up = Math.round(y / 10);
  return `${right}.${up < 0 ? `u${-up}` : up}`;
}
