/** Searching on for cheaper cuts; that every plan is whole is the verifiers' work, which each of these has passed. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { searchOn } from "../../src/cutting/facade/search-on.ts";
import { countsOf } from "../../src/cutting/facade/spoiled.ts";
import { cutLengths, lengthsGoingOn } from "../../src/cutting/lengths.ts";
import { cutPile, pileGoingOn } from "../../src/cutting/pile.ts";
import { cutSheets, sheetsGoingOn } from "../../src/cutting/sheets.ts";
import { stretches } from "../../src/cutting/stretches.ts";
import { setEffort } from "../../src/project/editing/cutting.ts";
import { example } from "../contract/cut-facade-examples.ts";
import { edited, exampleSource, refusals } from "../helpers/editing.ts";

/** Improving steps that one material's sheets may take at effort 1. */
const STEPS = 600;
/** Milliseconds: thirty times the usual search is no measure of speed. */
const PATIENCE = 300_000;

function first<Item>(count: number, all: Generator<Item>): Item[] {
  return Array.from({ length: count }, () => all.next().value);
}

describe("searching on", () => {
  it("finds cheaper cuts of the porch with twice the effort, which the file then asks for", () => {
    const { facade } = example("porch");
    const source = edited(exampleSource("porch"), setEffort(exampleSource("porch"), 2));
    const tries = first(2, searchOn(source.project, facade));
    expect(tries.map(({ effort }) => effort)).toEqual([2, 4]);
    expect(tries.map(({ best }) => best)).toEqual([true, true]);
    const [before, after] = tries.map(({ cost }) => cost) as [number, number];
    expect(after).toBeLessThan(before);
    const kept = edited(source, setEffort(source, 4));
    expect(kept.project.cutting).toEqual({ effort: 4 });
    expect(cutFacade(kept.project, facade).plan?.cost).toBe(after);
  });

  it.each(["atelier-bouleau", "two-storey"])(
    "never finds dearer cuts with more effort, nor leaves out more: %s",
    (name) => {
      const { project, facade } = example(name);
      const plans = [1, 2, 4, 8, 16].map((effort) => {
        const { plan } = cutFacade({ ...project, cutting: { effort } }, facade);
        if (!plan) throw new Error(`the verifiers refuse the plan of effort ${effort}`);
        return { ...countsOf(plan), steps: plan.sheets.map(({ result }) => result.iterations) };
      });
      for (const key of ["missing", "cost"] as const) {
        const found = plans.map((plan) => plan[key]);
        expect(found).toEqual([...found].sort((a, b) => b - a));
      }
      // Twice the effort is twice the steps, all of which stand in the result: none is left out to go on.
      const spent = plans.map(({ steps }) => steps.reduce((sum, one) => sum + one, 0));
      for (const [i, steps] of spent.slice(1).entries()) {
        expect(steps - (spent[i] ?? 0)).toBeLessThanOrEqual(2 ** i * STEPS * (plans[0]?.steps.length ?? 0));
      }
    },
    PATIENCE,
  );

  it.each(["atelier-bouleau", "two-storey", "porch"])(
    "gives at each effort what a search from nothing gives: %s",
    (name) => {
      const { project, facade } = example(name);
      const tries = first(3, searchOn(project, facade));
      for (const { effort, cost, proven } of tries) {
        const { plan } = cutFacade({ ...project, cutting: { effort } }, facade);
        expect(plan?.cost).toBe(cost);
        expect(plan?.proven).toBe(proven);
      }
    },
  );

  it("goes on with sheets and lengths to the plans, bounds and steps of a search from nothing", () => {
    const { cut } = example("two-storey");
    const [sheets, lengths] = [cut.plan?.sheets[0]?.request, cut.plan?.boards.bought[0]?.request];
    if (!sheets || !lengths) throw new Error("nothing is cut");
    const goOn = [sheetsGoingOn(sheets, 8), lengthsGoingOn(lengths, 8)] as const;
    for (const effort of [1, 2, 4, 8]) {
      expect(goOn[0](effort)).toEqual(cutSheets({ ...sheets, effort }));
      expect(goOn[1](effort)).toEqual(cutLengths({ ...lengths, effort }));
    }
  });

  it("goes on with the pile to the plan of a search from nothing, and never leaves out more", () => {
    const pile = example("atelier-bouleau").cut.plan?.rips?.request;
    if (!pile) throw new Error("nothing is ripped");
    const small = { ...pile, budget: 20 };
    const goOn = pileGoingOn(small, 8);
    const areas = [1, 2, 4, 8].map((effort) => {
      const result = goOn(effort);
      expect(result).toEqual(cutPile({ ...small, effort }));
      return result.leftOut.area;
    });
    expect(areas).toEqual([...areas].sort((a, b) => b - a));
  });

  it("tells bounds that never fall, under the cost of every try", () => {
    const { project, facade } = example("l-plan");
    const tries = first(3, searchOn(project, facade));
    const bounds = tries.map(({ bound }) => bound);
    expect(bounds).toEqual([...bounds].sort((a, b) => a - b));
    for (const { cost, bound } of tries) expect(bound).toBeLessThanOrEqual(cost);
  });

  it("refuses an effort that is no whole number of times, or beyond the most", () => {
    const source = exampleSource("l-plan");
    for (const effort of [0, 1.5, 65]) expect(refusals(source, setEffort(source, effort))).toHaveLength(1);
  });

  it("goes on with twice the effort from all that it did with half, in as many steps as that asks for", () => {
    for (let effort = 1; effort <= 64; effort++) {
      const own = stretches(600, effort);
      expect(own.reduce((sum, steps) => sum + steps, 0)).toBe(600 * effort);
      expect(stretches(600, 2 * effort).slice(0, own.length)).toEqual(own);
      expect(stretches(600, 2 * effort).slice(own.length)).toEqual([600 * effort]);
    }
  });
});
