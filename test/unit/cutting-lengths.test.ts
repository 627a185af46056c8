import { describe, expect, it } from "vitest";
import type { LengthDemand, LengthRequest, PileBoard } from "../../src/cutting/index.ts";
import { cutLengths, cutPile, soundRuns, verifyLengthPlan, verifyRipPlan } from "../../src/cutting/index.ts";

function pieces(count: number, length: number, section = "batten"): LengthDemand[] {
  return Array.from({ length: count }, (_, index) => ({ id: `${length}-${index + 1}`, length, section }));
}

function bar(id: string, length: number, cost: number) {
  return { id, length, cost, section: "batten", sound: [{ from: 0, to: length }] };
}

describe("bars", () => {
  it("three 813 and two blades fill 2447, and no less than 2447", () => {
    const demands = pieces(3, 813);
    expect(cutLengths({ stock: [bar("b", 2447, 1)], demands, kerf: 4 }).plan.bars).toHaveLength(1);
    expect(cutLengths({ stock: [bar("b", 2446, 1)], demands, kerf: 4 }).plan.bars).toHaveLength(2);
  });

  it("chooses among lengths by what the plan costs", () => {
    const stock = [bar("2440", 2440, 5.12), bar("3050", 3050, 6.41), bar("3660", 3660, 7.69)];
    const result = cutLengths({ stock, demands: pieces(6, 1010), kerf: 4 });
    expect(result.plan.bars.map((one) => one.stockId)).toEqual(["3050", "3050"]);
    expect(result.cost).toBe(12.82);
  });

  it("lays no piece over a defect or into a trimmed end", () => {
    const request: LengthRequest = {
      stock: [
        {
          ...bar("b", 2400, 1),
          count: 1,
          sound: [
            { from: 0, to: 1190 },
            { from: 1220, to: 2400 },
          ],
        },
      ],
      demands: [...pieces(2, 1170), ...pieces(1, 1500)],
      kerf: 4,
      endTrim: 10,
    };
    const result = cutLengths(request);
    expect(result.plan.bars[0]?.pieces.map((one) => [one.from, one.to])).toEqual([
      [10, 1180],
      [1220, 2390],
    ]);
    expect(result.plan.unplaced).toEqual([{ demandId: "1500-1", reason: "too-large" }]);
    expect(verifyLengthPlan({ request, plan: result.plan, claim: result })).toEqual([]);
  });

  it("says why a piece can't be had", () => {
    const result = cutLengths({
      stock: [{ ...bar("b", 2400, 1), count: 1, width: 94, lot: "A" }],
      demands: [
        { id: "wide", length: 500, section: "batten", minWidth: 95 },
        { id: "lot", length: 500, section: "batten", lots: ["B"] },
        { id: "other", length: 500, section: "board" },
        ...pieces(1, 1300),
        ...pieces(1, 1200),
      ],
      kerf: 4,
    });
    expect(result.plan.unplaced).toEqual([
      { demandId: "wide", reason: "no-match" },
      { demandId: "lot", reason: "no-match" },
      { demandId: "1200-1", reason: "stock-used-up" },
      { demandId: "other", reason: "no-stock" },
    ]);
  });
});

describe("rips", () => {
  const board = (id: string, lot: string, width: number, more: Partial<PileBoard> = {}): PileBoard => ({
    id,
    lot,
    length: 3000,
    width,
    thickness: 25,
    defects: [],
    ...more,
  });
  const cut = (boards: PileBoard[], width: number, lengths: number[], lots?: string[]) => {
    const pieces = lengths.map((length, at) => ({ id: `p${at}`, length }));
    const wanted = [{ section: `board ${width}`, width, pieces, ...(lots === undefined ? {} : { lots }) }];
    const result = cutPile({ boards, wanted, kerf: 3 });
    expect(verifyRipPlan({ request: result.ripRequest, plan: result.rips, strips: result.strips })).toEqual(
      [],
    );
    return result;
  };

  it("94 + 94 with kerf 3 and 2.5 off each edge needs 196 of sound width; wane comes off besides", () => {
    const placed = (width: number, wane: number) => {
      const one = board("a", "C", width, wane > 0 ? { wane: { edge: "left", width: wane } } : {});
      return cut([one], 94, [2900, 2900]);
    };
    expect(placed(196, 0).lengths.plan.unplaced).toHaveLength(0);
    expect(placed(195.5, 0).lengths.plan.unplaced).toHaveLength(1);
    expect(placed(196, 5).lengths.plan.unplaced).toHaveLength(1);
    expect(placed(201, 5).rips.boards[0]?.strips.map((strip) => strip.across)).toEqual([
      { from: 7.5, to: 101.5 },
      { from: 104.5, to: 198.5 },
    ]);
  });

  it("takes a width only from its own lots, and tells what each lot gives and what is short", () => {
    const boards = [board("a", "A", 150), board("b", "B", 150), board("c", "C", 150)];
    const { rips, lengths } = cut(boards, 126, [2997, 2997, 2997], ["A", "B"]);
    expect(rips.boards.map((one) => one.boardId)).toEqual(["a", "b"]);
    expect(lengths.plan.unplaced).toEqual([{ demandId: "p2", reason: "stock-used-up" }]);
    expect(rips.supply).toEqual([
      {
        section: "board 126",
        wanted: 9000,
        had: 6000,
        short: 3000,
        byLot: [
          { lot: "A", had: 3000 },
          { lot: "B", had: 3000 },
        ],
      },
    ]);
  });

  it("leaves boards whole that are not needed", () => {
    const boards = [board("a", "A", 150), board("b", "A", 150), board("c", "A", 150)];
    expect(cut(boards, 126, [1400, 1400]).rips.boards).toHaveLength(1);
  });

  it.each([
    ["lot", (even: boolean) => ({ lot: even ? "A" : "B" })],
    [
      "look, where boards of one lot were sorted by colour or char",
      (even: boolean) => ({ look: even ? "pale" : "dark" }),
    ],
  ])("cuts a face from one %s, where there is enough of it", (_, of) => {
    const boards = Array.from({ length: 12 }, (_, at) => board(`a${at}`, "A", 150, of(at % 2 === 0)));
    const wanted = ["front", "west"].map((group) => ({
      section: group,
      width: 126,
      pieces: Array.from({ length: 5 }, (_, at) => ({ id: `${group} ${at}`, length: 2900, group })),
    }));
    const { lengths, strips } = cutPile({ boards, wanted, kerf: 3 });
    const boardOf = new Map(boards.map((one) => [one.id, one]));
    const kindOf = new Map(
      strips.map((strip) => {
        const { lot, look = "" } = boardOf.get(strip.board ?? "") ?? board("", "", 0);
        return [strip.id, `${lot} ${look}`];
      }),
    );
    const kinds = ["front", "west"].map(
      (face) =>
        new Set(
          lengths.plan.bars
            .filter(({ pieces }) => pieces.some(({ demandId }) => demandId.startsWith(face)))
            .map(({ stockId }) => kindOf.get(stockId)),
        ).size,
    );
    expect(lengths.plan.unplaced).toEqual([]);
    expect(kinds).toEqual([1, 1]);
  });

  it("keeps long runs for the pieces that need them, whatever the order asked for", () => {
    const nailed = board("b", "A", 150, { defects: [{ from: 1490, to: 1510 }] });
    const { lengths } = cut([board("a", "A", 150), nailed], 126, [1400, 1400, 2900]);
    expect(lengths.plan.unplaced).toEqual([]);
  });

  it("a board's sound runs are what its defects leave, however they overlap or overrun", () => {
    const defects = [
      { from: 2900, to: 3100 },
      { from: 500, to: 540 },
      { from: 520, to: 600 },
      { from: 0, to: 30 },
    ];
    expect(soundRuns(board("a", "A", 150, { defects }))).toEqual([
      { from: 30, to: 500 },
      { from: 600, to: 2900 },
    ]);
  });

  it("goes from the pile to the pieces, with no board more than their runs take", () => {
    const nails = [
      { from: 985, to: 1015 },
      { from: 1985, to: 2015 },
    ];
    const boards = Array.from({ length: 12 }, (_, index) => board(`a${index}`, "A", 150, { defects: nails }));
    const wanted = [
      {
        section: "board 126",
        width: 126,
        minThickness: 20,
        pieces: Array.from({ length: 15 }, (_, index) => ({ id: `p${index}`, length: 900 })),
      },
    ];
    const result = cutPile({ boards, wanted, kerf: 3, endTrim: 10 });
    expect(result.lengths.plan.unplaced).toEqual([]);
    expect(result.rips.boards).toHaveLength(5);
    expect(verifyRipPlan({ request: result.ripRequest, plan: result.rips, strips: result.strips })).toEqual(
      [],
    );
    const request = { stock: result.strips, demands: result.demands, kerf: 3, endTrim: 10 };
    expect(verifyLengthPlan({ request, plan: result.lengths.plan, claim: result.lengths })).toEqual([]);
  });
});
