/** What a project's place, woods and data sheets ask: plain values, and undefined where something is missing. */
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { changeByShrinkage } from "../../src/equations/change-by-shrinkage.ts";
import { equilibriumMoisture } from "../../src/equations/equilibrium-moisture.ts";
import { boardsOf, proofFixture, sheetsOf } from "../helpers/proof-fixture.ts";

type Change = NonNullable<NonNullable<Parameters<typeof proofFixture>[0]>["project"]>;
const demandsWith = (project: Change = () => undefined) => demandsOf(proofFixture({ project }).project);

describe("boards through the year", () => {
  it("take the wettest and the driest month and the wood that moves most", () => {
    const seasonal = demandsWith().boards.boards?.seasonal;
    const wettestPercent = equilibriumMoisture({ temperatureC: -1, humidityPercent: 80 });
    const driestPercent = equilibriumMoisture({ temperatureC: 11, humidityPercent: 60 });
    expect(seasonal).toMatchObject({
      fixingPercent: 15,
      wettestPercent,
      driestPercent,
      wettestMonth: 11,
      driestMonth: 5,
      wood: "quaking aspen",
      basis: "typical",
    });
    // 6.7 % over 30 points is just more than the cedar of the other lot, 4.9 % over 22.
    const aspen = { widthMm: 1, shrinkagePercent: 6.7, saturationPercent: 30, fromPercent: 15 };
    expect(seasonal?.wettestMm).toBeCloseTo(-changeByShrinkage({ ...aspen, toPercent: wettestPercent }), 12);
    expect(seasonal?.driestMm).toBeCloseTo(-changeByShrinkage({ ...aspen, toPercent: driestPercent }), 12);
    expect(seasonal?.wettestMm).toBeLessThan(0);
    expect(seasonal?.driestMm).toBeGreaterThan(0);
  });

  it("a wood is known by its words as well as its id; one unknown to the catalogue moves by the rule for softwood", () => {
    const only = (species: string) =>
      demandsWith((project) => Object.assign(boardsOf(project), { species, lots: [] })).boards.boards
        ?.seasonal;
    expect(only("Quaking Aspen")).toMatchObject({ wood: "Quaking Aspen", basis: "typical" });
    const unknown = only("moonwood");
    expect(unknown?.driestMm).toBeCloseTo(0.0025 * (15 - (unknown?.driestPercent ?? 0)), 12);
  });

  it("humidity near saturation is held to the table of the equation", () => {
    const damp = demandsWith(({ site }) => void site.climate?.meanRelativeHumidityPercent?.values.fill(100))
      .boards.boards?.seasonal;
    expect(damp?.wettestPercent).toBeCloseTo(
      Math.max(
        ...[-12, -11, -4, 3, 11, 16, 19, 18, 12, 6, -1, -9].map((temperatureC) =>
          equilibriumMoisture({ temperatureC, humidityPercent: 95 }),
        ),
      ),
      12,
    );
  });

  it("are unknown without climate or moisture at fixing, and every lack is named", () => {
    const { boards } = demandsWith((project) => {
      delete project.site.climate;
      delete boardsOf(project).moisturePercent;
    });
    expect(boards.boards).toMatchObject({
      seasonal: undefined,
      seasonalLacks: [
        "/site/climate/meanTempC",
        "/site/climate/meanRelativeHumidityPercent",
        "/claddings/0/moisturePercent",
      ],
      gapBand: [6, 12],
    });
  });
});

describe("sheets", () => {
  it("move by heat from fixing to a dark sheet in the sun, and by moisture", () => {
    const sheets = demandsWith().sheets.sheets;
    expect(sheets?.temperatures).toEqual({
      fixedC: 10,
      coldestC: -36,
      hottestC: 35 + 0.052 * 800,
      basis: "typical",
      figures: ["heat.sunlitSheet.fixedAt", "heat.sunlitSheet.darkAbsorption", "heat.sunlitSheet.sunOnWall"],
    });
    expect(sheets?.heatGrowthMmPerM).toBeCloseTo(0.666, 9);
    expect(sheets?.movementMmPerM).toBeCloseTo(1.666, 9);
  });

  it("the colder side governs where it is farther from fixing", () => {
    const cold = demandsWith(({ site }) =>
      Object.assign(site.climate!, { extremeTempC: { values: [-70, 0], basis: "given" } }),
    );
    expect(cold.sheets.sheets?.movementMmPerM).toBeCloseTo(0.8 + 1, 9);
  });

  it("are unknown without extremes; the data sheet's own limits stay", () => {
    const { sheets } = demandsWith((project) => {
      delete project.site.climate?.extremeTempC;
      sheetsOf(project).dataSheet.basis = "typical";
    });
    expect(sheets.sheets).toEqual({
      movementMmPerM: undefined,
      heatGrowthMmPerM: undefined,
      temperatures: undefined,
      expansionPerK: 1e-5,
      moistureMmPerM: 1,
      jointMm: 6,
      battenCentresMm: 610,
      basis: "typical",
    });
  });
});
