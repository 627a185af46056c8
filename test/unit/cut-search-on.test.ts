/** Searching on for cheaper cuts; that every plan is whole is the verifiers' work, which each of these has passed. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { searchOn } from "../../src/cutting/facade/search-on.ts";
import { setEffort } from "../../src/project/editing/cutting.ts";
import { example } from "../contract/cut-facade-examples.ts";
import { edited, exampleSource, refusals } from "../helpers/editing.ts";

function first<Item>(count: number, all: Generator<Item>): Item[] {
  return Array.from({ length: count }, () => all.next().value);
}

describe("searching on", () => {
  it("saws the two-storey house from a sheet less, which the file then asks for", () => {
    const { facade } = example("two-storey");
    const source = edited(exampleSource("two-storey"), setEffort(exampleSource("two-storey"), 4));
    const tries = first(2, searchOn(source.project, facade));
    expect(tries.map(({ effort }) => effort)).toEqual([4, 8]);
    expect(tries.map(({ best }) => best)).toEqual([true, true]);
    const [before, after] = tries.map(({ cost }) => cost) as [number, number];
    expect(after).toBeLessThan(before);
    const kept = edited(source, setEffort(source, 8));
    expect(kept.project.cutting).toEqual({ effort: 8 });
    expect(cutFacade(kept.project, facade).plan?.cost).toBe(after);
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
});
