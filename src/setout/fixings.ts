/** Screws with their holes, what they pass and what holds them. */
import type { BoardCladding, SheetCladding } from "../project/schema/project.ts";
import { snap } from "../units/length.ts";
import { gapMm } from "../units/rounding.ts";
import type { ScrewPoint } from "./batten-screws.ts";
import type { DraftBatten } from "./battens.ts";
import type { CladdingPoint } from "./cladding-screws.ts";
import type { Fixing } from "./facade.ts";
import { buildUpOf, screwOf } from "./resolve.ts";
import type { ZoneTask } from "./zone-layout-task.ts";

/** Holes are drilled in half millimetres. */
const HOLE_STEP_MM = 0.5;
/** A board's hole passes the shank freely, so that it is drawn tight (common practice: a tenth over the diameter). */
const CLEARANCE_HOLE = 1.1;
/** A batten is drilled to the screw, against splitting. */
const BATTEN_HOLE = 1;

type Through = Fixing["through"];

export function sheetFixing(
  task: ZoneTask,
  cladding: SheetCladding,
  point: CladdingPoint,
  fixed: CladdingPoint,
): Fixing {
  const screw = screwOf(task.project, cladding.screw);
  const gasket = task.plane.layers.find(({ kind }) => kind === "gasket");
  const through: Through = [
    { what: "sheet", thickness: cladding.thickness },
    ...(gasket ? [{ what: "gasket", thickness: snap(gasket.z[1] - gasket.z[0]) }] : []),
  ];
  const isFixed = point === fixed;
  const reach = Math.hypot(point.x - fixed.x, point.y - fixed.y);
  const perM = task.demands.sheets[cladding.id]?.movementMmPerM ?? cladding.dataSheet.moistureMmPerM;
  // Hole = shank + 2 · movement over the distance to the fixed point: the sheet may grow or shrink.
  const hole = isFixed ? screw.diameter : screw.diameter + (2 * perM * reach) / 1000;
  return {
    ...place(point),
    kind: isFixed ? "fixed" : "sliding",
    screw: screw.id,
    hole: gapMm(hole, { step: isFixed ? 0.1 : HOLE_STEP_MM }),
    into: point.batten.mark,
    through,
    bite: biteIn(screw.length, through, point.batten.cut.thickness),
  };
}

export function boardFixing(task: ZoneTask, cladding: BoardCladding, point: CladdingPoint): Fixing {
  const screw = screwOf(task.project, cladding.screw);
  const through: Through = [{ what: "board", thickness: cladding.thickness }];
  return {
    ...place(point),
    kind: "plain",
    screw: screw.id,
    hole: gapMm(screw.diameter * CLEARANCE_HOLE, { step: HOLE_STEP_MM }),
    into: point.batten.mark,
    through,
    bite: biteIn(screw.length, through, point.batten.cut.thickness),
  };
}

export function battenFixing(task: ZoneTask, batten: DraftBatten, point: ScrewPoint): Fixing {
  const screw = screwOf(task.project, buildUpOf(task.project, task.ground.zone).battenScrew);
  const onPost = point.solid.z[1] === 0;
  const layers = task.plane.layers.filter(
    ({ z, kind }) => kind !== "gasket" && kind !== "cladding" && z[1] <= batten.z[1],
  );
  const through: Through = [
    ...[...layers].reverse().map(({ kind, z }) => ({ what: kind, thickness: snap(z[1] - z[0]) })),
    ...(onPost ? [] : [{ what: "sheathing", thickness: task.project.structure.sheathingThickness }]),
  ];
  return {
    x: point.x,
    y: point.y,
    kind: "plain",
    screw: screw.id,
    hole: gapMm(screw.diameter * BATTEN_HOLE, { step: HOLE_STEP_MM }),
    into: point.solid.id,
    through,
    bite: biteIn(screw.length, through, snap(point.solid.z[1] - point.solid.z[0])),
  };
}

function place({ x, y }: CladdingPoint): { x: number; y: number } {
  return { x, y };
}

/** What is left of the screw after all it passes, and no more than what holds it is thick (mm). */
function biteIn(length: number, through: Through, holder: number): number {
  const passed = through.reduce((sum, { thickness }) => sum + thickness, 0);
  return snap(Math.max(0, Math.min(length - passed, holder)));
}
