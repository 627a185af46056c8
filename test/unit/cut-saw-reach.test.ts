/** What is said where the steps of the saw ask more than table, fence and those who lift can do. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { board, pileOf, sheet, wallFacade, wallProject } from "./cut-facade-wall.ts";

type Saw = Partial<Project["stock"]["saw"]>;

/** A sheet of 1220 × 2440 × 8 at 1750 kg/m3, of which one piece of 1220 × 1000 is cut: 2.9768 m2, 41.675 kg. */
function said(saw: Saw) {
  const project = wallProject();
  const { findings } = cutFacade(
    { ...project, stock: { ...project.stock, saw: { ...project.stock.saw, ...saw } } },
    wallFacade([sheet("S1", 1220, 1000)]),
  );
  return findings.filter(({ code }) => code === "C005");
}

describe("the saw's reach", () => {
  it("is not spoken of where the file gives none", () => {
    expect(said({})).toEqual([]);
  });

  it("passes each limit that is kept", () => {
    const findings = said({ table: { length: 2440, width: 1220 }, fence: 1000, lift: 42 });
    expect(findings.map(({ outcome, where }) => [outcome, where.path])).toEqual([
      ["pass", "/stock/saw/table"],
      ["pass", "/stock/saw/fence"],
      ["pass", "/stock/saw/lift"],
    ]);
  });

  it.each([
    [{ table: { length: 2400, width: 1220 } }, 2440, 2400, "mm"],
    [{ fence: 999 }, 1000, 999, "mm"],
    [{ lift: 41 }, 41.6752, 41, "kg"],
  ])("fails %j by number, limit and marks", (saw, demand, limit, unit) => {
    const [one, ...others] = said(saw);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ outcome: "fail", limit, unit, where: { marks: ["S1"] } });
    expect(one?.demand).toBeCloseTo(demand, 9);
  });

  it("holds boards of the pile to it as well: the rip that a fence does not reach, the strip that no table holds up", () => {
    // One board 2400 × 210, less 3 at each edge, for one piece of 200: the fence stands at 200, and 2400 lies on the saw.
    const project = wallProject({
      pile: pileOf([{ length: 2400, width: 210, thickness: 25 }]),
    });
    const judged = (saw: Saw) =>
      cutFacade(
        { ...project, stock: { ...project.stock, saw: { ...project.stock.saw, ...saw } } },
        wallFacade([board("P1", 2000, 200)]),
      ).findings.filter(({ code }) => code === "C005");
    expect(judged({ fence: 200, table: { length: 2400, width: 300 }, lift: 12.6 })).toMatchObject([
      { outcome: "pass" },
      { outcome: "pass" },
      { outcome: "pass" },
    ]);
    expect(judged({ fence: 199 })).toMatchObject([
      { outcome: "fail", demand: 200, limit: 199, where: { marks: ["P1"] } },
    ]);
    expect(judged({ table: { length: 2399, width: 300 } })).toMatchObject([
      { outcome: "fail", demand: 2400 },
    ]);
    // 2.4 × 0.21 × 0.025 m at 1000 kg/m3: 12.6 kg.
    expect(judged({ lift: 12.5 })).toMatchObject([{ outcome: "fail" }]);
  });
});
