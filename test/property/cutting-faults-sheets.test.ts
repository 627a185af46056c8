/**
 * Faults planted in plans of random jobs: the verifiers refuse each kind by its own code, wherever it is planted. What makes a
 * plan faulty is the request's own words (sizes, kerf, trim, grain, defects, counts, costs), so no solver is trusted here.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutSheets, type SheetPlan, type SheetRequest, verifySheetPlan } from "../../src/cutting/index.ts";
import { at, type Claim, type Loose, type Plant, RUNS, share, size, spoilable } from "./planted.ts";

const sheetJob = fc
  .record({
    kerf: fc.constantFrom(1.6, 3.175, 4),
    trim: fc.constantFrom(0, 5),
    pieces: fc.array(fc.record({ width: size(80, 590), height: size(80, 1190) }), {
      minLength: 4,
      maxLength: 16,
    }),
    seed: size(1, 1000),
  })
  .map(
    ({ kerf, trim, pieces, seed }): SheetRequest => ({
      kerf,
      seed,
      budget: 20,
      stock: [{ id: "s", width: 1220, height: 2440, cost: 100, trim, count: 40 }],
      demands: pieces.map((one, index) => ({ id: `p${index}`, ...one, mayTurn: true })),
    }),
  );

type Sheets = { request: Loose<SheetRequest>; plan: Loose<SheetPlan>; claim: Loose<Claim> };

function placements(plan: Loose<SheetPlan>) {
  return plan.sheets.flatMap((sheet) => sheet.placements);
}

/** Two of one sheet. */
function pair(plan: Loose<SheetPlan>, part: number) {
  const sheets = plan.sheets.filter((one) => one.placements.length > 1);
  return sheets.length === 0 ? undefined : at(sheets, part).placements;
}

const sheetFaults: readonly [string, string, Plant<Sheets>][] = [
  [
    "a piece missing",
    "piece-missing",
    ({ plan }, part) => {
      const { placements: own } = at(plan.sheets, part);
      own.splice(Math.floor(part * (own.length - 1)), 1);
    },
  ],
  [
    "a piece twice",
    "piece-twice",
    ({ plan }, part) => void at(plan.sheets, part).placements.push({ ...at(placements(plan), part) }),
  ],
  [
    "a piece that nobody asked for",
    "unknown-demand",
    ({ plan }, part) => {
      at(placements(plan), part).demandId = "another";
    },
  ],
  [
    "two pieces over one another",
    "overlap",
    ({ plan }, part) => {
      const [one, other] = pair(plan, part) ?? [];
      if (!one || !other) return false;
      Object.assign(one, { x: other.x, y: other.y });
      return true;
    },
  ],
  [
    "a piece past the edge",
    "outside-stock",
    ({ plan }, part) => {
      const one = at(placements(plan), part);
      one.x = 1220 - one.width + 0.1;
    },
  ],
  [
    "a piece a tenth too narrow",
    "size-wrong",
    ({ plan }, part) => {
      at(placements(plan), part).width -= 0.1;
    },
  ],
  [
    "a wider blade than was reckoned with",
    "kerf-missing",
    ({ request, plan }) => {
      const touching = plan.sheets.some((sheet) =>
        sheet.placements.some((one) =>
          sheet.placements.some(
            (other) =>
              other !== one &&
              other.y < one.y + one.height &&
              other.y + other.height > one.y &&
              Math.abs(other.x - one.x - one.width - request.kerf) < 1e-3,
          ),
        ),
      );
      request.kerf += 0.5;
      return touching;
    },
  ],
  [
    "a wider trim than was reckoned with",
    "outside-stock",
    ({ request }) => {
      for (const stock of request.stock) stock.trim = (stock.trim ?? 0) + 1;
    },
  ],
  [
    "a piece turned that may not be",
    "turn-not-allowed",
    ({ request, plan }) => {
      const turned = placements(plan).find((one) => one.turned);
      const demand = request.demands.find(({ id }) => id === turned?.demandId);
      if (!demand) return false;
      demand.mayTurn = false;
      return true;
    },
  ],
  [
    "a piece turned against the sheet's grain",
    "turn-not-allowed",
    ({ request, plan }) => {
      for (const stock of request.stock) stock.grain = true;
      return placements(plan).some((one) => one.turned);
    },
  ],
  [
    "a piece on a defect",
    "on-defect",
    ({ request, plan }, part) => {
      const sheet = at(plan.sheets, part);
      const one = at(sheet.placements, part);
      const stock = request.stock.find(({ id }) => id === sheet.stockId);
      if (stock)
        stock.defects = [{ x: one.x + one.width - 1, y: one.y + one.height - 1, width: 50, height: 50 }];
    },
  ],
  [
    "more sheets than there are",
    "over-count",
    ({ request, plan }) => {
      for (const stock of request.stock) stock.count = plan.sheets.length - 1;
    },
  ],
  [
    "a cost that is not the stock's",
    "cost-wrong",
    ({ claim }, part) => {
      claim.cost *= part < 0.5 ? 0.99 : 1.01;
    },
  ],
  [
    "a bound above the cost",
    "bound-above-cost",
    ({ claim }) => {
      claim.bound.bound = claim.cost * 1.01;
    },
  ],
  [
    "a proof that is none",
    "proven-wrong",
    ({ claim }) => {
      claim.bound = { bound: claim.cost * 0.99, proven: true };
    },
  ],
  [
    "a cut where the blade meets a piece",
    "tree-children",
    ({ plan }, part) => {
      const { tree } = at(plan.sheets, part);
      if (!tree.cut) return false;
      tree.cut.at -= 1;
      return true;
    },
  ],
];

describe("faults planted in sheet plans", () => {
  it.each(sheetFaults)("%s: %s", (_, code, plant) => {
    let planted = 0;
    fc.assert(
      fc.property(sheetJob, share, (request, part) => {
        const result = cutSheets(request);
        expect(verifySheetPlan({ request, plan: result.plan, claim: result })).toEqual([]);
        const job = spoilable<Sheets>(request, result);
        if (plant(job, part) === false) return;
        planted += 1;
        expect(
          verifySheetPlan(job as unknown as Parameters<typeof verifySheetPlan>[0]).map((one) => one.code),
        ).toContain(code);
      }),
      RUNS,
    );
    expect(planted).toBeGreaterThan(RUNS.numRuns / 4);
  });

  it("four pieces round a middle that no straight cut parts, of any sizes: not-guillotine", () => {
    const sides = fc.record({
      a: size(50, 300),
      b: size(50, 300),
      hole: size(10, 200),
      kerf: fc.constantFrom(0, 4),
    });
    fc.assert(
      fc.property(sides, ({ a, b, hole, kerf }) => {
        // Long sides a + hole + kerf by short sides b, each round the corner of the next.
        const long = a + hole + kerf;
        const side = long + kerf + b;
        const boxes = [
          { x: 0, y: 0, width: long, height: b },
          { x: long + kerf, y: 0, width: b, height: long },
          { x: b + kerf, y: long + kerf, width: long, height: b },
          { x: 0, y: b + kerf, width: b, height: long },
        ];
        // Nothing is parted by a straight cut where the long sides reach past one another.
        fc.pre(long > b + kerf);
        const plan: SheetPlan = {
          unplaced: [],
          sheets: [
            {
              stockId: "s",
              index: 0,
              tree: { x: 0, y: 0, width: side, height: side },
              offcuts: [],
              placements: boxes.map((box, index) => ({ demandId: `p${index}`, turned: false, ...box })),
            },
          ],
        };
        const request: SheetRequest = {
          kerf,
          stock: [{ id: "s", width: side, height: side }],
          demands: boxes.map(({ width, height }, index) => ({
            id: `p${index}`,
            width,
            height,
            mayTurn: false,
          })),
        };
        const codes = verifySheetPlan({ request, plan }).map((one) => one.code);
        expect(codes).toContain("not-guillotine");
        expect(codes).not.toContain("overlap");
        expect(codes).not.toContain("kerf-missing");
      }),
      RUNS,
    );
  });
});
