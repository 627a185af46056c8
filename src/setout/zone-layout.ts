/** Lays out one zone: cladding, battens with their screws and backing, closures, and the cladding's screws. */
import { type Finding, finding } from "../findings/finding.ts";
import type { BoardCladding, Cladding } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { backingMaker } from "./backing.ts";
import { withEndsTold } from "./batten-ends.ts";
import { lengthsFinding } from "./batten-joints.ts";
import { holdsOf, screwPoints } from "./batten-screws.ts";
import { type DraftBatten, placeBattens } from "./battens.ts";
import { layCourses } from "./boards/courses.ts";
import { tipWishes } from "./boards/tips.ts";
import { layUpright } from "./boards/upright.ts";
import {
  type BattenLine,
  battenLines,
  boardPoints,
  type CladdingPoint,
  fixedPoint,
  sheetPoints,
} from "./cladding-screws.ts";
import { closuresOf } from "./closures.ts";
import { LEAST_POST_MM } from "./corner-backing.ts";
import { cornerPost, postWishes, underPost } from "./corner-post.ts";
import { faceLength, isSlanted } from "./corners.ts";
import type { BattenWish, DraftPiece, ZoneDraft } from "./draft.ts";
import type { Fixing, Joint, Piece, Vent, ZonePlane } from "./facade.ts";
import { battenFixer, boardFixer, railFixer, sheetFixer } from "./fixings.ts";
import type { ZoneGround } from "./ground-plan.ts";
import { laidAgain, uprightAgain } from "./laid/index.ts";
import { battenStock, claddingOf } from "./resolve.ts";
import { screwedAs } from "./sheets/edge-zones.ts";
import { laySheets } from "./sheets/layout.ts";
import { rowLevels } from "./sheets/screw-rows.ts";
import { studCentres } from "./solids.ts";
import { supportFindings } from "./support-findings.ts";
import type { ZoneTask } from "./zone-layout-task.ts";
import { battenWithParts, bounded, claddingPiece, heldBatten, plain, supportedBy } from "./zone-parts.ts";

export interface ZoneResult {
  readonly pieces: readonly Piece[];
  readonly joints: readonly Joint[];
  readonly vents: readonly Vent[];
  readonly findings: readonly Finding[];
}

export function layZone(task: ZoneTask): ZoneResult {
  const { project, plane } = task;
  const cladding = claddingOf(project, task.ground.zone);
  const studs = studCentres(project.structure, faceLength(task.ground.face));
  const upright = cladding.kind === "boards" && cladding.direction === "vertical";
  if (upright) return layUprightZone(task, cladding, studs);
  const first = layCladding(task, cladding, studs);
  const draft = task.relaid ? { ...first, ...laidAgain(task.ground, task.relaid, first) } : first;
  const battens = battensFor(task, draft.wishes);
  const lines = battenLines(battens);
  const pointsOn = pointsFor(task, cladding, { lines, pieces: draft.pieces });
  const clad = draft.pieces.map((piece) => ({ piece, points: pointsOn(piece) }));
  const fixAll = claddingFixer(task, cladding);
  const claddingPieces = clad.map(({ piece, points }) =>
    claddingPiece(task, piece, points, fixAll(piece, points)),
  );
  return complete(task, cladding, {
    draft,
    battens,
    rails: [],
    pieces: claddingPieces,
    carried: claddingPieces,
    plane,
  });
}

function pointsFor(
  { ends }: ZoneTask,
  cladding: Cladding,
  { lines, pieces }: { readonly lines: readonly BattenLine[]; readonly pieces: readonly DraftPiece[] },
): (piece: DraftPiece) => CladdingPoint[] {
  if (cladding.kind === "boards") return (piece) => boardPoints(piece, cladding, lines);
  const levels = rowLevels(pieces, cladding);
  const as = screwedAs(cladding, ends);
  return (piece) => sheetPoints(piece, as(piece), { battens: lines, levels });
}

/** Upright boards hang on rails, and the rails on the battens. */
function layUprightZone(task: ZoneTask, cladding: BoardCladding, studs: readonly number[]): ZoneResult {
  const first = layUpright(task, cladding, { studs, battensFor: (wishes) => battensFor(task, wishes) });
  const draft = task.relaid ? { ...first, ...uprightAgain(task.ground, task.relaid, first) } : first;
  const { battens } = draft;
  const fixBoard = boardFixer(task, cladding);
  const boards = draft.boards.map(({ piece, points }) =>
    claddingPiece(task, piece, points, points.map(fixBoard)),
  );
  const over = supportedBy(boards);
  const fixRail = railFixer(task);
  const rails = draft.rails.map(({ rail, points }): Piece => {
    return heldBatten(task, rail, {
      supports: points.map(({ batten }) => batten.mark),
      removeBefore: over.get(rail.mark) ?? [],
      fixings: points.map(fixRail),
    });
  });
  return complete(task, cladding, {
    draft,
    battens,
    rails: draft.rails.map(({ rail }) => rail),
    pieces: [...boards, ...rails],
    carried: rails,
    plane: task.plane,
  });
}

interface Laid {
  readonly draft: { readonly joints: readonly Joint[]; readonly findings: readonly Finding[] };
  readonly battens: readonly DraftBatten[];
  readonly rails: readonly DraftBatten[];
  /** All that lies in front of the battens. */
  readonly pieces: readonly Piece[];
  /** What the battens carry themselves. */
  readonly carried: readonly Piece[];
  readonly plane: ZonePlane;
}

/** Adds what every zone has: the battens' screws and backing, closures, and what is to be said of the supports. */
function complete(task: ZoneTask, cladding: Cladding, laid: Laid): ZoneResult {
  const { battens, plane } = laid;
  const backing = backingMaker(task, battens);
  const closures = closuresOf({ ground: underPost(task), plane, ends: task.ends, battens });
  const screwed = battens.map((batten) => {
    const block = backing.addFor(batten);
    // One block behind an unborne joint holds the ends of both lengths.
    if (batten.joint && !batten.joint.borne) block(batten.joint.at);
    return { batten, ...screwPoints(batten, task.solids, block) };
  });
  const post = cornerPost(task, battens);
  const over = supportedBy([...laid.carried, ...post.pieces]);
  const fixBatten = battenFixer(task);
  const battenPieces = screwed.flatMap(({ batten, points }) =>
    battenWithParts(task, batten, points, { over: over.get(batten.mark) ?? [], fix: fixBatten }),
  );
  const inFront = [...laid.pieces, ...post.pieces].map(bounded);
  const closurePieces = closures.pieces.map((piece) => plain(task.project, piece, inFront));
  const pieces = withEndsTold({
    ground: task.ground,
    ends: task.ends,
    pieces: [...laid.pieces, ...post.pieces, ...battenPieces, ...backing.pieces(), ...closurePieces],
  });
  return {
    pieces,
    joints: laid.draft.joints,
    vents: closures.vents,
    findings: [
      ...laid.draft.findings,
      ...post.findings,
      ...lengthsFinding(task, [...battens, ...laid.rails]),
      ...supportFindings(task, cladding, { pieces, battens, backing: backing.pieces(), missed: screwed }),
    ],
  };
}

function battensFor(task: ZoneTask, wishes: readonly BattenWish[]): DraftBatten[] {
  const { project, plane, solids } = task;
  const layer = plane.layers.find(({ kind }) => kind === "batten");
  return placeBattens({
    ground: underPost(task),
    wishes: [...postWishes(task), ...wishes.filter((wish) => standsOnWall(task, wish))],
    z: layer?.z ?? [0, 0],
    stock: battenStock(project, layer?.stock ?? ""),
    species: project.structure.studs.species,
    kind: "batten",
    holds: (strip) => holdsOf(strip, solids).map(({ y }) => y),
  });
}

/** Past a square outside corner only the corner's own batten stands, on a post in the neighbour's insulation. */
function standsOnWall({ ground, ends }: ZoneTask, { x, reason }: BattenWish): boolean {
  if (reason === "corner") {
    const end = x[0] < 0 ? ends.left : ends.right;
    if (!isSlanted(end)) return end.neighbourInsulation >= LEAST_POST_MM;
  }
  const beyondLeft = ends.left.kind === "external" && x[0] < 0;
  const beyondRight = ends.right.kind === "external" && x[1] > faceLength(ground.face);
  return !beyondLeft && !beyondRight;
}

function layCladding(
  task: ZoneTask,
  cladding: Cladding,
  studs: readonly number[],
): ZoneDraft & { readonly findings: readonly Finding[] } {
  const { project, ground, plane, ends, rod, lines } = task;
  const battenWidth = battenStock(
    project,
    plane.layers.find(({ kind }) => kind === "batten")?.stock ?? "",
  ).width;
  if (cladding.kind === "sheets") {
    return laySheets({
      path: task.path,
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
    ...(task.runnerUp && { runnerUp: task.runnerUp }),
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
