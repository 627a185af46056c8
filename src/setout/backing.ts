/** Backing where battens miss the timber: blocks between studs, posts at insulated corners. */
import { faceFrame } from "../geometry/frame.ts";
import { common, type Interval } from "../geometry/interval.ts";
import type { Rect } from "../geometry/rect.ts";
import { recessLinedBy } from "../project/lookup.ts";
import type { Face, Project } from "../project/schema/project.ts";
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
  const holes = holesOf(ground.face);
  const wall = clearOfCorners(task, depth);
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
      const bay = between && common(between, wall);
      if (!bay) return undefined;
      const place = freeBlockPlace({ solids, holes }, bay, y);
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

/** Where nothing can lie in the wall: its openings and ducts, whether or not timber stands beside them. */
function holesOf({ openings, outline, ground, penetrations = [] }: Face): Rect[] {
  const bottom = Math.min(...outline.map(([, y]) => y));
  const top = Math.max(...outline.map(([, y]) => y));
  const anywhere = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
  // A soffit, which has no ground, ends with its sheathing: before it lies the cavity of the wall over it.
  const beyond: Rect[] =
    ground.length > 0
      ? []
      : [
          { x: anywhere, y: [anywhere[0], bottom] },
          { x: anywhere, y: [top, anywhere[1]] },
        ];
  return [
    ...beyond,
    ...openings.map(({ x, y, toBase }) => ({
      x,
      y: [toBase ? Math.min(bottom, y[0]) : y[0], y[1]] as const,
    })),
    ...penetrations.map(({ x, y, diameter }) => ({
      x: [x - diameter / 2, x + diameter / 2] as const,
      y: [y - diameter / 2, y + diameter / 2] as const,
    })),
  ];
}

/**
 * At an outside corner the neighbour's blocks lie in the same corner of the wall: each face's stop short of them. A face
 * that lines a recess begins in front of the wall that it opens from: there is no room for blocks until that wall is passed.
 */
function clearOfCorners({ ground, ends, project }: ZoneTask, depth: number): Interval {
  const clear = snap(project.structure.sheathingThickness + depth);
  const length = faceLength(ground.face);
  const lines = recessLinedBy(project, ground.face.id)?.parent;
  return [
    ends.left.kind === "external" ? clear : lines ? past(project, lines, ground.face.plan.from) : 0,
    snap(
      length -
        (ends.right.kind === "external" ? clear : lines ? past(project, lines, ground.face.plan.to) : 0),
    ),
  ];
}

/** How far the wall of the face in front reaches from a point before it along a wall that goes in; 0 from a point behind. */
function past({ structure }: Project, front: Face, point: Face["plan"]["from"]): number {
  const { origin, outward } = faceFrame(front.plan);
  const before = (point[0] - origin[0]) * outward[0] + (point[1] - origin[1]) * outward[1];
  return Math.max(0, snap(before + structure.sheathingThickness + structure.studs.depth));
}

/** A block is named by its place (centimetres right and up), so that its mark stays when others come or go. */
function blockName(bay: Interval, y: number): string {
  const right = Math.round((bay[0] + bay[1]) / 20);
  const up = Math.round(y / 10);
  return `${right}.${up < 0 ? `u${-up}` : up}`;
}
