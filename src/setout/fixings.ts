/** Screws with their holes, what they pass and what holds them. */
import type { Interval } from "../geometry/interval.ts";
import type { BoardCladding, Project, Screw, SheetCladding, Zone } from "../project/schema/project.ts";
import { snap } from "../units/length.ts";
import { gapMm } from "../units/rounding.ts";
import type { ScrewPoint } from "./batten-screws.ts";
import type { CladdingPoint } from "./cladding-screws.ts";
import type { CornerPost } from "./corners.ts";
import type { Fixing, ZonePlane } from "./facade.ts";
import { buildUpOf, screwOf } from "./resolve.ts";
import type { ZoneTask } from "./zone-layout-task.ts";

/** Holes are drilled in half millimetres. */
const HOLE_STEP_MM = 0.5;
/** A board's hole passes the shank freely, so that it is drawn tight (common practice: a tenth over the diameter). */
const CLEARANCE_HOLE = 1.1;
/** A batten is drilled to the screw, against splitting. */
const BATTEN_HOLE = 1;

type Through = Fixing["through"];

/** The hole of a sliding point so far from the fixed one (mm): the sheet may grow or shrink. */
export function slidingHole(diameter: number, mmPerM: number, reach: number): number {
  return gapMm(diameter + (2 * mmPerM * reach) / 1000, { step: HOLE_STEP_MM });
}

/** The hole of a sheet's fixed point (mm). */
export function fixedHole(diameter: number): number {
  return gapMm(diameter, { step: 0.1 });
}

/** The hole of a board's screw (mm). */
export function boardHole(diameter: number): number {
  return gapMm(diameter * CLEARANCE_HOLE, { step: HOLE_STEP_MM });
}

/** Makes the screws of a sheet zone: what does not change from screw to screw is worked once. */
export function sheetFixer(
  task: ZoneTask,
  cladding: SheetCladding,
): (point: CladdingPoint, fixed: CladdingPoint) => Fixing {
  const screw = screwOf(task.project, cladding.screw);
  const gasket = task.plane.layers.find(({ kind }) => kind === "gasket");
  const through: Through = [
    { what: "sheet", thickness: cladding.thickness },
    ...(gasket ? [{ what: "gasket", thickness: snap(gasket.z[1] - gasket.z[0]) }] : []),
  ];
  const perM = task.demands.sheets[cladding.id]?.movementMmPerM ?? cladding.dataSheet.moistureMmPerM;
  const close = fixedHole(screw.diameter);
  return (point, fixed) => {
    const isFixed = point === fixed;
    const reach = Math.hypot(point.x - fixed.x, point.y - fixed.y);
    return {
      x: point.x,
      y: point.y,
      kind: isFixed ? "fixed" : "sliding",
      screw: screw.id,
      hole: isFixed ? close : slidingHole(screw.diameter, perM, reach),
      into: point.batten.mark,
      through,
      bite: biteIn(screw.length, through, point.batten.cut.thickness),
    };
  };
}

/** Makes the screws of a board zone. */
export function boardFixer(task: ZoneTask, cladding: BoardCladding): (point: CladdingPoint) => Fixing {
  const screw = screwOf(task.project, cladding.screw);
  return plainFixer(screw, {
    through: [{ what: "board", thickness: cladding.thickness }],
    hole: screw.diameter * CLEARANCE_HOLE,
  });
}

function plainFixer(
  screw: Screw,
  { through, hole }: { readonly through: Through; readonly hole: number },
): (point: CladdingPoint) => Fixing {
  const drilled = gapMm(hole, { step: HOLE_STEP_MM });
  return (point) => ({
    x: point.x,
    y: point.y,
    kind: "plain",
    screw: screw.id,
    hole: drilled,
    into: point.batten.mark,
    through,
    bite: biteIn(screw.length, through, point.batten.cut.thickness),
  });
}

/** Makes the screws of a zone's battens. */
export function battenFixer(task: ZoneTask): (point: ScrewPoint) => Fixing {
  const screw = screwOf(task.project, buildUpOf(task.project, task.ground.zone).battenScrew);
  const hole = gapMm(screw.diameter * BATTEN_HOLE, { step: HOLE_STEP_MM });
  const battenTop = task.plane.layers.find(({ kind }) => kind === "batten")?.z[1] ?? 0;
  const layers = task.plane.layers.filter(
    ({ z, kind }) => kind !== "gasket" && kind !== "cladding" && z[1] <= battenTop,
  );
  const toWall: Through = [...layers]
    .reverse()
    .map(({ kind, z }) => ({ what: kind, thickness: snap(z[1] - z[0]) }));
  const toStud: Through = [
    ...toWall,
    { what: "sheathing", thickness: task.project.structure.sheathingThickness },
  ];
  return (point) => {
    // A post at an insulated corner stands outside the sheathing.
    const through = point.solid.z[1] === 0 ? toWall : toStud;
    return {
      x: point.x,
      y: point.y,
      kind: "plain",
      screw: screw.id,
      hole,
      into: point.solid.id,
      through,
      bite: biteIn(screw.length, through, snap(point.solid.z[1] - point.solid.z[0])),
    };
  };
}

/** Makes the screws that hold the liners of openings to the timber behind the sheathing. */
export function buckFixer(
  project: Project,
  { layers }: ZonePlane,
  { zone, z: [from, to] }: { readonly zone: Zone; readonly z: Interval },
): (point: ScrewPoint) => Fixing {
  const screw = screwOf(project, buildUpOf(project, zone).battenScrew);
  const hole = gapMm(screw.diameter * BATTEN_HOLE, { step: HOLE_STEP_MM });
  const under = layers.filter(({ z }) => z[1] <= from);
  const through: Through = [
    { what: "backing", thickness: snap(to - from) },
    ...[...under].reverse().map(({ kind, z }) => ({ what: kind, thickness: snap(z[1] - z[0]) })),
    { what: "sheathing", thickness: project.structure.sheathingThickness },
  ];
  return ({ x, y, solid }) => ({
    x,
    y,
    kind: "plain",
    screw: screw.id,
    hole,
    into: solid.id,
    through,
    bite: biteIn(screw.length, through, snap(solid.z[1] - solid.z[0])),
  });
}

/** Makes the screws that hold a corner's post to the batten behind it, through the gasket where there is one. */
export function postFixer(task: ZoneTask, { screw: id, z }: CornerPost): (point: CladdingPoint) => Fixing {
  const screw = screwOf(task.project, id);
  const gasket = task.plane.layers.find(({ kind }) => kind === "gasket");
  return plainFixer(screw, {
    through: [
      { what: "post", thickness: snap(z[1] - z[0]) },
      ...(gasket ? [{ what: "gasket", thickness: snap(gasket.z[1] - gasket.z[0]) }] : []),
    ],
    hole: screw.diameter * CLEARANCE_HOLE,
  });
}

/** Makes the screws that hold rails to the battens behind them. */
export function railFixer(task: ZoneTask): (point: CladdingPoint) => Fixing {
  const buildUp = buildUpOf(task.project, task.ground.zone);
  const screw = screwOf(task.project, buildUp.railScrew ?? buildUp.battenScrew);
  const rail = task.plane.layers.find(({ kind }) => kind === "rail");
  return plainFixer(screw, {
    through: [{ what: "rail", thickness: rail ? snap(rail.z[1] - rail.z[0]) : 0 }],
    hole: screw.diameter * BATTEN_HOLE,
  });
}

/** What is left of the screw after all it passes, and no more than what holds it is thick (mm). */
function biteIn(length: number, through: Through, holder: number): number {
  const passed = through.reduce((sum, { thickness }) => sum + thickness, 0);
  return snap(Math.max(0, Math.min(length - passed, holder)));
}
