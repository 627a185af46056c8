/** What is kept between two cuttings: the same results where nothing is asked otherwise, fresh ones where something is. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { createCutMemo } from "../../src/cutting/facade/cut-memo.ts";
import { facadePlans } from "../../src/cutting/facade/facade-plans.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { batten, board, pileOf, sheet, wallFacade, wallProject } from "./cut-facade-wall.ts";

const project = wallProject({ pile: pileOf([{}, {}]) });
const facade = wallFacade([board("B1", 900), sheet("S1", 1220, 1000), batten("L1", 1000)]);

function withBoards(change: Partial<NonNullable<Project["pile"]>["boards"][number]>): Project {
  const { pile } = project;
  return pile
    ? { ...project, pile: { ...pile, boards: pile.boards.map((one) => ({ ...one, ...change })) } }
    : project;
}

function lastOf<Last>(plans: Generator<unknown, Last>): Last {
  for (let next = plans.next(); ; next = plans.next()) if (next.done) return next.value;
}

describe("what was searched for", () => {
  it("is kept where a board only has its picture taken", () => {
    const memo = createCutMemo();
    const cut = (of: Project) => lastOf(facadePlans(of, facade, memo)).plan;
    const first = cut(project);
    const again = cut(withBoards({ pictures: ["a".repeat(64)] }));
    expect(again).toEqual(cutFacade(project, facade).plan);
    expect(again?.rips?.result).toBe(first?.rips?.result);
    expect(again?.sheets[0]?.result).toBe(first?.sheets[0]?.result);
    expect(again?.lengths[0]?.result).toBe(first?.lengths[0]?.result);
  });

  it("is searched anew for the part that is asked otherwise, or with more effort, and for no other", () => {
    const memo = createCutMemo();
    const cut = (of: Project) => lastOf(facadePlans(of, facade, memo)).plan;
    const first = cut(project);
    const shorter = withBoards({ length: 1000 });
    const second = cut(shorter);
    expect(second).toEqual(cutFacade(shorter, facade).plan);
    expect(second?.rips?.result).not.toBe(first?.rips?.result);
    expect(second?.sheets[0]?.result).toBe(first?.sheets[0]?.result);
    const harder = cut({ ...shorter, cutting: { effort: 2 } });
    expect(harder?.sheets[0]?.result).not.toBe(first?.sheets[0]?.result);
  });

  it("is gone on with where a search was left on its way", () => {
    const memo = createCutMemo();
    const begun = facadePlans(project, facade, memo);
    const value = begun.next().value;
    const first = typeof value === "function" ? value().plan : undefined;
    const last = lastOf(facadePlans(project, facade, memo)).plan;
    expect(first?.sheets[0]?.request).toEqual(last?.sheets[0]?.request);
    expect(last).toEqual(cutFacade(project, facade).plan);
    // Nothing is left to search: the plan is there at once.
    expect(facadePlans(project, facade, memo).next().done).toBe(true);
  });

  it("is forgotten when two cuttings did without it", () => {
    const memo = createCutMemo();
    const cut = (of: Project) => lastOf(facadePlans(of, facade, memo)).plan;
    const [first] = [project, withBoards({ length: 1000 }), withBoards({ length: 1100 })].map(cut);
    expect(cut(project)?.rips?.result).not.toBe(first?.rips?.result);
  });
});
