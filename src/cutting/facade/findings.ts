/** What cutting has to say: what is short, what has no stock, what a verifier refused, how near each part is to its bound. */
import { type Finding, finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { type Message, message } from "../../text/message.ts";
import { gapMm } from "../../units/rounding.ts";
import type { UnplacedReason } from "../model.ts";
import type { CutPlan, LengthPart, PilePart, PileWant, SheetPart } from "./plan.ts";
import type { Refusal } from "./verify-parts.ts";

const MM_PER_M = 1000;

/** C001: for each width, what the pile gives of what is wanted, lot by lot, and what is then bought or to be found. */
export function pileFindings(project: Project, plan: CutPlan): Finding[] {
  const { rips } = plan;
  return rips ? rips.wants.flatMap((want) => pileFinding(project, plan, { rips, want })) : [];
}

function pileFinding(
  project: Project,
  { boards }: CutPlan,
  { rips, want }: { readonly rips: PilePart; readonly want: PileWant },
): Finding[] {
  const missing = new Set(rips.result.lengths.plan.unplaced.map(({ demandId }) => demandId));
  const pieces = rips.request.wanted.find(({ section }) => section === want.section)?.pieces ?? [];
  const left = pieces.filter(({ id }) => missing.has(id));
  if (left.length === 0) return [];
  const lots = metresByLot(rips, want.section);
  const wanted = metres(pieces);
  const had = lots.reduce((sum, lot) => sum + lot.metres, 0);
  const toFind = boards.toFind.find((one) => one.cladding === want.cladding && one.width === want.width);
  const { width, thickness, cladding } = want;
  return [
    finding({
      code: "C001",
      outcome: "attention",
      where: {
        path: `/claddings/${project.claddings.findIndex(({ id }) => id === cladding)}/lots`,
        marks: left.map(({ id }) => id),
      },
      says: message("schedule.cut.pile-short", {
        cladding,
        width,
        wanted,
        had,
        lots:
          lots.length > 0
            ? lots.map(({ lot, metres }) => message("schedule.cut.lot-gives", { lot, metres }))
            : message("schedule.cut.no-lot"),
        count: left.length,
        short: metres(left),
        longest: longestOf(left),
      }),
      hint: toFind
        ? message("schedule.cut.pile-short.find", { width, thickness })
        : message("schedule.cut.pile-short.bought"),
      demand: wanted,
      limit: had,
      unit: "m",
      ...(had > 0 ? { ratio: wanted / had } : {}),
    }),
  ];
}

/** Metres of pieces that each lot gives of a section. */
function metresByLot(
  { result }: PilePart,
  section: string,
): { readonly lot: string; readonly metres: number }[] {
  const strips = new Map(result.strips.map((strip) => [strip.id, strip]));
  const sums = new Map<string, number>();
  for (const bar of result.lengths.plan.bars) {
    const strip = strips.get(bar.stockId);
    if (strip?.section !== section || strip.lot === undefined) continue;
    const length = bar.pieces.reduce((sum, { from, to }) => sum + to - from, 0);
    sums.set(strip.lot, (sums.get(strip.lot) ?? 0) + length);
  }
  return [...sums]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([lot, length]) => ({ lot, metres: length / MM_PER_M }));
}

function metres(pieces: readonly { readonly length: number }[]): number {
  return pieces.reduce((sum, { length }) => sum + length, 0) / MM_PER_M;
}

function longestOf(pieces: readonly { readonly length: number }[]): number {
  return leastSize(pieces.reduce((most, { length }) => Math.max(most, length), 0));
}

/** What a stock must be at least as long as, so it is rounded up. */
function leastSize(length: number): number {
  return gapMm(length, { step: 0.5 });
}

interface Without {
  readonly stock: string | Message;
  readonly path: string;
  readonly reason: UnplacedReason;
  readonly marks: readonly string[];
  readonly longest: number;
  /** Backing stands in no list of the project: that it has no section in stock is normal. */
  readonly mayBeMissing: boolean;
  readonly hint: "hint" | "backing" | "boards";
}

/** C002: pieces that no stock can give. Boards that the pile was asked for first are C001's. */
export function stockFindings(project: Project, plan: CutPlan): Finding[] {
  const fromPile = new Set(
    plan.rips?.request.wanted.flatMap(({ pieces }) => pieces.map(({ id }) => id)) ?? [],
  );
  const boards = plan.boards.toFind.flatMap((one): Without[] => {
    const pieces = one.pieces.filter(({ mark }) => !fromPile.has(mark));
    if (pieces.length === 0) return [];
    const asked = plan.boards.bought.some(({ request }) =>
      request.demands.some(({ id }) => id === pieces[0]?.mark),
    );
    const known = project.stock.boards?.some(({ species }) => species === one.species);
    const { cladding, thickness, width } = one;
    return [
      {
        stock: message("schedule.cut.board-section", { cladding, thickness, width }),
        path: project.stock.boards ? "/stock/boards" : "/stock",
        reason: asked ? "too-large" : known ? "no-match" : "no-stock",
        marks: pieces.map(({ mark }) => mark),
        longest: longestOf(pieces),
        mayBeMissing: false,
        hint: "boards",
      },
    ];
  });
  return [
    ...plan.sheets.flatMap((part) =>
      without(part, {
        stock: part.claddings.join(", "),
        path: "/stock/sheets",
        mayBeMissing: false,
        hint: "hint",
      }),
    ),
    ...plan.lengths.flatMap((part) =>
      without(part, {
        stock:
          part.stock ?? message("schedule.cut.section", { thickness: part.thickness, width: part.width }),
        path: "/stock/battens",
        mayBeMissing: part.use === "backing",
        hint: part.use === "backing" ? "backing" : "hint",
      }),
    ),
    ...boards,
  ].map(stockFinding);
}

function without(
  { request, result }: SheetPart | LengthPart,
  about: Pick<Without, "stock" | "path" | "mayBeMissing" | "hint">,
): Without[] {
  const lengths = new Map(
    request.demands.map((demand) => [
      demand.id,
      "length" in demand ? demand.length : Math.max(demand.width, demand.height),
    ]),
  );
  const reasons = [...new Set(result.plan.unplaced.map(({ reason }) => reason))];
  return reasons.map((reason) => {
    const marks = result.plan.unplaced.filter((one) => one.reason === reason).map(({ demandId }) => demandId);
    const longest = marks.reduce((most, mark) => Math.max(most, lengths.get(mark) ?? 0), 0);
    return { ...about, reason, marks, longest: leastSize(longest) };
  });
}

function stockFinding({ stock, path, reason, marks, longest, mayBeMissing, hint }: Without): Finding {
  return finding({
    code: "C002",
    outcome: mayBeMissing ? "attention" : "fail",
    where: { path, marks },
    says: message("schedule.cut.without-stock", {
      count: marks.length,
      stock,
      longest,
      why: message(`schedule.cut.reason.${reason}`),
    }),
    hint: message(`schedule.cut.without-stock.${hint}`),
  });
}

/** C003: an error of the program. One finding a part: the first problem says enough to look for it. */
export function refusalFindings(refused: readonly Refusal[]): Finding[] {
  const parts = [...new Set(refused.map(({ part }) => part))];
  return parts.flatMap((part) => {
    const ofPart = refused.filter((one) => one.part === part);
    const [first] = ofPart;
    if (first === undefined) return [];
    const { code, where } = first.problem;
    return [
      finding({
        code: "C003",
        outcome: "cannot evaluate",
        where: {},
        says: message("schedule.cut.refused", {
          part: message(`schedule.cut.part-of.${part}`),
          count: ofPart.length,
          problem: code,
          where,
        }),
        hint: message("schedule.cut.refused.hint"),
      }),
    ];
  });
}

/** C004: what each part costs, what it must cost at least, and whether less is possible. */
export function boundFindings(project: Project, { sheets, lengths, rips, boards }: CutPlan): Finding[] {
  const { currency } = project.stock;
  return [
    ...sheets.map((part) =>
      boundFinding(message("schedule.cut.part.sheets", { thickness: part.thickness }), part, currency),
    ),
    ...[...lengths, ...boards.bought].map((part) =>
      boundFinding(
        message(`schedule.cut.part.${part.use}`, { width: part.width, thickness: part.thickness }),
        part,
        currency,
      ),
    ),
    ...(rips
      ? [
          boundFinding(
            message("schedule.cut.part.pile"),
            { result: rips.result.lengths, costIn: "m2" },
            currency,
          ),
          leftOutFinding(rips),
        ]
      : []),
  ].flat();
}

function boundFinding(
  part: Message,
  { result, costIn }: Pick<SheetPart | LengthPart, "costIn"> & { readonly result: CostAndBound },
  currency: string,
): Finding[] {
  const { cost, bound } = result;
  if (cost <= 0) return [];
  const isLeast = bound.bound >= cost;
  const amount = (value: number): Message => message(`schedule.amount.${costIn}`, { value, currency });
  return [
    finding({
      code: "C004",
      outcome: "pass",
      where: {},
      says: message(isLeast ? "schedule.cut.proven" : "schedule.cut.bound", {
        part,
        cost: amount(cost),
        bound: amount(bound.bound),
        gap: 100 * bound.gap,
      }),
    }),
  ];
}

/** What the pile leaves out weighs before the boards that it takes. */
function leftOutFinding({ result: { leftOut } }: PilePart): Finding[] {
  const { area, least } = leftOut;
  if (area <= 0) return [];
  const amount = (value: number): Message => message("schedule.amount.m2", { value });
  return [
    finding({
      code: "C004",
      outcome: "pass",
      where: {},
      says: message(area <= least ? "schedule.cut.left-least" : "schedule.cut.left-bound", {
        area: amount(area),
        least: amount(least),
      }),
    }),
  ];
}

type CostAndBound = Pick<SheetPart["result"] | LengthPart["result"], "cost" | "bound">;
