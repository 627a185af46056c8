/**
 * Wood Handbook, Forest Products Laboratory: Tables 4-3 (shrinkage), 13-5 (coefficients of dimensional change) and 5-3a
 * (specific gravity), FPL-GTR-190 (2010) and FPL-GTR-282 (2021). Cells below are copied from the printed tables as
 * reprinted; those of the softwood half of Table 13-5 that could not be seen are not checked here.
 */
import { describe, expect, it } from "vitest";
import { species, woodRules } from "../../src/catalogue/species.ts";
import { coefficientFromShrinkage } from "../../src/equations/durability/coefficient-from-shrinkage.ts";

/** Species, radial and tangential shrinkage in percent (Table 4-3), radial and tangential coefficient (Table 13-5). */
const bothTables: [string, number, number, number, number][] = [
  ["red-alder", 4.4, 7.3, 0.00151, 0.00256],
  ["white-ash", 4.9, 7.8, 0.00169, 0.00274],
  ["quaking-aspen", 3.5, 6.7, 0.00119, 0.00234],
  ["american-basswood", 6.6, 9.3, 0.0023, 0.0033],
  ["american-beech", 5.5, 11.9, 0.0019, 0.00431],
  ["paper-birch", 6.3, 8.6, 0.00219, 0.00304],
  ["yellow-birch", 7.3, 9.5, 0.00256, 0.00338],
  ["black-cherry", 3.7, 7.1, 0.00126, 0.00248],
  ["american-chestnut", 3.4, 6.7, 0.00116, 0.00234],
  ["american-elm", 4.2, 9.5, 0.00144, 0.00338],
  ["black-walnut", 5.5, 7.8, 0.0019, 0.00274],
];

/** With saturation at 30 % the link is C = S / (3000 − 20 S), S in percent. */
const linked = (shrinkagePercent: number): number =>
  coefficientFromShrinkage({ shrinkagePercent, saturationPercent: 30 });

describe("Tables 4-3 and 13-5 together", () => {
  it.each(bothTables)("%s", (id, radial, tangential, coefficientRadial, coefficientTangential) => {
    const wood = species(id);
    expect(wood?.shrinkageRadial?.value).toBe(radial);
    expect(wood?.shrinkageTangential?.value).toBe(tangential);
    expect(wood?.coefficientRadial?.value).toBe(coefficientRadial);
    expect(wood?.coefficientTangential?.value).toBe(coefficientTangential);
    // The coefficients are printed to five places: half of the last is 5e-6.
    expect(Math.abs(linked(radial) - coefficientRadial)).toBeLessThan(6e-6);
    expect(Math.abs(linked(tangential) - coefficientTangential)).toBeLessThan(6e-6);
  });
});

describe("Table 4-3, softwoods", () => {
  const cells: [string, number, number][] = [
    ["yellow-cedar", 2.8, 6],
    ["atlantic-white-cedar", 2.9, 5.4],
    ["eastern-redcedar", 3.1, 4.7],
    ["incense-cedar", 3.3, 5.2],
    ["northern-white-cedar", 2.2, 4.9],
    ["port-orford-cedar", 4.6, 6.9],
    ["western-redcedar", 2.4, 5],
    ["douglas-fir-coast", 4.8, 7.6],
    ["douglas-fir-interior-north", 3.8, 6.9],
    ["douglas-fir-interior-west", 4.8, 7.5],
    ["balsam-fir", 2.9, 6.9],
    ["grand-fir", 3.4, 7.5],
    ["subalpine-fir", 2.6, 7.4],
    ["white-fir", 3.3, 7],
  ];
  it.each(cells)("%s", (id, radial, tangential) => {
    expect(species(id)?.shrinkageRadial).toMatchObject({ value: radial, basis: "seen-secondary" });
    expect(species(id)?.shrinkageTangential).toMatchObject({ value: tangential, basis: "seen-secondary" });
  });
});

describe("Table 13-5, rows seen alone", () => {
  const cells: [string, number, number][] = [
    ["black-locust", 0.00158, 0.00252],
    ["sugar-maple", 0.00165, 0.00353],
    ["red-oak", 0.00158, 0.00369],
    ["white-oak", 0.0018, 0.00365],
    ["eastern-white-pine", 0.00071, 0.00212],
  ];
  it.each(cells)("%s", (id, radial, tangential) => {
    expect(species(id)?.coefficientRadial?.value).toBe(radial);
    expect(species(id)?.coefficientTangential?.value).toBe(tangential);
  });

  it("the commercial group of white oak is not the single species through the link", () => {
    const tangential = species("white-oak")?.shrinkageTangential?.value ?? Number.NaN;
    expect(Math.abs(linked(tangential) - 0.00365)).toBeGreaterThan(1e-4);
  });
});

describe("derived coefficients", () => {
  it("are the link applied to the shrinkage beside them, and say so", () => {
    const derived = ["western-larch", "balsam-fir", "jack-pine", "lodgepole-pine", "western-hemlock"];
    for (const id of derived) {
      const wood = species(id);
      expect(wood?.coefficientTangential?.basis).toBe("derived");
      const expected = linked(wood?.shrinkageTangential?.value ?? Number.NaN);
      expect(wood?.coefficientTangential?.value).toBeCloseTo(expected, 5);
    }
  });

  it("woods that saturate low keep their remembered coefficients, which the usual 30 % would miss", () => {
    for (const id of ["western-redcedar", "northern-white-cedar"]) {
      const wood = species(id);
      const shrinkage = wood?.shrinkageTangential?.value ?? Number.NaN;
      const saturation = wood?.fibreSaturation?.value ?? Number.NaN;
      const coefficient = wood?.coefficientTangential?.value ?? Number.NaN;
      expect(wood?.coefficientTangential?.basis).toBe("memory");
      expect(
        Math.abs(
          coefficientFromShrinkage({ shrinkagePercent: shrinkage, saturationPercent: saturation }) -
            coefficient,
        ),
      ).toBeLessThan(6e-6);
      expect(coefficient / linked(shrinkage)).toBeGreaterThan(1.3);
    }
  });
});

describe("Table 5-3a, specific gravity green and at 12 %", () => {
  const cells: [string, number, number][] = [
    ["douglas-fir-coast", 0.45, 0.48],
    ["douglas-fir-interior-west", 0.46, 0.5],
    ["western-larch", 0.48, 0.52],
    ["balsam-fir", 0.33, 0.35],
    ["western-hemlock", 0.42, 0.45],
    ["jack-pine", 0.4, 0.43],
    ["loblolly-pine", 0.47, 0.51],
    ["white-oak", 0.6, 0.68],
    ["white-ash", 0.55, 0.6],
    ["red-pine", 0.41, 0.46],
    ["eastern-hemlock", 0.38, 0.4],
    ["lodgepole-pine", 0.38, 0.41],
    ["red-oak", 0.56, 0.63],
  ];
  it.each(cells)("%s", (id, green, at12) => {
    expect(species(id)?.specificGravityGreen?.value).toBe(green);
    expect(species(id)?.specificGravityAt12?.value).toBe(at12);
  });
});

describe("Table 5-3a, modulus of elasticity at 12 %, as transcribed from the edition of 2021", () => {
  const cells: [string, number][] = [
    ["douglas-fir-coast", 13_400],
    ["western-larch", 12_900],
    ["balsam-fir", 10_000],
    ["eastern-hemlock", 8300],
    ["western-hemlock", 11_300],
    ["jack-pine", 9300],
    ["lodgepole-pine", 9200],
    ["engelmann-spruce", 8900],
    ["white-oak", 12_300],
  ];
  it.each(cells)("%s", (id, modulus) => {
    expect(species(id)?.modulusAt12).toMatchObject({ value: modulus, basis: "seen-secondary" });
  });
});

describe("the same table in inches and pounds, as reprinted: gravity at 12 %, modulus in million psi", () => {
  const cells: [string, number, number][] = [
    ["quaking-aspen", 0.38, 1.18],
    ["black-locust", 0.69, 2.05],
  ];
  it.each(cells)("%s", (id, at12, millionPsi) => {
    expect(species(id)?.specificGravityAt12?.value).toBe(at12);
    // The metric table rounds to 100 MPa.
    expect(Math.abs((species(id)?.modulusAt12?.value ?? 0) - 6894.757 * millionPsi)).toBeLessThan(50);
  });
});

it("chapter 13, worked example: white fir 232 mm wide gains 1.705 mm from 8 to 11 %", () => {
  const coefficient = species("white-fir")?.coefficientTangential?.value ?? Number.NaN;
  // 232 × 0.00245 × 3 = 1.7052, printed 1.705.
  expect(232 * coefficient * (11 - 8)).toBeCloseTo(1.705, 3);
});

it("the coefficients are meant for 6–14 % and the usual saturation is 30 %", () => {
  expect(woodRules.linearRangeMoisture.value).toEqual({ min: 6, max: 14 });
  expect(woodRules.fibreSaturation.value).toBe(30);
});
