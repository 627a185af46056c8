/** The years that the page plots are the numbers of the findings and rods that the design gives. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { designFile } from "../../src/design.ts";
import { YEAR_KINDS, type Year } from "../../src/web/years/year.ts";
import { yearsOf } from "../../src/web/years/years.ts";

const text = readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8");

function designed(edit: (project: { site: { climate: Climate } }) => void = () => undefined) {
  const document = JSON.parse(text) as { site: { climate: Climate } };
  edit(document);
  const made = designFile({ name: "demo", document });
  if (made.kind !== "designed") throw new Error("the demo reads");
  return made.design;
}

interface Climate {
  meanTempC?: { values: number[] };
  meanRelativeHumidityPercent?: { values: number[] };
  groundReflectance?: unknown;
  snowDepthMm?: unknown;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const zone = (face: string, id: string) => ({ kind: "zone", face, id }) as const;

describe("the year of the gap", () => {
  it("reaches from the rods' wettest gap to their driest", () => {
    const design = designed();
    const year = yearsOf(design, zone("west", "boards")).get("gap");
    const face = design.facade.faces.find(({ id }) => id === "west");
    const gaps = face?.joints.filter(({ kind, zone }) => kind === "course gap" && zone === "boards") ?? [];
    const { wettestMm = Number.NaN, driestMm = Number.NaN } =
      Object.values(design.demands.boards).find((demand) => demand?.seasonal)?.seasonal ?? {};
    const widest = Math.max(
      ...(face?.pieces.filter(({ kind }) => kind === "board").map(({ cut }) => cut.width) ?? []),
    );
    const months = year?.months ?? [];
    expect(months).toHaveLength(12);
    const narrowestGap = Math.min(...gaps.map(({ width }) => width));
    const widestGap = Math.max(...gaps.map(({ width }) => width));
    expect(Math.min(...months.map(({ least }) => least))).toBeCloseTo(narrowestGap + wettestMm * widest, 9);
    expect(Math.max(...months.map(({ most }) => most))).toBeCloseTo(widestGap + driestMm * widest, 9);
  });
});

describe("the year of light", () => {
  it.each([
    ["front", "boards"],
    ["front", "sheets"],
    ["north", "sheets"],
  ])("of %s %s sums to what its finding tells", (face, id) => {
    const design = designed();
    const year = yearsOf(design, zone(face, id)).get("light");
    const finding = design.findings.find(
      ({ code, where }) => code === "P021" && where.face === face && where.zone === id,
    );
    expect(finding?.demand).toBeGreaterThan(1);
    expect(sum(year?.months.map(({ most }) => most) ?? [])).toBeCloseTo(finding?.demand ?? Number.NaN, 9);
    const average = sum(year?.months.map(({ least }) => least) ?? []);
    expect(average).toBeCloseTo(Number(finding?.says.values.average), 9);
  });
});

describe("the year of drying", () => {
  it("in a month with the weather of the reference day is what its finding tells", () => {
    const design = designed(({ site: { climate } }) => {
      // 5 °C and 80 %, as the rule has it.
      if (climate.meanTempC) climate.meanTempC.values[2] = 5;
      if (climate.meanRelativeHumidityPercent) climate.meanRelativeHumidityPercent.values[2] = 80;
    });
    const year = yearsOf(design, zone("front", "sheets")).get("drying");
    const finding = design.findings.find(
      ({ code, where }) => code === "P034" && where.face === "front" && where.zone === "sheets",
    );
    const grams = 1000 * Number(finding?.says.values.water);
    expect(grams).toBeGreaterThan(100);
    expect(year?.months[2]?.most).toBeCloseTo(grams, 6);
    expect(year?.months[2]?.least).toBeLessThan(grams);
  });

  it("is less in damper air, and never less than nothing", () => {
    const percent = (humidity: number): Year | undefined =>
      yearsOf(
        designed(({ site: { climate } }) => {
          climate.meanRelativeHumidityPercent?.values.fill(humidity);
        }),
        zone("front", "sheets"),
      ).get("drying");
    const [dry, damp, wet] = [percent(60), percent(80), percent(100)];
    for (const [month, { least, most }] of (damp?.months ?? []).entries()) {
      expect(least).toBeLessThan(dry?.months[month]?.least ?? Number.NaN);
      expect(most).toBeGreaterThan(wet?.months[month]?.most ?? Number.NaN);
    }
    expect(Math.min(...(wet?.months ?? []).map(({ least }) => least))).toBe(0);
  });

  it("is not told where the air comes and goes too freely, as behind open boards", () => {
    const years = yearsOf(designed(), zone("front", "boards"));
    expect([...years.keys()]).toEqual(["gap", "light"]);
  });
});

it("no year is told of a project without its climate and ground, and none is missing where it can be told", () => {
  const bare = designed(({ site }) => {
    site.climate = {};
  });
  expect(yearsOf(bare, zone("front", "sheets")).size).toBe(0);
  const kinds = yearsOf(designed(), { kind: "face", face: "front" });
  expect([...kinds.keys()]).toEqual([...YEAR_KINDS]);
});
