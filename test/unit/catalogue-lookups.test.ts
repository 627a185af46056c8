/** Lookups give what is known, and undefined or nothing for what is not: never a default. */
import { describe, expect, it } from "vitest";
import { cavityRuleSet, cavityRuleSets, fireStopRules } from "../../src/catalogue/cavity-rules.ts";
import { clearance, clearancesOf } from "../../src/catalogue/clearances.ts";
import {
  climate,
  climateIds,
  outdoorMoisture,
  outdoorMoistureIds,
  outdoorMoistureSpans,
} from "../../src/catalogue/climates.ts";
import { penetrations, screwGauge, screwGaugeIds, stainlessGroup } from "../../src/catalogue/fasteners.ts";
import { highest, isRange, isUnconfirmed, lowest } from "../../src/catalogue/figure.ts";
import { coverage, serviceLife, serviceLifeIds } from "../../src/catalogue/finishes.ts";
import { mesh, meshIds, openingLimits } from "../../src/catalogue/meshes.ts";
import { openJointRules, proportionRule, proportionRules } from "../../src/catalogue/proportion-rules.ts";
import {
  fibreCementClass,
  fibreCementTolerance,
  sheetMaterial,
  sheetMaterialIds,
} from "../../src/catalogue/sheet-materials.ts";
import { species, speciesIds } from "../../src/catalogue/species.ts";
import {
  battenSection,
  battenSections,
  kerf,
  lumber,
  lumberIds,
  packerThicknesses,
} from "../../src/catalogue/stock.ts";
import { angleLimit, flatness, flatnessIds, flatnessLimitMm } from "../../src/catalogue/straightness.ts";

describe("figures", () => {
  const base = { unit: "mm", source: "common-practice", basis: "common-practice" } as const;

  it("bounds of a number are the number", () => {
    expect([lowest({ ...base, value: 0 }), highest({ ...base, value: 0 })]).toEqual([0, 0]);
    expect(isRange({ ...base, value: 0 })).toBe(false);
  });

  it("an open end of a span has no bound", () => {
    expect([lowest({ ...base, value: { min: 8 } }), highest({ ...base, value: { min: 8 } })]).toEqual([
      8,
      undefined,
    ]);
    expect([lowest({ ...base, value: { max: 10 } }), highest({ ...base, value: { max: 10 } })]).toEqual([
      undefined,
      10,
    ]);
  });

  it("remembered and invented figures are unconfirmed, others not", () => {
    expect(isUnconfirmed({ basis: "memory" })).toBe(true);
    expect(isUnconfirmed({ basis: "invented" })).toBe(true);
    expect(isUnconfirmed({ basis: "common-practice" })).toBe(false);
    expect(isUnconfirmed({ basis: "seen-secondary" })).toBe(false);
  });
});

describe("every listed id is found, and an unknown one is not", () => {
  const lookups: [string, readonly string[], (id: string) => unknown][] = [
    ["species", speciesIds(), species],
    ["sheet materials", sheetMaterialIds(), sheetMaterial],
    ["meshes", meshIds(), mesh],
    ["lumber", lumberIds(), lumber],
    ["battens", battenSections().map(({ id }) => id), battenSection],
    ["screw gauges", screwGaugeIds(), screwGauge],
    ["cavity rule sets", cavityRuleSets().map(({ id }) => id), cavityRuleSet],
    ["flatness", flatnessIds(), flatness],
    ["climates", climateIds(), climate],
    ["outdoor moisture", outdoorMoistureIds(), outdoorMoisture],
    ["service lives", serviceLifeIds(), serviceLife],
    ["proportion rules", proportionRules().map(({ id }) => id), proportionRule],
    ["fibre-cement classes", ["class-1", "class-5"], fibreCementClass],
    ["fibre-cement tolerances", ["level-1", "level-2"], fibreCementTolerance],
    ["stainless groups", ["A2", "A4"], stainlessGroup],
    ["kerfs", ["circular-saw", "band-saw"], kerf],
    ["coverage", ["smooth", "sawn-or-weathered"], coverage],
  ];
  it.each(lookups)("%s", (_name, ids, find) => {
    expect(ids.length).toBeGreaterThan(0);
    for (const id of ids) expect(find(id)).toMatchObject({ id });
    expect(find("no-such-thing")).toBeUndefined();
    expect(find("constructor")).toBeUndefined();
  });
});

describe("what is not known stays unknown", () => {
  it("the woods of the pile are known, each with a coefficient and its basis", () => {
    for (const id of ["white-spruce", "quaking-aspen", "northern-white-cedar", "eastern-white-pine"]) {
      expect(species(id)?.coefficientTangential?.unit).toBe("1/%MC");
    }
    expect(species("quaking-aspen")?.coefficientTangential?.basis).toBe("seen-secondary");
    expect(species("white-spruce")?.coefficientTangential?.basis).toBe("memory");
  });

  it("a group of woods has a fastener gravity and no shrinkage", () => {
    expect(species("spruce-pine-fir")?.specificGravityFastener?.value).toBe(0.42);
    expect(species("spruce-pine-fir")?.coefficientTangential).toBeUndefined();
  });

  it("fibre saturation is given only for woods that differ from the usual", () => {
    expect(species("western-redcedar")?.fibreSaturation?.value).toBe(22);
    expect(species("quaking-aspen")?.fibreSaturation).toBeUndefined();
  });

  it("a clearance is that of the jurisdiction asked for, or none", () => {
    expect(clearance({ jurisdiction: "canada", kind: "ground" })?.figures[0]?.value).toBe(200);
    expect(clearance({ jurisdiction: "canada", kind: "deck" })).toBeUndefined();
    expect(clearance({ jurisdiction: "austria", kind: "ground" })).toBeUndefined();
  });

  it("disagreements stand side by side", () => {
    expect(
      clearance({ jurisdiction: "united-kingdom", kind: "ground" })?.figures.map(({ value }) => value),
    ).toEqual([150, 200]);
    expect(clearancesOf("ground").map(({ jurisdiction }) => jurisdiction)).toEqual([
      "canada",
      "usa",
      "germany",
      "united-kingdom",
      "france",
    ]);
    const gaps = openJointRules().map(({ id, gap }) => [id, gap.value]);
    expect(gaps).toContainEqual(["united-kingdom-supplier", { min: 8 }]);
    expect(gaps).toContainEqual(["france-dtu-41-2", { max: 10 }]);
    const vents = cavityRuleSets().flatMap(({ ventArea }) => ventArea?.value ?? []);
    expect([Math.min(...vents), Math.max(...vents)]).toEqual([10, 150]);
  });

  it("rules by jurisdiction are empty where none is known", () => {
    expect(fireStopRules("canada")).toHaveLength(1);
    expect(fireStopRules("france")).toEqual([]);
    expect(penetrations("canada").map(({ least }) => least.value)).toEqual([19, 25]);
    expect(penetrations("germany")).toEqual([]);
    expect(openingLimits("embers")).toHaveLength(1);
    expect(outdoorMoistureSpans("cheyenne")).toHaveLength(2);
    expect(outdoorMoistureSpans("nowhere")).toEqual([]);
  });

  it("packers include every whole millimetre sum a packing map needs from 1 to 11", () => {
    const thicknesses = packerThicknesses().map(({ value }) => value);
    const sums = new Set([0]);
    for (const thickness of thicknesses) for (const sum of [...sums]) sums.add(sum + thickness);
    for (let sum = 1; sum <= 11; sum += 1) expect(sums).toContain(sum);
  });
});

describe("straightness outside the table", () => {
  it("gives no limit outside 0.1–15 m, for an unknown surface, or for no number", () => {
    for (const distanceM of [0, 0.05, 15.1, -1, Number.NaN]) {
      expect(flatnessLimitMm({ surface: "finished-wall", distanceM })).toBeUndefined();
    }
    expect(flatnessLimitMm({ surface: "no-such-surface", distanceM: 1 })).toBeUndefined();
    expect(angleLimit(30.5)).toBeUndefined();
  });
});
