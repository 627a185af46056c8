/** What is said where the steps of the saw ask more than table, fence and those who lift can do. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { sheet, wallFacade, wallProject } from "./cut-facade-wall.ts";

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
});
