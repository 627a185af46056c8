/** Faults planted in length and rip plans of random jobs: the verifiers refuse each kind by its own code. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LengthPlan, LengthRequest, RipPlan, RipRequest } from "../../src/cutting/index.ts";
import { cutLengths, cutPile, verifyLengthPlan, verifyRipPlan } from "../../src/cutting/index.ts";
import { at, type Claim, type Loose, type Plant, RUNS, share, size, spoilable } from "./planted.ts";

const lengthJob = fc
  .record({
    kerf: fc.constantFrom(1.6, 3),
    endTrim: fc.constantFrom(0, 10),
    pieces: fc.array(size(150, 1100), { minLength: 4, maxLength: 20 }),
    seed: size(1, 1000),
  })
  .map(
    ({ kerf, endTrim, pieces, seed }): LengthRequest => ({
      kerf,
      endTrim,
      seed,
      budget: 10,
      defectMargin: 5,
      stock: [
        {
          id: "b",
          section: "board",
          length: 3050,
          width: 94,
          thickness: 22,
          lot: "A",
          cost: 3,
          count: 60,
          sound: [
            { from: 0, to: 1500 },
            { from: 1530, to: 3050 },
          ],
        },
      ],
      demands: pieces.map((length, index) => ({
        id: `p${index}`,
        section: "board",
        length,
        minWidth: 94,
        minThickness: 20,
        lots: ["A"],
      })),
    }),
  );

type Lengths = { request: Loose<LengthRequest>; plan: Loose<LengthPlan>; claim: Loose<Claim> };

const lengthFaults: readonly [string, string, Plant<Lengths>][] = [
  ["a piece missing", "piece-missing", ({ plan }, part) => void at(plan.bars, part).pieces.pop()],
  [
    "a piece twice",
    "piece-twice",
    ({ plan }, part) => {
      const { pieces } = at(plan.bars, part);
      pieces.push({ ...at(pieces, part) });
    },
  ],
  [
    "two pieces over one another",
    "overlap",
    ({ plan }) => {
      const [one, other] = plan.bars.find(({ pieces }) => pieces.length > 1)?.pieces ?? [];
      if (!one || !other) return false;
      const by = one.from + 1 - other.from;
      Object.assign(other, { from: other.from + by, to: other.to + by });
      return true;
    },
  ],
  [
    "a piece past the end",
    "outside-stock",
    ({ plan }, part) => {
      const one = at(at(plan.bars, part).pieces, part);
      const by = 3050.1 - one.to;
      Object.assign(one, { from: one.from + by, to: one.to + by });
    },
  ],
  [
    "a piece a tenth too short",
    "length-wrong",
    ({ plan }, part) => {
      at(at(plan.bars, part).pieces, part).to -= 0.1;
    },
  ],
  [
    "a wider blade than was reckoned with",
    "kerf-missing",
    ({ request, plan }) => {
      request.kerf += 0.5;
      return plan.bars.some(({ pieces }) =>
        pieces.some((one) =>
          pieces.some((other) => Math.abs(other.from - one.to - request.kerf + 0.5) < 1e-3),
        ),
      );
    },
  ],
  [
    "a longer trim than was reckoned with",
    "end-trim-missing",
    ({ request, plan }) => {
      const { endTrim = 0 } = request;
      request.endTrim = endTrim + 1;
      return plan.bars.some(({ pieces }) => pieces.some(({ from }) => Math.abs(from - endTrim) < 1e-3));
    },
  ],
  [
    "a piece on a defect",
    "not-sound",
    ({ request, plan }, part) => {
      const one = at(at(plan.bars, part).pieces, part);
      const middle = (one.from + one.to) / 2;
      for (const stock of request.stock) {
        stock.sound = [
          { from: 0, to: middle - 5 },
          { from: middle + 5, to: 3050 },
        ];
      }
    },
  ],
  [
    "a piece of another lot",
    "wrong-lot",
    ({ request }, part) => {
      at(request.demands, part).lots = ["B"];
    },
  ],
  [
    "a piece wider than the bar",
    "too-narrow",
    ({ request }, part) => {
      at(request.demands, part).minWidth = 94.1;
    },
  ],
  [
    "more bars than there are",
    "over-count",
    ({ request, plan }) => {
      for (const stock of request.stock) stock.count = plan.bars.length - 1;
    },
  ],
  [
    "a cost that is not the stock's",
    "cost-wrong",
    ({ claim }, part) => {
      claim.cost *= part < 0.5 ? 0.99 : 1.01;
    },
  ],
];

describe("faults planted in length plans", () => {
  it.each(lengthFaults)("%s: %s", (_, code, plant) => {
    let planted = 0;
    fc.assert(
      fc.property(lengthJob, share, (request, part) => {
        const result = cutLengths(request);
        expect(verifyLengthPlan({ request, plan: result.plan, claim: result })).toEqual([]);
        const job = spoilable<Lengths>(request, result);
        if (plant(job, part) === false) return;
        planted += 1;
        expect(
          verifyLengthPlan(job as Parameters<typeof verifyLengthPlan>[0]).map((one) => one.code),
        ).toContain(code);
      }),
      RUNS,
    );
    expect(planted).toBeGreaterThan(RUNS.numRuns / 4);
  });
});

const pileJob = fc.record({
  widths: fc.array(size(200, 260), { minLength: 2, maxLength: 5 }),
  lengths: fc.array(size(300, 1900), { minLength: 6, maxLength: 14 }),
  seed: size(1, 1000),
});

type Rips = { request: Loose<RipRequest>; plan: Loose<RipPlan> };

const ripFaults: readonly [string, string, Plant<Rips>][] = [
  [
    "a strip a tenth too narrow",
    "strip-width-wrong",
    ({ plan }, part) => {
      at(at(plan.boards, part).strips, part).across.to -= 0.1;
    },
  ],
  [
    "a wider blade than was reckoned with",
    "kerf-missing",
    ({ request, plan }) => {
      request.kerf += 0.5;
      return plan.boards.some(({ strips }) => strips.length > 1);
    },
  ],
  [
    "straightened by more than was reckoned with",
    "strip-outside",
    ({ request }) => {
      request.straighten = (request.straighten ?? 0) + 0.5;
    },
  ],
  [
    "a strip in the wane",
    "strip-outside",
    ({ request }) => {
      for (const board of request.boards) board.wane = { edge: "left", width: 0.5 };
    },
  ],
  [
    "two strips over one another",
    "overlap",
    ({ plan }) => {
      const [one, other] = plan.boards.find(({ strips }) => strips.length > 1)?.strips ?? [];
      if (!one || !other) return false;
      const by = one.across.from + 1 - other.across.from;
      Object.assign(other.across, { from: other.across.from + by, to: other.across.to + by });
      return true;
    },
  ],
  [
    "a board ripped twice",
    "board-twice",
    ({ plan }, part) => void plan.boards.push(structuredClone(at(plan.boards, part))),
  ],
  [
    "a board of another lot",
    "wrong-lot",
    ({ request, plan }, part) => {
      const ripped = at(plan.boards, part);
      for (const board of request.boards) if (board.id === ripped.boardId) board.lot = "B";
    },
  ],
  [
    "more had than the boards give",
    "supply-wrong",
    ({ plan }, part) => {
      at(plan.supply, part).had += 1;
    },
  ],
];

describe("faults planted in rip plans", () => {
  it.each(ripFaults)("%s: %s", (_, code, plant) => {
    let planted = 0;
    fc.assert(
      fc.property(pileJob, share, ({ widths, lengths, seed }, part) => {
        const { ripRequest, rips } = cutPile({
          kerf: 3,
          straighten: 3,
          seed,
          budget: 10,
          boards: widths.map((width, index) => ({
            id: `w${index}`,
            lot: "A",
            length: 2400,
            width,
            thickness: 24,
            defects: [],
          })),
          wanted: [94].map((width) => ({
            section: String(width),
            width,
            lots: ["A"],
            pieces: lengths.map((length, index) => ({ id: `p${index}`, length })),
          })),
        });
        expect(verifyRipPlan({ request: ripRequest, plan: rips })).toEqual([]);
        const job = structuredClone({ request: ripRequest, plan: rips }) as unknown as Rips;
        if (plant(job, part) === false) return;
        planted += 1;
        expect(verifyRipPlan(job as Parameters<typeof verifyRipPlan>[0]).map((one) => one.code)).toContain(
          code,
        );
      }),
      RUNS,
    );
    expect(planted).toBeGreaterThan(RUNS.numRuns / 4);
  });
});
