/** Lays out one zone: cladding, battens with their screws and backing, closures, and the cladding's screws. */
import { type Finding, finding } from "../findings/finding.ts";
import type { Interval } from "../geometry/interval.ts";
import type { Cladding } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { backingMaker } from "./backing.ts";
import { screwPoints } from "./batten-screws.ts";
import { type DraftBatten, placeBattens } from "./battens.ts";
import { layCourses } from "./boards/courses.ts";
import { tipWishes } from "./boards/tips.ts";
import { boardPoints, type CladdingPoint, fixedPoint, sheetPoints } from "./cladding-screws.ts";
import { closuresOf } from "./closures.ts";
import { faceLength } from "./corners.ts";
import type { BattenWish, DraftPiece, ZoneDraft } from "./draft.ts";
import type { Fixing, Joint, Piece, Vent } from "./facade.ts";
import { battenFixer, boardFixer, sheetFixer } from "./fixings.ts";
import type { ZoneGround } from "./ground-plan.ts";
import { battenStock, claddingOf } from "./resolve.ts";
import { laySheets } from "./sheets/layout.ts";
import { studCentres } from "./solids.ts";
import { supportFindings } from "./support-findings.ts";
import type { ZoneTask } from "./zone-layout-task.ts";
import { battenWithParts, claddingPiece, plain, supportedBy } from "./zone-parts.ts";

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
