/**
 * International Building Code 2018, Table 2603.13.2: thickest foam sheathing (in) under 1x furring on No. 10 screws, by the
 * spacing of furring and screws (in) and the weight of the cladding (psf). DR: design required. Cells as reprinted.
 */
import { describe, expect, it } from "vitest";
import { thickestFoam } from "../../src/codes/foam-sheathing.ts";

const DR = undefined;
const MM = 25.4;
const KG_PER_M2 = 4.882428;

/** Furring spacing, screw spacing, foam at 3, 11, 18 and 25 psf. */
const table: [number, number, (number | undefined)[]][] = [
  [16, 12, [4, 2.3, 1.2, 0.7]],
  [16, 16, [4, 1.65, 0.75, DR]],
  [16, 24, [4, 0.9, DR, DR]],
  [24, 12, [4, 1.4, 0.6, DR]],
  [24, 16, [4, 0.9, DR, DR]],
  [24, 24, [2.85, DR, DR, DR]],
];

function inches(asked: { furring: number; screws: number; psf: number }): number | undefined {
  const foam = thickestFoam({
    screwDiameterMm: 4.83,
    furringSpacingMm: asked.furring * MM,
    screwSpacingMm: asked.screws * MM,
    claddingKgPerM2: asked.psf * KG_PER_M2,
  });
  return foam === undefined ? undefined : Math.round((foam / MM) * 100) / 100;
}

describe.each(table)("furring %d in, screws %d in", (furring, screws, row) => {
  it.each([3, 11, 18, 25].map((psf, column) => [psf, row[column]] as const))("%d psf", (psf, foam) => {
    expect(inches({ furring, screws, psf })).toBe(foam);
  });
});

describe("between and outside the cells", () => {
  it("goes by the next worse row and column", () => {
    expect(inches({ furring: 15, screws: 13, psf: 12 })).toBe(0.75);
    expect(inches({ furring: 17, screws: 12, psf: 3.1 })).toBe(1.4);
  });

  it("says nothing beyond the last row or column, or for a thinner screw", () => {
    expect(inches({ furring: 25, screws: 12, psf: 3 })).toBeUndefined();
    expect(inches({ furring: 16, screws: 25, psf: 3 })).toBeUndefined();
    expect(inches({ furring: 16, screws: 12, psf: 26 })).toBeUndefined();
    const thin = { furringSpacingMm: 400, screwSpacingMm: 300, claddingKgPerM2: 10 };
    expect(thickestFoam({ ...thin, screwDiameterMm: 4.5 })).toBeUndefined();
    expect(thickestFoam({ ...thin, screwDiameterMm: 4.8 })).toBe(4 * MM);
  });

  it("never swaps the two spacings", () => {
    expect(inches({ furring: 24, screws: 12, psf: 11 })).not.toBe(
      inches({ furring: 12, screws: 24, psf: 11 }),
    );
  });
});
