/** What every cut plan of a facade keeps to, on all example buildings. */
import { describe, expect, it } from "vitest";
import { closenessOf } from "../../src/cutting/facade/closeness.ts";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { facadePlans } from "../../src/cutting/facade/facade-plans.ts";
import type { CutPlan } from "../../src/cutting/facade/plan.ts";
import { verifyLengthPlan } from "../../src/cutting/verify/lengths.ts";
import { verifyRipPlan } from "../../src/cutting/verify/rips.ts";
import { verifySheetPlan } from "../../src/cutting/verify/sheets.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { firstPlan } from "../helpers/first-plan.ts";
import { example, exampleNames } from "./cut-facade-examples.ts";

const SAWN = ["sheet", "board", "batten", "counter-batten", "rail", "post", "backing", "return"];

/** Every place where a mark stands, a name a place. */
function places(plan: CutPlan): string[] {
  const bars = [...plan.lengths, ...plan.boards.bought].map(({ result }) => result.plan.bars);
  if (plan.rips) bars.push(plan.rips.result.lengths.plan.bars);
  return [
    ...plan.sheets.flatMap(({ result }) =>
      result.plan.sheets.flatMap(({ placements }) => placements.map(({ demandId }) => demandId)),
    ),
    ...bars.flat().flatMap(({ pieces }) => pieces.map(({ demandId }) => demandId)),
    ...plan.unplaced.map(({ mark }) => mark),
    ...plan.boards.toFind.flatMap(({ pieces }) => pieces.map(({ mark }) => mark)),
  ];
}

describe.each(exampleNames)("%s", (name) => {
  const { project, facade, cut } = example(name);
  const plan = cut.plan as CutPlan;
  const pieces = facade.faces.flatMap((face) => face.pieces).filter(({ kind }) => SAWN.includes(kind));

  it("gives every sawn piece exactly one place, or names it as without one", () => {
    expect(places(plan).sort()).toEqual(pieces.map(({ mark }) => mark).sort());
  });

  it("has a first plan at once, which stands before the verifiers and costs no less than the last", () => {
    const first = firstPlan(project, facade).plan;
    if (!first) throw new Error("the verifiers refuse the first plan");
    expect(places(first).sort()).toEqual(pieces.map(({ mark }) => mark).sort());
    const leftOut = (of: CutPlan): number => of.rips?.result.leftOut.area ?? 0;
    expect(leftOut(first)).toBeGreaterThanOrEqual(leftOut(plan));
    if (leftOut(first) === leftOut(plan)) expect(first.cost).toBeGreaterThanOrEqual(plan.cost - 1e-9);
  });

  it("gives whole plans on its way, each before the verifiers, and last the one that a search without a stop gives", () => {
    const plans = facadePlans(project, facade);
    const made = new Set<CutPlan>();
    const bounds: number[] = [];
    for (let next = plans.next(); ; next = plans.next()) {
      const outcome = next.done ? next.value : next.value();
      if (!outcome.plan) throw new Error("the verifiers refuse a plan on the way");
      if (!made.has(outcome.plan)) bounds.push(closenessOf(outcome.plan).bound);
      made.add(outcome.plan);
      if (!next.done) continue;
      expect(JSON.stringify(outcome)).toBe(JSON.stringify(cut));
      break;
    }
    expect(made.size).toBeGreaterThan(2);
    for (const one of made) expect(places(one).sort()).toEqual(pieces.map(({ mark }) => mark).sort());
    const costs = [...made].map((one) => closenessOf(one).cost);
    for (const bound of bounds) expect(bound).toBeLessThanOrEqual(Math.min(...costs) + 1e-9);
  });

  it("asks for every piece at its own size", () => {
    const sizes = new Map(pieces.map(({ mark, cut }) => [mark, cut]));
    for (const { id, width, height } of plan.sheets.flatMap(({ request }) => request.demands)) {
      const cut = sizes.get(id);
      expect([width, height]).toEqual([cut?.width, cut?.length]);
    }
    const lengths = [...plan.lengths, ...plan.boards.bought].flatMap(({ request }) => request.demands);
    const fromPile = plan.rips?.request.wanted.flatMap((want) =>
      want.pieces.map((piece) => ({
        ...piece,
        minWidth: want.width,
        minThickness: want.minThickness,
      })),
    );
    for (const { id, length, minWidth, minThickness } of [...lengths, ...(fromPile ?? [])]) {
      expect({ length, width: minWidth, thickness: minThickness }).toEqual(sizes.get(id));
    }
  });

  it("passes the verifiers", () => {
    for (const { request, result } of plan.sheets) {
      expect(verifySheetPlan({ request, plan: result.plan, claim: result })).toEqual([]);
    }
    for (const { request, result } of [...plan.lengths, ...plan.boards.bought]) {
      expect(verifyLengthPlan({ request, plan: result.plan, claim: result })).toEqual([]);
    }
    if (plan.rips) {
      const { ripRequest, rips, strips } = plan.rips.result;
      expect(verifyRipPlan({ request: ripRequest, plan: rips, strips })).toEqual([]);
    }
  });

  it("keeps to the project's saw", () => {
    const { saw } = project.stock;
    const requests = [...plan.sheets, ...plan.lengths, ...plan.boards.bought].map(({ request }) => request);
    for (const { kerf } of requests) expect(kerf).toBe(saw.kerf);
    for (const { trim } of plan.sheets.flatMap(({ request }) => request.stock)) {
      expect(trim).toBe(saw.sheetTrim);
    }
    if (plan.rips) {
      const { kerf, straighten, endTrim } = plan.rips.request;
      expect({ kerf, straighten, endTrim }).toEqual({
        kerf: saw.kerf,
        straighten: saw.boardEdgeTrim,
        endTrim: saw.boardEndTrim,
      });
    }
  });

  it("costs what its stock costs, and no less than its bound", () => {
    const sheets = plan.sheets.flatMap(({ result }) =>
      result.plan.sheets.map(
        ({ stockId }) => project.stock.sheets.find(({ id }) => id === stockId)?.price ?? 0,
      ),
    );
    const bars = [...plan.lengths, ...plan.boards.bought].flatMap(({ stock, request, result }) => {
      const section = [...project.stock.battens, ...(project.stock.boards ?? [])].find(
        ({ id }) => id === stock,
      );
      return result.plan.bars.map(
        (bar) =>
          ((request.stock.find(({ id }) => id === bar.stockId)?.length ?? 0) / 1000) *
          (section?.pricePerM ?? 0),
      );
    });
    const cost = [...sheets, ...bars].reduce((sum, one) => sum + one, 0);
    expect(plan.cost).toBeCloseTo(cost, 4);
    expect(plan.bound).toBeGreaterThan(0);
    expect(plan.bound).toBeLessThanOrEqual(plan.cost);
    expect(plan.gap).toBeCloseTo((plan.cost - plan.bound) / plan.cost, 9);
  });

  it("rips no board that nothing is cut from", () => {
    const strips = plan.rips?.result.lengths.plan.bars.map(({ stockId }) => stockId.split("/")[0]) ?? [];
    expect((plan.rips?.ripped ?? []).map(({ boardId }) => boardId).sort()).toEqual(
      [...new Set(strips)].sort(),
    );
  });

  it("fails in nothing, and says all it has to say in both languages", () => {
    const { findings } = cut;
    expect(findings.filter(({ outcome }) => outcome === "fail" || outcome === "cannot evaluate")).toEqual([]);
    for (const { says, hint } of findings) {
      for (const language of ["en", "fr"] as const) {
        const reader = { ...ENGLISH_MM, language };
        expect(say(says, reader)).not.toMatch(/[[\]{}]|NaN|undefined/);
        if (hint) expect(say(hint, reader)).not.toMatch(/[[\]{}]|NaN|undefined/);
      }
    }
  });

  it("is the same each time", () => {
    expect(JSON.stringify(cutFacade(project, facade))).toBe(JSON.stringify(cut));
  });
});
