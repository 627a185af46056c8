/**
 * How thick foam sheathing may be under furring that carries the cladding on No. 10 screws: International Building Code
 * 2018, Table 2603.13.2 (1x furring, studs of specific gravity 0.42, foam of 15 psi, screw held 1 in in the stud).
 */
import type { Source } from "../findings/finding.ts";

export const FOAM_TABLE_SOURCE: Source = {
  kind: "document",
  document: "International Building Code, 2018",
  clause: "Table 2603.13.2",
};

const MM_PER_INCH = 25.4;
const KG_PER_M2_PER_PSF = 4.882428;
const NUMBER_10_MM = 4.83;

/** Weights of cladding that head the columns (psf). */
const WEIGHTS_PSF = [3, 11, 18, 25] as const;

/** Furring and screw spacing (in), thickest foam by weight (in); undefined where the table asks for a design. */
const ROWS: readonly {
  readonly furring: number;
  readonly screws: number;
  readonly foam: readonly (number | undefined)[];
}[] = [
  { furring: 16, screws: 12, foam: [4, 2.3, 1.2, 0.7] },
  { furring: 16, screws: 16, foam: [4, 1.65, 0.75, undefined] },
  { furring: 16, screws: 24, foam: [4, 0.9, undefined, undefined] },
  { furring: 24, screws: 12, foam: [4, 1.4, 0.6, undefined] },
  { furring: 24, screws: 16, foam: [4, 0.9, undefined, undefined] },
  { furring: 24, screws: 24, foam: [2.85, undefined, undefined, undefined] },
];

export interface FurringOverFoam {
  readonly screwDiameterMm: number;
  readonly screwSpacingMm: number;
  readonly furringSpacingMm: number;
  readonly claddingKgPerM2: number;
}

/** Thickest foam (mm) by the next worse row and column of the table; undefined outside it. Nothing is interpolated. */
export function thickestFoam(asked: FurringOverFoam): number | undefined {
  // 4.8 mm is sold as No. 10, which measures 4.83 mm.
  if (asked.screwDiameterMm < NUMBER_10_MM - 0.05) return undefined;
  const row = ROWS.find(
    ({ furring, screws }) => fits(asked.furringSpacingMm, furring) && fits(asked.screwSpacingMm, screws),
  );
  const column = WEIGHTS_PSF.findIndex((psf) => asked.claddingKgPerM2 <= psf * KG_PER_M2_PER_PSF);
  const inches = row?.foam[column];
  return inches === undefined ? undefined : inches * MM_PER_INCH;
}

/** Metric spacings of 400 and 600, and 610 for 24 in, count as the inch spacing that they stand for. */
function fits(mm: number, inches: number): boolean {
  return mm <= inches * MM_PER_INCH + 0.5;
}
