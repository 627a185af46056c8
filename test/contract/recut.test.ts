/** The demo's cut plan after real life: what is done stays done, what is begun keeps its place, what is gone is not used. */
import { describe, expect, it } from "vitest";
import type { CutPlan } from "../../src/cutting/facade/plan.ts";
import { recut, type SinceThen, unknownSince } from "../../src/cutting/facade/recut.ts";
import { bench } from "../helpers/cli.ts";
import { example } from "./cut-facade-examples.ts";

const DEMO = "atelier-bouleau.outerleaf.json";
const { project, facade, cut } = example("atelier-bouleau");
const former = cut.plan as CutPlan;
const nothing: SinceThen = { cut: [], brokenSheets: [], spoiltBoards: [] };
const made = (since: Partial<SinceThen>) =>
  recut(project, facade, { former, since: { ...nothing, ...since } });

const sheetsOf = (plan: CutPlan) => plan.sheets.flatMap(({ result }) => result.plan.sheets);
const marksOn = (plan: CutPlan) =>
  sheetsOf(plan).map((one) => one.placements.map(({ demandId }) => demandId));
const wanted = new Set(former.sheets.flatMap(({ request }) => request.demands.map(({ id }) => id)));

describe("the plan made again", () => {
  it("is the former one where nothing has happened", () => {
    const { outcome, begun } = made({});
    expect(begun).toEqual([]);
    expect(outcome.plan?.cost).toBeLessThanOrEqual(former.cost + 1e-6);
    expect(marksOn(outcome.plan as CutPlan)).toEqual(marksOn(former));
  });

  it("sheet 7 broke: its pieces are cut from another, all other sheets stay as they are", () => {
    const { outcome } = made({ brokenSheets: [7] });
    const plan = outcome.plan as CutPlan;
    expect(new Set(marksOn(plan).flat())).toEqual(wanted);
    const lost = marksOn(former)[6];
    const kept = marksOn(former).filter((marks) => marks !== lost);
    const found = marksOn(plan).map((marks) => marks.join());
    // A plan from nothing may take its place only where it is cheaper.
    if (outcome.plan?.cost === former.cost) for (const marks of kept) expect(found).toContain(marks.join());
    expect(plan.cost).toBeLessThanOrEqual(former.cost + 182);
  });

  it("a piece that is cut is not asked for again, and the rest of its sheet is finished as planned", () => {
    const [first] = marksOn(former);
    const mark = first?.[0] ?? "";
    const { outcome, begun } = made({ cut: [mark] });
    expect(begun).toHaveLength(1);
    expect([...(begun[0]?.done ?? []), ...(begun[0]?.still ?? [])].sort()).toEqual([...(first ?? [])].sort());
    const again = marksOn(outcome.plan as CutPlan).flat();
    for (const one of first ?? []) expect(again).not.toContain(one);
    expect(again.length).toBe(wanted.size - (first?.length ?? 0));
  });

  it("board A12 or any other that is rotten gives nothing more", () => {
    const board = former.rips?.ripped[0]?.boardId ?? "";
    const { outcome } = made({ spoiltBoards: [board] });
    expect(outcome.plan?.rips?.result.rips.boards.map(({ boardId }) => boardId)).not.toContain(board);
    expect(outcome.findings.some(({ code }) => code === "C003")).toBe(false);
  });

  it("names what it does not know", () => {
    const since = { cut: ["no such"], brokenSheets: [0, 1, 99], spoiltBoards: ["Z9"] };
    expect(unknownSince(project, facade, { former, since })).toEqual({
      cut: ["no such"],
      brokenSheets: [0, 99],
      spoiltBoards: ["Z9"],
    });
  });

  it("by the command: refuses a wrong key and an unknown board by name, and takes the right ones", async () => {
    const desk = bench();
    desk.write("wrong.json", { broken: [7] });
    expect(await desk.run("cut", DEMO, "--since", "wrong.json")).toMatchObject({ exit: 2 });
    expect((await desk.run("cut", DEMO, "--since", "wrong.json")).err).toContain("/broken");
    desk.write("unknown.json", { spoiltBoards: ["Z9"] });
    expect((await desk.run("cut", DEMO, "--since", "unknown.json")).err).toContain("Z9");
    desk.write("since.json", { brokenSheets: [7], spoiltBoards: ["A12"] });
    const { out } = await desk.run("cut", DEMO, "--since", "since.json", "--json");
    expect(JSON.parse(out)).toMatchObject({ begun: [] });
    desk.clear();
  });
});
