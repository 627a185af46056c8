/**
 * Figures that named rule sets print for the cavity, its vents, its fire stops and its openings, each read in the text that
 * the source page names (most at second hand): the data must say the same. The sets disagree; none is the truth.
 */
import { describe, expect, it } from "vitest";
import { cavityRuleSet, fireStopRules } from "../../src/catalogue/cavity-rules.ts";
import { clearance } from "../../src/catalogue/clearances.ts";
import { highest, lowest, type Quantity } from "../../src/catalogue/figure.ts";
import { openingLimits } from "../../src/catalogue/meshes.ts";
import { demandsOf } from "../../src/codes/demands.ts";
import { proofFixture } from "../helpers/proof-fixture.ts";

/** Set, figure, least and most as printed, unit. */
const PRINTED: [string, string, number, number, string][] = [
  ["canada-nbc", "depth", 10, 10, "mm"],
  ["canada-nbc", "drainageMaterialDepth", 10, 10, "mm"],
  ["canada-nbc", "drainageMaterialOpenShare", 80, 80, "%"],
  ["canada-nbc", "looseCladdingBottomDepth", 10, 10, "mm"],
  ["canada-nbc", "looseCladdingDepth", 6, 6, "mm"],
  ["germany-din-18516-1", "depth", 20, 20, "mm"],
  ["germany-din-18516-1", "localDepth", 5, 5, "mm"],
  ["germany-din-18516-1", "ventArea", 50, 50, "cm2/m"],
  ["germany-din-18516-1", "profiledSheetArea", 200, 200, "cm2/m"],
  ["austria-oenorm-b-8110-2", "depth", 20, 20, "mm"],
  ["austria-oenorm-b-8110-2", "ventArea", 150, 150, "cm2/m"],
  ["austria-timber-information", "depth", 20, 20, "mm"],
  ["austria-timber-information", "depthRange", 10, 40, "mm"],
  ["austria-timber-information", "depthPerHeight", 10, 10, "mm/m"],
  ["austria-timber-information", "openJoint", 10, 10, "mm"],
  ["switzerland-practice", "depth", 20, 20, "mm"],
  ["switzerland-practice", "depthOpenJoint", 40, 40, "mm"],
  ["switzerland-practice", "ventArea", 100, 100, "cm2/m"],
  ["switzerland-practice", "ventShareOfCavity", 50, 50, "%"],
  ["united-kingdom-warranty-body", "depthOpenJoint", 50, 50, "mm"],
  ["united-kingdom-warranty-body", "depthBaffledJoint", 38, 38, "mm"],
  ["united-kingdom-warranty-body", "openJoint", 10, 10, "mm"],
  ["united-kingdom-warranty-body", "depth", 15, 15, "mm"],
  ["united-kingdom-timber-cladding", "depth", 21, 21, "mm"],
  ["united-kingdom-timber-cladding", "counterBattenDepth", 16, 16, "mm"],
  ["united-kingdom-timber-cladding", "battenBevel", 15, 15, "deg"],
  ["united-kingdom-fibre-cement", "depth", 30, 30, "mm"],
  ["united-kingdom-fibre-cement", "ventSlot", 10, 10, "mm"],
  ["new-zealand-e2-as1", "depth", 20, 20, "mm"],
  ["new-zealand-e2-as1", "ventArea", 10, 10, "cm2/m"],
  ["new-zealand-e2-as1", "dripEdge", 10, 10, "mm"],
  ["usa-green-building-standard", "depth", 6.4, 6.4, "mm"],
  ["usa-oregon", "depth", 3.2, 3.2, "mm"],
];

describe("rule sets on the cavity", () => {
  it.each(PRINTED)("%s: %s", (id, key, least, most, unit) => {
    const figure = (cavityRuleSet(id) as unknown as Readonly<Record<string, Quantity>> | undefined)?.[key];
    if (figure === undefined) throw new Error(`${id} has no ${key}`);
    expect([lowest(figure), highest(figure), figure.unit]).toEqual([least, most, unit]);
  });

  it("disagree: vents from 10 to 150 cm²/m, open-joint cavities from 20 to 50 mm", () => {
    const { ventArea, cavityDepth } = demandsOf(proofFixture().project);
    const areas = ventArea.map(({ value }) => value);
    expect([Math.min(...areas), Math.max(...areas)]).toEqual([10, 150]);
    expect(cavityDepth.map(({ value }) => value)).toEqual(expect.arrayContaining([20, 40, 50]));
  });
});

describe("fire stops, as printed and in millimetres", () => {
  it.each([
    ["fire-canada-nbc", 20_000, 3000, 25],
    ["fire-usa-ibc", 6096, 6096, 0],
    ["fire-scotland-class-0-surface", 20_000, 20_000, 0],
    ["fire-scotland-other-surface", 10_000, 10_000, 0],
  ])("%s", (id, alongMm, upMm, exemptDepthMm) => {
    const { fireStops } = demandsOf(proofFixture().project);
    expect(fireStops.find((rule) => rule.id === id)).toMatchObject({ alongMm, upMm, exemptDepthMm });
  });

  it("Austria's stops stand out 200 mm, or 100 mm under restrictions", () => {
    const [austria] = fireStopRules("austria");
    expect([austria?.projection?.value, austria?.projectionRestricted?.value]).toEqual([200, 100]);
  });
});

describe("openings", () => {
  it.each([
    ["insects", "insects", 4, 4],
    ["insects", "insects-cavity-base-new-zealand", 3, 5],
    ["vermin", "vermin-attic-vents-usa", 1.6, 6.4],
    ["embers", "embers-california", 1.6, 3.2],
    ["rodents", "grille-needed-germany", 20, 20],
  ] as const)("%s: %s", (against, id, least, most) => {
    const found = openingLimits(against).find((limit) => limit.id === id);
    if (!found) throw new Error(`${id} is missing`);
    expect([lowest(found.opening), highest(found.opening)]).toEqual([least, most]);
  });
});

describe("cladding over a flashing, against water that climbs", () => {
  it.each([
    ["usa", 6],
    ["new-zealand", 5],
  ] as const)("%s", (jurisdiction, printed) => {
    expect(clearance({ jurisdiction, kind: "flashing" })?.figures[0]?.value).toBe(printed);
  });
});
