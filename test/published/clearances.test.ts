/**
 * Clearances and cavities as demands, by the place: Ontario Building Code (200 mm above ground), US trim guides (6 in),
 * E2/AS1 of New Zealand (175 mm unpaved), German guidance referring to DIN 68800 (300 mm), a British page for general
 * builders (150 mm), NF DTU 41.2 as told on French pages (200 mm over the finished ground); cavity behind open joints:
 * National Building Code of Canada 9.27.2.2.(1), NHBC Standards 6.9.18, a Swiss practice text. All at second hand.
 */
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { proofFixture } from "../helpers/proof-fixture.ts";

type Place =
  | "canada"
  | "united-states"
  | "germany"
  | "new-zealand"
  | "switzerland"
  | "united-kingdom"
  | "france"
  | "other";

function demandsIn(jurisdiction: Place) {
  return demandsOf(proofFixture({ project: ({ site }) => Object.assign(site, { jurisdiction }) }).project);
}

const own = (rules: readonly { own: boolean; value: number }[]): number[] =>
  rules.filter((rule) => rule.own).map(({ value }) => value);

describe("height above ground (mm)", () => {
  it.each<[Place, number[]]>([
    ["canada", [200]],
    ["united-states", [152]],
    ["germany", [300]],
    ["new-zealand", [175]],
    ["united-kingdom", [150]],
    ["france", [200]],
    ["switzerland", []],
    ["other", []],
  ])("%s", (place, expected) => {
    expect(own(demandsIn(place).groundClearance)).toEqual(expected);
  });
});

describe("cavity behind open joints (mm)", () => {
  it.each<[Place, number[]]>([
    ["canada", [10]],
    ["switzerland", [40]],
    ["united-kingdom", [50, 21, 30]],
    ["germany", [20]],
  ])("%s", (place, expected) => {
    expect(own(demandsIn(place).cavityDepth)).toEqual(expected);
  });

  it("own rules stand first and no rule is lost", () => {
    const rules = demandsIn("united-kingdom").cavityDepth;
    expect(rules.map((rule) => rule.own).lastIndexOf(true)).toBe(2);
    expect(rules).toHaveLength(demandsIn("other").cavityDepth.length);
  });
});
