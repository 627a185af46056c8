/** The verifiers must refuse each way of breaking a good length plan or rip plan, by its own code. */
import { describe, expect, it } from "vitest";
import type {
  LengthPlan,
  LengthRequest,
  LengthStock,
  PileBoard,
  RipPlan,
  RipRequest,
} from "../../src/cutting/index.ts";
import { cutLengths, cutPile, verifyLengthPlan, verifyRipPlan } from "../../src/cutting/index.ts";

type Loose<T> = T extends readonly (infer One)[]
  ? Loose<One>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Loose<T[Key]> }
    : T;

const nailRow = { from: 1190, to: 1220 };
const request: LengthRequest = {
  stock: [
    {
      id: "S1",
      length: 2430,
      section: "board 94",
      count: 1,
      board: "A01",
      lot: "A",
      width: 94,
      thickness: 24,
      sound: [
        { from: 0, to: nailRow.from },
        { from: nailRow.to, to: 2430 },
      ],
    },
  ],
  demands: [
    { id: "P1", length: 700, section: "board 94", minWidth: 94, minThickness: 20, lots: ["A"] },
    { id: "P2", length: 450, section: "board 94", lots: ["A"] },
    { id: "P3", length: 600, section: "board 94" },
    { id: "P4", length: 1300, section: "board 94" },
  ],
  kerf: 3,
  endTrim: 10,
  defectMargin: 5,
};
const result = cutLengths(request);

function broken(change: (plan: Loose<LengthPlan>) => void, against: LengthRequest = request): string[] {
  const plan = structuredClone(result.plan) as Loose<LengthPlan>;
  change(plan);
  return verifyLengthPlan({ request: against, plan: plan as LengthPlan }).map((problem) => problem.code);
}

function piece(plan: Loose<LengthPlan>, id: string) {
  const found = plan.bars.flatMap((bar) => bar.pieces).find((one) => one.demandId === id);
  if (found === undefined) throw new Error(`no ${id} in the plan`);
  return found;
}

function shift(plan: Loose<LengthPlan>, id: string, by: number): void {
  const one = piece(plan, id);
  one.from += by;
  one.to += by;
}

function moveTo(plan: Loose<LengthPlan>, id: string, from: number): void {
  shift(plan, id, from - piece(plan, id).from);
}

function withStock(change: Partial<LengthStock>): LengthRequest {
  return { ...request, stock: request.stock.map((one) => ({ ...one, ...change })) };
}

describe("length plan verifier", () => {
  it("finds nothing wrong with the plan to start from", () => {
    expect(verifyLengthPlan({ request, plan: result.plan, claim: result })).toEqual([]);
    expect(result.plan.bars[0]?.pieces).toHaveLength(3);
    expect(result.plan.unplaced).toEqual([{ demandId: "P4", reason: "too-large" }]);
  });

  const breaks: [string, string, (plan: Loose<LengthPlan>) => void][] = [
    ["a piece dropped", "piece-missing", (plan) => plan.bars[0]?.pieces.shift()],
    ["a piece doubled", "piece-twice", (plan) => plan.bars[0]?.pieces.push({ ...piece(plan, "P3") })],
    [
      "a piece nobody asked for",
      "unknown-demand",
      (plan) => {
        piece(plan, "P3").demandId = "P9";
      },
    ],
    [
      "a piece cut short",
      "length-wrong",
      (plan) => {
        piece(plan, "P3").to -= 1;
      },
    ],
    ["a piece over a nail row", "not-sound", (plan) => moveTo(plan, "P3", 900)],
    ["a piece too near a nail row", "not-sound", (plan) => moveTo(plan, "P3", nailRow.to + 4)],
    ["a piece past the end", "outside-stock", (plan) => moveTo(plan, "P3", 2000)],
    ["a piece in the trimmed end", "end-trim-missing", (plan) => moveTo(plan, "P3", 2430 - 600 - 9)],
    ["two pieces in one place", "overlap", (plan) => moveTo(plan, "P2", piece(plan, "P1").from)],
    [
      "two pieces nearer than the blade is wide",
      "kerf-missing",
      (plan) => moveTo(plan, "P2", piece(plan, "P1").to + 2.5),
    ],
    [
      "a bar used oftener than there is of it",
      "over-count",
      (plan) => plan.bars.push({ stockId: "S1", index: 1, pieces: [], rests: [] }),
    ],
    [
      "two bars under one number",
      "index-repeated",
      (plan) => plan.bars.push({ stockId: "S1", index: 0, pieces: [], rests: [] }),
    ],
    [
      "a bar of no stock",
      "unknown-stock",
      (plan) => plan.bars.push({ stockId: "S9", index: 0, pieces: [], rests: [] }),
    ],
    ["a rest where a piece lies", "rest-wrong", (plan) => plan.bars[0]?.rests.push({ from: 100, to: 500 })],
    [
      "a reason that is not so",
      "reason-wrong",
      (plan) => {
        for (const one of plan.unplaced) one.reason = "stock-used-up";
      },
    ],
  ];
  it.each(breaks)("refuses %s: %s", (_, code, change) => {
    expect(broken(change)).toContain(code);
  });

  it.each([
    ["a strip too narrow", "too-narrow", withStock({ width: 93 })],
    ["a strip too thin", "too-thin", withStock({ thickness: 19 })],
    ["another lot", "wrong-lot", withStock({ lot: "B" })],
    ["another section", "wrong-section", withStock({ section: "board 126" })],
  ])("refuses %s: %s", (_, code, against) => {
    expect(broken(() => undefined, against)).toContain(code);
  });
});

const boards: PileBoard[] = [
  {
    id: "C1",
    lot: "C",
    length: 3000,
    width: 205,
    thickness: 25,
    wane: { edge: "left", width: 6 },
    defects: [nailRow],
  },
  { id: "D1", lot: "D", length: 3000, width: 150, thickness: 21, defects: [] },
];
const pieces = (...lengths: number[]) => lengths.map((length, at) => ({ id: `${length} ${at}`, length }));
const { ripRequest, rips, strips } = cutPile({
  boards,
  wanted: [
    { section: "board 94", width: 94, lots: ["C"], minThickness: 22, pieces: pieces(1700, 1700, 1100) },
    { section: "board 126", width: 126, lots: ["D"], pieces: pieces(2900) },
  ],
  kerf: 3,
});

function brokenRips(change: (plan: Loose<RipPlan>) => void, against: RipRequest = ripRequest): string[] {
  const plan = structuredClone(rips) as Loose<RipPlan>;
  change(plan);
  return verifyRipPlan({ request: against, plan: plan as RipPlan }).map((problem) => problem.code);
}

function across(plan: Loose<RipPlan>, board: number, strip: number) {
  const found = plan.boards[board]?.strips[strip]?.across;
  if (found === undefined) throw new Error("no such strip");
  return found;
}

function slide(span: { from: number; to: number }, by: number): void {
  span.from += by;
  span.to += by;
}

describe("rip plan verifier", () => {
  it("finds nothing wrong with the plan to start from", () => {
    expect(verifyRipPlan({ request: ripRequest, plan: rips, strips })).toEqual([]);
    expect(rips.boards.map((one) => one.strips.length)).toEqual([2, 1]);
  });

  const breaks: [string, string, (plan: Loose<RipPlan>) => void][] = [
    [
      "a strip a millimetre narrow",
      "strip-width-wrong",
      (plan) => {
        across(plan, 0, 0).to -= 1;
      },
    ],
    ["a strip into the wane", "strip-outside", (plan) => slide(across(plan, 0, 0), -1)],
    ["a strip off the straight edge", "strip-outside", (plan) => slide(across(plan, 1, 0), 30)],
    ["two strips in one place", "overlap", (plan) => slide(across(plan, 0, 1), -20)],
    ["two strips nearer than the blade is wide", "kerf-missing", (plan) => slide(across(plan, 0, 1), -1)],
    ["a board ripped twice", "board-twice", (plan) => plan.boards.push({ boardId: "D1", strips: [] })],
    ["a board not in the pile", "unknown-board", (plan) => plan.boards.push({ boardId: "Z9", strips: [] })],
    [
      "two strips of one name",
      "strip-twice",
      (plan) => {
        for (const strip of plan.boards[0]?.strips ?? []) strip.id = "same";
      },
    ],
    [
      "a width nobody asked for",
      "unknown-section",
      (plan) => {
        for (const strip of plan.boards[0]?.strips ?? []) strip.section = "board 70";
      },
    ],
    [
      "more had than the boards give",
      "supply-wrong",
      (plan) => {
        for (const one of plan.supply) one.had += 100;
      },
    ],
  ];
  it.each(breaks)("refuses %s: %s", (_, code, change) => {
    expect(brokenRips(change)).toContain(code);
  });

  it("refuses a strip from a lot or a thickness that was not allowed", () => {
    const only = (change: Partial<RipRequest["widths"][number]>): RipRequest => ({
      ...ripRequest,
      widths: ripRequest.widths.map((width) => ({ ...width, ...change })),
    });
    expect(brokenRips(() => undefined, only({ lots: ["E"] }))).toContain("wrong-lot");
    expect(brokenRips(() => undefined, only({ minThickness: 26 }))).toContain("too-thin");
  });

  it("refuses strips handed on with another lot or with their defects forgotten: strip-stock-wrong", () => {
    const changed = (change: Partial<LengthStock>) =>
      verifyRipPlan({
        request: ripRequest,
        plan: rips,
        strips: strips.map((one) => ({ ...one, ...change })),
      });
    expect(changed({ lot: "E" }).map((problem) => problem.code)).toContain("strip-stock-wrong");
    expect(changed({ sound: [{ from: 0, to: 3000 }] }).map((problem) => problem.code)).toContain(
      "strip-stock-wrong",
    );
    expect(verifyRipPlan({ request: ripRequest, plan: rips, strips: strips.slice(1) })).not.toEqual([]);
  });
});
