/**
 * International Building Code 2018, Table 2603.13.2: thickest foam sheathing (in) under 1x furring on No. 10 screws, by the
 * spacing of furring and screws (in) and the weight of the cladding (psf). DR: design required. Cells as reprinted. Between cells: never
 * more than the dowel equations with a gap give that make the cells (see nds-gap-furring-table.test.ts).
 */
import { describe, expect, it } from "vitest";
import { thickestFoam } from "../../src/equations/hanging/foam-sheathing.ts";
import { ndsBearingStrength } from "../../src/equations/screws/nds-bearing-strength.ts";
import { ndsLateral } from "../../src/equations/screws/nds-lateral.ts";

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
  it("goes by what a screw carries: between its cells, and never over the rule that makes them", () => {
    const bearing = ndsBearingStrength({ specificGravity: 0.42 });
    for (const [furring, screws, psf] of [
      [15, 13, 12],
      [17, 14, 11],
      [20, 12, 10],
      [16, 15, 9],
      [23, 16, 8],
      [24, 12, 17],
      [18, 12, 15],
    ] as const) {
      const foam = inches({ furring, screws, psf }) ?? Number.NaN;
      const carried = (psf * furring * screws) / 144;
      const allowed = (gapMm: number) =>
        (0.72 *
          ndsLateral({
            rootMm: 0.152 * MM,
            yieldMPa: 90_000 * 0.0068947573,
            sideMm: 0.75 * MM,
            mainMm: MM,
            gapMm,
            sideMPa: bearing,
            mainMPa: bearing,
          })) /
        4.4482216;
      // Cells are rounded to 0.05 in.
      expect(allowed((foam - 0.075) * MM)).toBeGreaterThan(carried);
      expect(allowed((foam + 0.15) * MM)).toBeLessThan(carried);
    }
  });

  it("falls as load grows", () => {
    const foams = [4, 8, 9, 10, 12, 13, 15, 18, 20, 22, 24].map(
      (psf) => inches({ furring: 16, screws: 12, psf }) ?? 0,
    );
    expect([...foams].sort((a, b) => b - a)).toEqual(foams);
    expect(new Set(foams).size).toBeGreaterThan(8);
  });

  it("says nothing beyond the last row or column, or for a thinner screw", () => {
    expect(inches({ furring: 25, screws: 12, psf: 3 })).toBeUndefined();
    expect(inches({ furring: 16, screws: 25, psf: 3 })).toBeUndefined();
    expect(inches({ furring: 16, screws: 12, psf: 26 })).toBeUndefined();
    const thin = { furringSpacingMm: 400, screwSpacingMm: 300, claddingKgPerM2: 10 };
    expect(thickestFoam({ ...thin, screwDiameterMm: 4.5 })).toBeUndefined();
    expect(thickestFoam({ ...thin, screwDiameterMm: 4.8 })).toBe(4 * MM);
  });

  it("either spacing may be the wider: the table's own cells at 16 by 24 in agree", () => {
    for (const psf of [11, 14])
      expect(inches({ furring: 24, screws: 16, psf })).toBe(inches({ furring: 16, screws: 24, psf }));
  });
});
