/** A second thread takes a part of the searches: the plan is that of one thread, byte for byte, also where it fails on the way. */
import { describe, expect, it } from "vitest";
import { facadePlans, type SecondThread } from "../../src/cutting/facade/facade-plans.ts";
import { type CutSearch, type CutState, searchFor } from "../../src/cutting/facade/search.ts";
import { example, exampleNames } from "../contract/cut-facade-examples.ts";

interface InLine extends SecondThread {
  readonly took: CutSearch[];
}

/**
 * Searches in line, from the plain data of a problem to that of a state, and tells it when nothing else is left to do.
 *
 * @param failing it tells of one state on the way, and then is gone with all that it took
 */
function inLine({ failing }: { failing: boolean }): InLine {
  const took: CutSearch[] = [];
  const hands = new Map<CutSearch, CutSearch>();
  let gone = false;
  const tell = (search: CutSearch, own: CutSearch): void => {
    const state: CutState = structuredClone(own.state());
    search.hear(state);
  };
  return {
    took,
    take: (search) => {
      if (gone || hands.size >= 2) return;
      took.push(search);
      hands.set(search, searchFor(structuredClone(search.problem)));
    },
    has: (search) => hands.has(search),
    waitFor: () => {
      for (const [search, own] of hands) {
        own.advance();
        while (!failing && !own.state().ended) own.advance();
        tell(search, own);
        hands.delete(search);
        gone = failing;
        if (!failing) return;
      }
    },
  };
}

function lastPlan(name: string, second: SecondThread): string {
  const { project, facade } = example(name);
  const plans = facadePlans(project, facade, undefined, second);
  for (let next = plans.next(); ; next = plans.next()) if (next.done) return JSON.stringify(next.value);
}

describe("a second thread", () => {
  it.each(exampleNames)("changes nothing of the plan of %s", (name) => {
    const second = inLine({ failing: false });
    expect(lastPlan(name, second)).toBe(JSON.stringify(example(name).cut));
  });

  it("is given the pile before the lengths, and without a pile the last of them first", () => {
    const kindsOf = (name: string): string[] => {
      const second = inLine({ failing: false });
      lastPlan(name, second);
      return second.took.map(({ problem }) => problem.kind);
    };
    expect(kindsOf("atelier-bouleau")[0]).toBe("pile");
    const taken = kindsOf("two-storey");
    expect(taken.length).toBeGreaterThan(1);
    expect(new Set(taken)).toEqual(new Set(["lengths"]));
  });

  it("that fails leaves what it had to the first, which goes on to the same plan", () => {
    for (const name of ["atelier-bouleau", "two-storey"]) {
      const second = inLine({ failing: true });
      expect(lastPlan(name, second)).toBe(JSON.stringify(example(name).cut));
      expect(second.took.length).toBeGreaterThan(0);
    }
  });

  it("never takes a search back to where it was before", () => {
    const second = inLine({ failing: false });
    lastPlan("two-storey", second);
    const [taken] = second.took;
    const ended = taken?.state();
    taken?.hear({ steps: 1, ended: false, found: undefined });
    expect(taken?.state()).toBe(ended);
  });
});
