/** Lays out a sheet zone: columns, rows, joints and what battens they need. */
import type { Finding } from "../../findings/finding.ts";
import { type Interval, intervalLength } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Region } from "../../geometry/region.ts";
import { type Message, message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { cutLength, endsAt } from "../corners.ts";
import { type DraftPiece, jointsOf, type ZoneDraft } from "../draft.ts";
import type { Joint, Why } from "../facade.ts";
import { freeWithin } from "../ground-plan.ts";
import { letter, markOf } from "../marks.ts";
import { sheetBattenWishes } from "./battens.ts";
import type { JointAnswers } from "./candidates.ts";
import { levelWhy, uprightWhy } from "./joint-why.ts";
import { pinFindings } from "./pin-findings.ts";
import { type ColumnPlan, planColumns } from "./plan.ts";
import { reliefsOf } from "./reliefs.ts";
import { nextBest } from "./score-words.ts";
import { layoutFindings } from "./sheet-findings.ts";
import type { SheetZone } from "./zone.ts";

export function laySheets(zone: SheetZone): ZoneDraft & { readonly findings: readonly Finding[] } {
  const { ground, cladding } = zone;
  const plan = planColumns(zone);
  const pieces: DraftPiece[] = [];
  const joints: Joint[] = [];
  plan.columns.forEach(({ x, stack }, column) => {
    const why = whyOf(plan, x, stack.rows);
    let row = 0;
    for (const y of stack.rows) {
      for (const region of freeWithin(ground, { x, y })) {
        pieces.push(sheetPiece(zone, { region, column, row: letter(row), why }));
        row += 1;
      }
    }
    for (const y of stack.joints) {
      const level = { along: "x", width: cladding.joint, why: levelWhy(plan, x, y[0]) } as const;
      joints.push(...jointStrip(zone, { x, y }, level));
    }
  });
  for (const joint of plan.joints) {
    const { x, line } = joint;
    const upright = { along: "y", width: intervalLength(x), line, why: uprightWhy(plan, joint) } as const;
    joints.push(...jointStrip(zone, { x, y: ground.bounds.y }, upright));
  }
  return {
    pieces,
    joints,
    wishes: sheetBattenWishes(zone, plan),
    findings: [...layoutFindings(zone, plan, pieces), ...pinFindings(zone, plan)],
  };
}

function jointStrip(
  zone: SheetZone,
  rect: { x: Interval; y: Interval },
  { along, width, line, why }: { along: "x" | "y"; width: number; line?: string | undefined; why: Why },
): Joint[] {
  return jointsOf(freeWithin(zone.ground, rect), {
    kind: "sheet joint",
    face: zone.ground.face.id,
    zone: zone.ground.zone.id,
    width: snap(width),
    along,
    why,
    ...(line && { line }),
  });
}

/** What says most of why a column stands where it does comes first. */
const TELLING: readonly JointAnswers[] = ["pin", "jamb", "centre", "equal", "stud", "stock", "band"];

/** Why a column is where it is: the most telling of the joints at its sides, and what was rejected if it differs here. */
function whyOf(plan: ColumnPlan, x: Interval, rows: readonly Interval[]): Why {
  const sides = plan.joints
    .filter((joint) => joint.x[1] === x[0] || joint.x[0] === x[1])
    .sort((a, b) => TELLING.indexOf(a.answers) - TELLING.indexOf(b.answers));
  const line = sides.find((side) => side.line)?.line;
  const stays = plan.runnerUp?.columns.some(
    ({ x: other, stack }) =>
      same(other, x) && stack.rows.length === rows.length && stack.rows.every(isIn(rows)),
  );
  return {
    rule: ruleOf(sides[0]?.answers, line, snap(intervalLength(x))),
    ...(line && { line }),
    ...(plan.runnerUp && !stays && { runnerUp: nextBest(plan, plan.runnerUp) }),
  };
}

function ruleOf(answers: JointAnswers | undefined, line: string | undefined, width: number): Message {
  if (answers === "pin") return message("setout.sheets.why.pin");
  if (line) return message("setout.why.jamb", { line });
  if (answers === "centre") return message("setout.sheets.why.centre");
  if (answers === "stud") return message("setout.sheets.why.stud");
  if (answers === "stock") return message("setout.sheets.why.stock", { width });
  if (answers === "band") return message("setout.sheets.why.band");
  return message("setout.why.equal", { width });
}

function same(a: Interval, b: Interval): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

function isIn(rows: readonly Interval[]): (row: Interval, i: number) => boolean {
  return (row, i) => same(row, rows[i] as Interval);
}

function sheetPiece(
  zone: SheetZone,
  at: { region: Region; column: number; row: string; why: Why },
): DraftPiece {
  const { ground, cladding, plane } = zone;
  const { outline, holes } = at.region;
  const { x, y } = polygonBounds(outline);
  const ends = endsAt(x, zone.ends);
  const size = { length: snap(y[1] - y[0]), width: cutLength(x, ends, cladding.thickness) };
  const stock = smallestStock(zone, size);
  const reliefs = reliefsOf(at.region);
  const piece: { -readonly [Key in keyof DraftPiece]: DraftPiece[Key] } = {
    mark: markOf({
      face: ground.face,
      zone: ground.zone.id,
      kind: "sheet",
      number: `${at.column + 1}${at.row}`,
    }),
    kind: "sheet",
    face: ground.face.id,
    zone: ground.zone.id,
    outline,
    holes,
    z: [plane.backZ, plane.faceZ],
    ends,
    material: cladding.material,
    cut: { length: size.length, width: size.width, thickness: cladding.thickness },
    why: at.why,
  };
  if (reliefs.length > 0) piece.reliefs = reliefs;
  if (stock) piece.stock = stock;
  return piece;
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
