/** Draft pieces made whole: weights, supports, screws, and the packers and gaskets that go with a batten. */
import { type Interval, mergeIntervals } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { type Rect, rectOutline } from "../geometry/rect.ts";
import type { Project } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import type { ScrewPoint } from "./batten-screws.ts";
import type { DraftBatten } from "./battens.ts";
import type { CladdingPoint } from "./cladding-screws.ts";
import { type DraftPiece, wholePiece } from "./draft.ts";
import { type Fixing, NO_HOLES, type Piece, SQUARE_ENDS, type Why } from "./facade.ts";
import { massOf } from "./masses.ts";
import type { ZoneTask } from "./zone-layout-task.ts";

export function claddingPiece(
  task: ZoneTask,
  piece: DraftPiece,
  points: readonly CladdingPoint[],
  fixings: readonly Fixing[],
): Piece {
  const supports: string[] = [];
  for (const { batten } of points) if (!supports.includes(batten.mark)) supports.push(batten.mark);
  return wholePiece(piece, { massKg: massOf(task.project, piece), supports, removeBefore: NOTHING, fixings });
}

const NOTHING: readonly never[] = [];

/** Marks of the cladding that each batten carries. */
export function supportedBy(cladding: readonly Piece[]): ReadonlyMap<string, string[]> {
  const over = new Map<string, string[]>();
  for (const { mark, supports } of cladding) {
    for (const batten of supports) {
      const marks = over.get(batten);
      if (marks) marks.push(mark);
      else over.set(batten, [mark]);
    }
  }
  return over;
}

/** A batten with the packers behind its screws and the gasket on its face. */
export function battenWithParts(
  task: ZoneTask,
  batten: DraftBatten,
  points: readonly ScrewPoint[],
  { over, fix }: { readonly over: readonly string[]; readonly fix: (point: ScrewPoint) => Fixing },
): Piece[] {
  const supports: string[] = [];
  for (const { solid } of points) if (!supports.includes(solid.id)) supports.push(solid.id);
  const pieces = [heldBatten(task, batten, { supports, removeBefore: over, fixings: points.map(fix) })];
  for (const layer of task.plane.layers) {
    if (layer.kind === "gasket") pieces.push(strip(task, batten, layer.z, over));
    if (layer.kind !== "packer") continue;
    packerSpans(batten, points).forEach((y, i) => {
      pieces.push(packer(task, batten, { y, z: layer.z, index: i }));
    });
  }
  return pieces;
}

/** A batten or rail as a piece, without what only laying it out needed. */
export function heldBatten(
  task: ZoneTask,
  batten: DraftBatten,
  { supports, removeBefore, fixings }: Pick<Piece, "supports" | "removeBefore" | "fixings">,
): Piece {
  return wholePiece(batten, { massKg: massOf(task.project, batten), supports, removeBefore, fixings });
}

const PACKER_WHY: Why = { rule: message("setout.why.packer") };
const GASKET_WHY: Why = { rule: message("setout.why.gasket") };
const PACKER_MM = 60;

/** One packer behind each screw; screws close together share one. */
function packerSpans(batten: DraftBatten, points: readonly ScrewPoint[]): Interval[] {
  const spans = points.map(({ y }): Interval => {
    const low = Math.min(
      Math.max(y - PACKER_MM / 2, batten.y[0]),
      Math.max(batten.y[0], batten.y[1] - PACKER_MM),
    );
    return [snap(low), snap(Math.min(low + PACKER_MM, batten.y[1]))];
  });
  return mergeIntervals(spans);
}

// Packers and strips are many; written out, they are made several times as fast as by copying parts.
function packer(
  task: ZoneTask,
  batten: DraftBatten,
  { y, z, index }: { readonly y: Interval; readonly z: Interval; readonly index: number },
): Piece {
  return {
    mark: `${batten.mark.replace("-L", "-P")}${index + 1}`,
    kind: "packer",
    face: task.ground.face.id,
    zone: task.ground.zone.id,
    outline: rectOutline({ x: batten.x, y }),
    holes: NO_HOLES,
    z,
    ends: SQUARE_ENDS,
    material: "packer",
    cut: { length: snap(y[1] - y[0]), width: snap(batten.x[1] - batten.x[0]), thickness: snap(z[1] - z[0]) },
    massKg: 0,
    why: PACKER_WHY,
    supports: [batten.mark],
    removeBefore: [batten.mark],
    fixings: NOTHING,
  };
}

function strip(task: ZoneTask, batten: DraftBatten, z: Interval, over: readonly string[]): Piece {
  return {
    mark: batten.mark.replace("-L", "-G"),
    kind: "gasket",
    face: task.ground.face.id,
    zone: task.ground.zone.id,
    outline: batten.outline,
    holes: NO_HOLES,
    z,
    ends: SQUARE_ENDS,
    material: "gasket strip",
    cut: { length: batten.cut.length, width: batten.cut.width, thickness: snap(z[1] - z[0]) },
    massKg: 0,
    why: GASKET_WHY,
    supports: [batten.mark],
    removeBefore: over,
    fixings: NOTHING,
  };
}

/** A piece in front with its bounds, found once for all that lies behind. */
export interface Bounded {
  readonly mark: string;
  readonly box: Rect;
}

export function bounded({ mark, outline }: Piece): Bounded {
  return { mark, box: polygonBounds(outline) };
}

/** A piece held by its neighbours alone: closures are stapled behind the lowest or highest cladding. */
export function plain(project: Project, piece: DraftPiece, cladding: readonly Bounded[]): Piece {
  const box = polygonBounds(piece.outline);
  const over = cladding.filter(
    ({ box: { x, y } }) => x[0] < box.x[1] && x[1] > box.x[0] && y[0] <= box.y[1] && y[1] >= box.y[0],
  );
  return wholePiece(piece, {
    massKg: massOf(project, piece),
    supports: NOTHING,
    removeBefore: over.map(({ mark }) => mark),
    fixings: NOTHING,
  });
}
