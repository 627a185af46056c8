/** The demo cut without what its file tells of as spoiled: by one edit, the same from every side, and taken back by one. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import type { CutPlan } from "../../src/cutting/facade/plan.ts";
import { countsOf, marksOf } from "../../src/cutting/facade/spoiled.ts";
import { spoil, takeSpoiledBack } from "../../src/project/editing/spoiled.ts";
import type { Spoiled } from "../../src/project/schema/spoiled.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { bench } from "../helpers/cli.ts";
import { changed, edited, exampleSource, refusals } from "../helpers/editing.ts";
import { example } from "./cut-facade-examples.ts";

const { facade, cut } = example("atelier-bouleau");
const former = cut.plan as CutPlan;
const source = exampleSource("atelier-bouleau");
const sheetsOf = (plan: CutPlan) => plan.sheets.flatMap(({ result }) => result.plan.sheets);
const namesOf = (plan: CutPlan) =>
  sheetsOf(plan).map(({ stockId, placements }) => [stockId, ...marksOf(placements)].join());

const seventh = sheetsOf(former)[6];
if (!seventh) throw new Error("the demo has seven sheets");
const sheet = {
  kind: "sheet",
  stock: seventh.stockId,
  pieces: marksOf(seventh.placements),
} satisfies Spoiled;
const board = { kind: "board", board: former.rips?.ripped[0]?.boardId ?? "" } satisfies Spoiled;
const battens = former.lengths.find(({ stock }) => stock !== undefined);
const bar = battens?.result.plan.bars[0];
const length = {
  kind: "length",
  stock: battens?.stock ?? "",
  length: battens?.request.stock.find(({ id }) => id === bar?.stockId)?.length ?? 0,
  pieces: marksOf(bar?.pieces ?? []),
} satisfies Spoiled;

const withSpoiled = (...all: Spoiled[]) =>
  all.reduce((now, one) => edited(now, spoil(now.project, one)), source);

describe("the demo without what is spoiled", () => {
  const { project } = withSpoiled(sheet, board, length);
  const { plan: again, findings } = cutFacade(project, facade);
  const plan = again as CutPlan;

  it("cuts every piece still, from the other sheets as they were planned", () => {
    expect(findings.filter(({ code }) => code === "C003")).toEqual([]);
    expect(new Set(sheetsOf(plan).flatMap(({ placements }) => marksOf(placements)))).toEqual(
      new Set(sheetsOf(former).flatMap(({ placements }) => marksOf(placements))),
    );
    const lost = namesOf(former)[6];
    // A plan from nothing may take its place only where it is cheaper.
    expect(plan.cost).toBeLessThanOrEqual(former.cost + 1e-6);
    if (plan.cost === former.cost) {
      for (const name of namesOf(former)) if (name !== lost) expect(namesOf(plan)).toContain(name);
    }
  });

  it("rips nothing from the rotten board", () => {
    expect(former.rips?.ripped.map(({ boardId }) => boardId)).toContain(board.board);
    expect(plan.rips?.ripped.map(({ boardId }) => boardId)).not.toContain(board.board);
    expect(plan.rips?.request.boards.map(({ id }) => id)).not.toContain(board.board);
  });

  it("tells what was sawn before and what is sawn now", () => {
    expect(former.spoiled).toBeUndefined();
    expect(plan.spoiled?.stock).toHaveLength(3);
    expect(plan.spoiled?.before).toEqual(countsOf(former));
    expect(countsOf(former).sheets).toBe(sheetsOf(former).length);
  });

  it("orders what was lost besides what is sawn", () => {
    const needed = (of: CutPlan, cutOf: typeof project) => {
      const lines = takeOff(cutOf, facade, of).order.lines;
      return (id: string, unit: string) =>
        lines.reduce((sum, line) => (line.id === id && line.unit === unit ? sum + line.needed : sum), 0);
    };
    const { spoiled: _, ...bare } = plan;
    const sawn = needed(bare, project);
    const bought = needed(plan, project);
    expect(bought(seventh.stockId, "sheet")).toBe(sawn(seventh.stockId, "sheet") + 1);
    expect(bought(length.stock, "length")).toBe(sawn(length.stock, "length") + 1);
  });

  it("is the same plan by the command", async () => {
    const desk = bench();
    desk.write("spoiled.outerleaf.json", withSpoiled(sheet, board, length).document);
    const { out } = await desk.run("cut", "spoiled.outerleaf.json", "--json");
    const told = JSON.parse(out);
    expect(told.spoiled).toEqual({ count: 3, before: countsOf(former), after: countsOf(plan) });
    expect(told.cost).toBe(plan.cost);
    desk.clear();
  });
});

describe("what is spoiled, in the file", () => {
  it("is taken back by one edit, which leaves the list as it was or none", () => {
    const one = withSpoiled(sheet);
    const two = edited(one, spoil(one.project, board));
    expect(changed(two, takeSpoiledBack(two.project, 1))).toEqual(one.document);
    const none = edited(one, takeSpoiledBack(one.project, 0));
    expect(none.project.cutting?.spoiled).toBeUndefined();
    expect(takeSpoiledBack(one.project, 5)).toBeUndefined();
  });

  it("changes nothing where a board rots that stays whole", () => {
    const ripped = new Set(former.rips?.result.rips.boards.map(({ boardId }) => boardId));
    const whole = source.project.pile?.boards.find(({ id }) => !ripped.has(id))?.id ?? "";
    const { project } = withSpoiled({ kind: "board", board: whole });
    const { plan } = cutFacade(project, facade);
    expect(plan?.rips?.request.boards).toHaveLength((source.project.pile?.boards.length ?? 0) - 1);
    expect(plan?.rips?.ripped).toEqual(former.rips?.ripped);
    expect(plan && countsOf(plan)).toEqual(countsOf(former));
  });

  it("is one less of a stock of which there are only so many", () => {
    const used = sheetsOf(former).filter(({ stockId }) => stockId === sheet.stock).length;
    const stock = {
      ...source.project.stock,
      sheets: source.project.stock.sheets
        .filter(({ id }) => id === sheet.stock)
        .map((one) => ({ ...one, count: used })),
    };
    const claddings = source.project.claddings.map((one) =>
      one.kind === "sheets" ? { ...one, stock: [sheet.stock] } : one,
    );
    const few = { ...source.project, stock, claddings };
    const all = cutFacade(
      { ...few, cutting: { spoiled: Array.from({ length: used }, () => sheet) } },
      facade,
    );
    expect(all.plan && sheetsOf(all.plan)).toEqual([]);
    expect(all.findings.some(({ code }) => code === "C002")).toBe(true);
  });

  it.each([
    ["a sheet", { ...sheet, stock: "no-such" }],
    ["a length", { ...length, stock: "no-such" }],
    ["a length that its stock does not come in", { ...length, length: 1 }],
    ["a board", { kind: "board", board: "no-such" }],
  ] as [string, Spoiled][])("is refused where it names nothing: %s", (_, one) => {
    expect(refusals(source, spoil(source.project, one))).toEqual(["F010"]);
  });
});
