/** Lays out a sheet zone: columns, rows, joints and what battens they need. */
import { type Finding, finding } from "../../findings/finding.ts";
import { type Interval, intervalLength } from "../../geometry/interval.ts";
import { polygonBounds, type Region } from "../../geometry/polygon.ts";
import { rectsOverlap } from "../../geometry/rect.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { type DraftPiece, jointsOf, type ZoneDraft } from "../draft.ts";
import { type Joint, SQUARE_ENDS } from "../facade.ts";
import { freeWithin } from "../ground-plan.ts";
import { letter, markOf } from "../marks.ts";
import { sheetBattenWishes } from "./battens.ts";
import { type ColumnPlan, planColumns } from "./columns.ts";
import { stackColumn, tallestFor, widthOfModule } from "./rows.ts";
import type { SheetZone } from "./zone.ts";

export function laySheets(zone: SheetZone): ZoneDraft & { readonly findings: readonly Finding[] } {
  const { ground, cladding } = zone;
  const plan = planColumns(zone);
  const pieces: DraftPiece[] = [];
  const joints: Joint[] = [];
  plan.columns.forEach((x, column) => {
    const stack = stackColumn(zone, x);
    let row = 0;
    for (const y of stack.rows) {
      for (const region of freeWithin(ground, { x, y })) {
        pieces.push(sheetPiece(zone, plan, { region, column, row: letter(row) }));
        row += 1;
      }
    }
    for (const y of stack.joints) {
      joints.push(...jointStrip(zone, { x, y }, { along: "x", width: cladding.joint }));
    }
  });
  for (const { x, line } of plan.joints) {
    joints.push(
      ...jointStrip(zone, { x, y: ground.bounds.y }, { along: "y", width: intervalLength(x), line }),
    );
  }
  return {
    pieces,
    joints,
    wishes: sheetBattenWishes(zone, plan),
    findings: layoutFindings(zone, plan, pieces),
  };
}

function jointStrip(
  zone: SheetZone,
  rect: { x: Interval; y: Interval },
  { along, width, line }: { along: "x" | "y"; width: number; line?: string | undefined },
): Joint[] {
  return jointsOf(freeWithin(zone.ground, rect), {
    kind: "sheet joint",
    face: zone.ground.face.id,
    zone: zone.ground.zone.id,
    width: snap(width),
    along,
    ...(line && { line }),
  });
}

function sheetPiece(
  zone: SheetZone,
  plan: ColumnPlan,
  at: { region: Region; column: number; row: string },
): DraftPiece {
  const { ground, cladding, plane } = zone;
  const { x, y } = polygonBounds(at.region.outline);
  const size = { length: snap(y[1] - y[0]), width: snap(x[1] - x[0]) };
  const line = plan.joints.find((joint) => joint.x[1] === x[0] || joint.x[0] === x[1])?.line;
  const stock = smallestStock(zone, size);
  return {
    mark: markOf({
      face: ground.face,
      zone: ground.zone.id,
      kind: "sheet",
      number: `${at.column + 1}${at.row}`,
    }),
    kind: "sheet",
    face: ground.face.id,
    zone: ground.zone.id,
    outline: at.region.outline,
    holes: at.region.holes,
    z: [plane.backZ, plane.faceZ],
    ends: SQUARE_ENDS,
    material: cladding.material,
    ...(stock && { stock }),
    cut: { ...size, thickness: cladding.thickness },
    why: {
      ...(line && { line }),
      rule: line ? message("setout.why.jamb", { line }) : message("setout.why.equal", { width: size.width }),
    },
  };
}

/** The least sheet of the stock that the piece comes out of, standing or turned. */
function smallestStock(
  zone: SheetZone,
  { length, width }: { length: number; width: number },
): string | undefined {
  const fits = zone.stock.filter(({ width: w, height: h }) => {
    const [clearW, clearH] = [w - 2 * zone.trim, h - 2 * zone.trim];
    return (clearW >= width && clearH >= length) || (clearW >= length && clearH >= width);
  });
  return fits.sort((a, b) => a.width * a.height - b.width * b.height)[0]?.id;
}

function layoutFindings(zone: SheetZone, plan: ColumnPlan, pieces: readonly DraftPiece[]): Finding[] {
  const where = { face: zone.ground.face.id, zone: zone.ground.zone.id };
  const module = widthOfModule(zone);
  const share = (piece: DraftPiece): number => Math.min(piece.cut.length, piece.cut.width) / module;
  const oversize = pieces.filter((piece) => piece.cut.length > tallestFor(zone, piece.cut.width) + 1e-9);
  const notched = pieces.filter((piece) => isNotched(zone, piece));
  const slivers = pieces.filter((piece) => share(piece) < zone.sliver.floor);
  const narrow = pieces.filter((piece) => share(piece) < zone.sliver.wish && !slivers.includes(piece));
  const marks = (list: readonly DraftPiece[]): string[] => list.map(({ mark }) => mark);
  const findings: Finding[] = [
    finding({
      code: "S004",
      outcome: notched.length > 0 ? "attention" : "pass",
      where: { ...where, ...(notched.length > 0 && { marks: marks(notched) }) },
      says: message(notched.length > 0 ? "setout.sheets.notched" : "setout.sheets.laid", {
        pieces: pieces.length,
        notched: notched.length,
        candidates: plan.candidates,
      }),
      source: { kind: "common practice" },
    }),
  ];
  if (oversize.length > 0) {
    findings.push(
      finding({
        code: "S006",
        outcome: "fail",
        where: { ...where, marks: marks(oversize) },
        says: message("setout.sheets.oversize", { pieces: oversize.length }),
        hint: message("setout.sheets.oversize.hint"),
        source: { kind: "your project" },
      }),
    );
  }
  for (const [list, key, limit] of [
    [slivers, "setout.sheets.sliver", zone.sliver.floor],
    [narrow, "setout.sheets.narrow", zone.sliver.wish],
  ] as const) {
    if (list.length === 0) continue;
    const least = Math.min(...list.map(share));
    findings.push(
      finding({
        code: "S005",
        outcome: "attention",
        where: { ...where, marks: marks(list) },
        says: message(key, { pieces: list.length, least: snap(least * module), limit: snap(limit * module) }),
        demand: Math.round(least * 1000) / 1000,
        limit,
        unit: "1",
        ratio: Math.round((limit / least) * 1000) / 1000,
        source: { kind: "common practice" },
      }),
    );
  }
  return findings;
}

function isNotched(zone: SheetZone, piece: DraftPiece): boolean {
  const box = polygonBounds(piece.outline);
  return zone.ground.keepOuts.some(({ rect }) => rectsOverlap(rect, box));
}
