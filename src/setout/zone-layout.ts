/** Lays out one zone: cladding, battens with their screws and backing, closures, and the cladding's screws. */
import { type Finding, finding } from "../findings/finding.ts";
import { common, type Interval, mergeIntervals } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { rectOutline } from "../geometry/rect.ts";
import type { Cladding, Project } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import {
  BLOCK_SECTION,
  bayAt,
  blockDepth,
  blockRegion,
  freeBlockPlace,
  type ScrewPoint,
  screwPoints,
} from "./batten-screws.ts";
import { type DraftBatten, placeBattens } from "./battens.ts";
import { layCourses } from "./boards/courses.ts";
import { tipWishes } from "./boards/tips.ts";
import { boardPoints, type CladdingPoint, fixedPoint, sheetPoints } from "./cladding-screws.ts";
import { closuresOf } from "./closures.ts";
import { cornerBacking } from "./corner-backing.ts";
import { faceLength } from "./corners.ts";
import type { BattenWish, DraftPiece, ZoneDraft } from "./draft.ts";
import {
  type Fixing,
  type Joint,
  NO_HOLES,
  type Piece,
  type Solid,
  SQUARE_ENDS,
  type Vent,
  type Why,
} from "./facade.ts";
import { battenFixer, boardFixer, sheetFixer } from "./fixings.ts";
import type { ZoneGround } from "./ground-plan.ts";
import { markOf } from "./marks.ts";
import { massOf } from "./masses.ts";
import { battenStock, claddingOf } from "./resolve.ts";
import { laySheets } from "./sheets/layout.ts";
import { studCentres } from "./solids.ts";
import { supportFindings } from "./support-findings.ts";
import type { ZoneTask } from "./zone-layout-task.ts";

export interface ZoneResult {
  readonly pieces: readonly Piece[];
  readonly joints: readonly Joint[];
  readonly vents: readonly Vent[];
  readonly findings: readonly Finding[];
}

export function layZone(task: ZoneTask): ZoneResult {
  const { project, ground, plane } = task;
  const cladding = claddingOf(project, ground.zone);
  const draft = layCladding(task, cladding);
  const stock = battenStock(project, plane.layers.find(({ kind }) => kind === "batten")?.stock ?? "");
  const battenZ = plane.layers.find(({ kind }) => kind === "batten")?.z as Interval;
  const battens = placeBattens({
    ground,
    wishes: draft.wishes.filter((wish) => standsOnWall(task, wish)),
    z: battenZ,
    stock,
    species: project.structure.studs.species,
  });
  const backing = backingMaker(task, battens);
  const closures = closuresOf({ ground, plane, ends: task.ends, battens });
  const screwed = battens.map((batten) => ({
    batten,
    ...screwPoints(batten, task.solids, backing.addFor(batten)),
  }));
  const clad = draft.pieces.map((piece) => ({ piece, points: pointsOf(piece, cladding, battens) }));
  const fixAll = claddingFixer(task, cladding);
  const claddingPieces = clad.map(({ piece, points }) =>
    claddingPiece(task, piece, points, fixAll(piece, points)),
  );
  const over = supportedBy(claddingPieces);
  const fixBatten = battenFixer(task);
  const battenPieces = screwed.flatMap(({ batten, points }) =>
    battenWithParts(task, batten, points, { over: over.get(batten.mark) ?? [], fix: fixBatten }),
  );
  const closurePieces = closures.pieces.map((piece) => plain(project, piece, claddingPieces));
  const pieces = [...claddingPieces, ...battenPieces, ...backing.pieces(), ...closurePieces];
  return {
    pieces,
    joints: draft.joints,
    vents: closures.vents,
    findings: [
      ...draft.findings,
      ...supportFindings(task, cladding, { pieces, battens, backing: backing.pieces(), missed: screwed }),
    ],
  };
}

/** Past an outside corner only the corner's own batten finds something to stand on. */
function standsOnWall({ ground, ends }: ZoneTask, { x, reason }: BattenWish): boolean {
  if (reason === "corner") return true;
  const beyondLeft = ends.left.kind === "external" && x[0] < 0;
  const beyondRight = ends.right.kind === "external" && x[1] > faceLength(ground.face);
  return !beyondLeft && !beyondRight;
}

function layCladding(
  task: ZoneTask,
  cladding: Cladding,
): ZoneDraft & { readonly findings: readonly Finding[] } {
  const { project, ground, plane, ends, rod, lines } = task;
  const length = faceLength(ground.face);
  const studs = studCentres(project.structure, length);
  const battenWidth = battenStock(
    project,
    plane.layers.find(({ kind }) => kind === "batten")?.stock ?? "",
  ).width;
  if (cladding.kind === "sheets") {
    return laySheets({
      ground,
      cladding,
      plane,
      ends,
      stock: project.stock.sheets.filter(({ id }) => cladding.stock.includes(id)),
      trim: project.stock.saw.sheetTrim,
      lines,
      sliver: { wish: project.limits.sliver.wish.value, floor: project.limits.sliver.floor.value },
      studs,
      battenWidth,
    });
  }
  if (!rod) {
    return { pieces: [], joints: [], wishes: [], findings: [noRod(ground)] };
  }
  const zone = {
    ground,
    cladding,
    plane,
    ends,
    rod,
    studs,
    studSpacing: project.structure.studs.spacing,
    battenWidth,
  };
  const laid = layCourses(zone);
  return { ...laid, wishes: [...laid.wishes, ...tipWishes(zone, laid.pieces)] };
}

function noRod(ground: ZoneGround): Finding {
  return finding({
    code: "S001",
    outcome: "cannot evaluate",
    where: { face: ground.face.id, zone: ground.zone.id },
    says: message("setout.rod.none", { zone: ground.zone.id, face: ground.face.id }),
    hint: message("setout.rod.none.hint"),
  });
}

function pointsOf(piece: DraftPiece, cladding: Cladding, battens: readonly DraftBatten[]): CladdingPoint[] {
  return cladding.kind === "sheets"
    ? sheetPoints(piece, cladding, battens)
    : boardPoints(piece, cladding, battens);
}

type FixAll = (piece: DraftPiece, points: readonly CladdingPoint[]) => Fixing[];

function claddingFixer(task: ZoneTask, cladding: Cladding): FixAll {
  if (cladding.kind === "boards") {
    const fix = boardFixer(task, cladding);
    return (_piece, points) => points.map(fix);
  }
  const fix = sheetFixer(task, cladding);
  return (piece, points) => {
    const fixed = fixedPoint(piece, points);
    return fixed ? points.map((point) => fix(point, fixed)) : [];
  };
}

function claddingPiece(
  task: ZoneTask,
  piece: DraftPiece,
  points: readonly CladdingPoint[],
  fixings: readonly Fixing[],
): Piece {
  return {
    ...piece,
    massKg: massOf(task.project, piece),
    supports: [...new Set(points.map(({ batten }) => batten.mark))],
    removeBefore: [],
    fixings,
  };
}

/** Marks of the cladding that each batten carries. */
function supportedBy(cladding: readonly Piece[]): ReadonlyMap<string, string[]> {
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
function battenWithParts(
  task: ZoneTask,
  batten: DraftBatten,
  points: readonly ScrewPoint[],
  { over, fix }: { readonly over: readonly string[]; readonly fix: (point: ScrewPoint) => Fixing },
): Piece[] {
  const { x: _x, y: _y, reason: _reason, ...draft } = batten;
  const piece: Piece = {
    ...draft,
    massKg: massOf(task.project, batten),
    supports: [...new Set(points.map(({ solid }) => solid.id))],
    removeBefore: over,
    fixings: points.map(fix),
  };
  const parts = task.plane.layers.flatMap((layer): Piece[] => {
    if (layer.kind === "gasket") return [strip(task, batten, layer.z, over)];
    if (layer.kind === "packer") {
      return packerSpans(batten, points).map((y, i) => packer(task, batten, { y, z: layer.z, index: i }));
    }
    return [];
  });
  return [piece, ...parts];
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

function packer(
  task: ZoneTask,
  batten: DraftBatten,
  { y, z, index }: { readonly y: Interval; readonly z: Interval; readonly index: number },
): Piece {
  return {
    ...part(task, batten, "packer", z),
    mark: `${batten.mark.replace("-L", "-P")}${index + 1}`,
    outline: rectOutline({ x: batten.x, y }),
    material: "packer",
    cut: { length: snap(y[1] - y[0]), width: snap(batten.x[1] - batten.x[0]), thickness: snap(z[1] - z[0]) },
    why: PACKER_WHY,
    removeBefore: [batten.mark],
  };
}

function strip(task: ZoneTask, batten: DraftBatten, z: Interval, over: readonly string[]): Piece {
  return {
    ...part(task, batten, "gasket", z),
    mark: batten.mark.replace("-L", "-G"),
    outline: batten.outline,
    material: "gasket strip",
    cut: { length: batten.cut.length, width: batten.cut.width, thickness: snap(z[1] - z[0]) },
    why: GASKET_WHY,
    removeBefore: over,
  };
}

function part(
  task: ZoneTask,
  batten: DraftBatten,
  kind: "packer" | "gasket",
  z: Interval,
): Omit<Piece, "mark" | "outline" | "material" | "cut" | "why" | "removeBefore"> {
  return {
    kind,
    face: task.ground.face.id,
    zone: task.ground.zone.id,
    holes: NO_HOLES,
    z,
    ends: SQUARE_ENDS,
    massKg: 0,
    supports: [batten.mark],
    fixings: [],
  };
}

/** A piece held by its neighbours alone: closures are stapled behind the lowest or highest cladding. */
function plain(project: Project, piece: DraftPiece, cladding: readonly Piece[]): Piece {
  const box = polygonBounds(piece.outline);
  const over = cladding.filter(({ outline }) => {
    const other = polygonBounds(outline);
    return other.x[0] < box.x[1] && other.x[1] > box.x[0] && other.y[0] <= box.y[1] && other.y[1] >= box.y[0];
  });
  return {
    ...piece,
    massKg: massOf(project, piece),
    supports: [],
    removeBefore: over.map(({ mark }) => mark),
    fixings: [],
  };
}

/** Sets backing where battens miss the timber: blocks between studs, posts at insulated corners. */
function backingMaker(task: ZoneTask, battens: readonly DraftBatten[]) {
  const made: Piece[] = [];
  const { project, ground, solids } = task;
  const sheathing = project.structure.sheathingThickness;
  const depth = blockDepth(project.limits.screwBite.studs.value);
  const add = (draft: DraftPiece): Solid => {
    const solid: Solid = { id: draft.mark, kind: "backing", region: draft.outline, z: draft.z };
    solids.push(solid);
    made.push({ ...draft, massKg: massOf(project, draft), supports: [], removeBefore: [], fixings: [] });
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
