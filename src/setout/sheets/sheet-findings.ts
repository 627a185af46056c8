/** What there is to say of a zone's layout: its score, notches with their reliefs, slivers, pieces beyond the stock. */
import { type Finding, finding } from "../../findings/finding.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { rectsOverlap } from "../../geometry/rect.ts";
import { type Message, message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { DraftPiece } from "../draft.ts";
import type { ColumnPlan } from "./plan.ts";
import { RELIEF_DIAMETER_MM } from "./reliefs.ts";
import { nextBest, scoreWords } from "./score-words.ts";
import { fitsShape, moduleOf, shapesOf } from "./shapes.ts";
import type { SheetZone } from "./zone.ts";

export function layoutFindings(zone: SheetZone, plan: ColumnPlan, pieces: readonly DraftPiece[]): Finding[] {
  return [
    scoreFinding(zone, plan, pieces),
    ...oversizeFindings(zone, pieces),
    ...sliverFindings(zone, pieces),
  ];
}

function whereOf(zone: SheetZone, pieces: readonly DraftPiece[] = []): Finding["where"] {
  const marks = pieces.map(({ mark }) => mark);
  return { face: zone.ground.face.id, zone: zone.ground.zone.id, ...(marks.length > 0 && { marks }) };
}

function scoreFinding(zone: SheetZone, plan: ColumnPlan, pieces: readonly DraftPiece[]): Finding {
  const notched = pieces.filter((piece) => isNotched(zone, piece));
  const values = {
    pieces: pieces.length,
    candidates: plan.candidates,
    score: scoreWords(plan.score),
    next: plan.runnerUp ? nextBest(plan, plan.runnerUp) : message("setout.sheets.alone"),
  };
  return finding({
    code: "S004",
    outcome: notched.length > 0 ? "attention" : "pass",
    where: whereOf(zone, notched),
    says: notched.length > 0 ? notchedWords(notched, values, plan) : laidWords(values, plan),
    source: { kind: "common practice" },
  });
}

type Values = Readonly<Record<"pieces" | "candidates", number> & Record<"score" | "next", Message>>;

function laidWords(values: Values, { bound }: ColumnPlan): Message {
  return message("setout.sheets.laid", { least: bound.unnotched, ...values });
}

function notchedWords(notched: readonly DraftPiece[], values: Values, { bound }: ColumnPlan): Message {
  return message("setout.sheets.notched", {
    least: bound.least,
    notched: notched.length,
    corners: notched.reduce((sum, { reliefs }) => sum + (reliefs?.length ?? 0), 0),
    relief: RELIEF_DIAMETER_MM,
    ...values,
  });
}

function isNotched(zone: SheetZone, piece: DraftPiece): boolean {
  const box = polygonBounds(piece.outline);
  return zone.ground.keepOuts.some(({ rect }) => rectsOverlap(rect, box));
}

function oversizeFindings(zone: SheetZone, pieces: readonly DraftPiece[]): Finding[] {
  const shapes = shapesOf(zone);
  const oversize = pieces.filter(({ cut }) => !fitsShape(shapes, { width: cut.width, height: cut.length }));
  if (oversize.length === 0) return [];
  return [
    finding({
      code: "S006",
      outcome: "fail",
      where: whereOf(zone, oversize),
      says: message("setout.sheets.oversize", { pieces: oversize.length }),
      hint: message("setout.sheets.oversize.hint"),
      source: { kind: "your project" },
    }),
  ];
}

function sliverFindings(zone: SheetZone, pieces: readonly DraftPiece[]): Finding[] {
  const module = moduleOf(zone);
  const share = (piece: DraftPiece): number => Math.min(piece.cut.length, piece.cut.width) / module;
  const slivers = pieces.filter((piece) => share(piece) < zone.sliver.floor);
  const narrow = pieces.filter((piece) => share(piece) < zone.sliver.wish && !slivers.includes(piece));
  const told = [
    [slivers, "setout.sheets.sliver", zone.sliver.floor],
    [narrow, "setout.sheets.narrow", zone.sliver.wish],
  ] as const;
  return told.flatMap(([list, key, limit]) => {
    if (list.length === 0) return [];
    const least = Math.min(...list.map(share));
    return [
      finding({
        code: "S005",
        outcome: "attention",
        where: whereOf(zone, list),
        says: message(key, { pieces: list.length, least: snap(least * module), limit: snap(limit * module) }),
        demand: Math.round(least * 1000) / 1000,
        limit,
        unit: "1",
        ratio: Math.round((limit / least) * 1000) / 1000,
        source: { kind: "common practice" },
      }),
    ];
  });
}
