/**
 * How thick foam sheathing may be under furring that carries the cladding on No. 10 screws: International Building Code
 * 2018, Table 2603.13.2 (1x furring, studs of specific gravity 0.42, foam of 15 psi, screw held 1 in in the stud).
 */
import { equation } from "../equation.ts";

export const FOAM_TABLE = {
  document: "International Building Code, 2018",
  clause: "Table 2603.13.2",
} as const;

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

const IN2_PER_FT2 = 144;
const WIDEST_IN = 24;
const HEAVIEST_PSF = 25;

/** The cells by what a screw carries (lb), lightest first; where cells share a load they share the foam. */
const CELLS: readonly { readonly lb: number; readonly foam: number }[] = ROWS.flatMap(
  ({ furring, screws, foam }) =>
    WEIGHTS_PSF.flatMap((psf, column) => {
      const thickest = foam[column];
      return thickest === undefined ? [] : [{ lb: (psf * furring * screws) / IN2_PER_FT2, foam: thickest }];
    }),
).sort((a, b) => a.lb - b.lb);

/**
 * Thickest foam (mm) by what a screw carries; undefined outside the table. Between cells a straight line over the inverse of the
 * load: foam falls faster than that as load grows, so the line is never above the rule that makes the cells.
 */
export function thickestFoam(asked: FurringOverFoam): number | undefined {
  // 4.8 mm is sold as No. 10, which measures 4.83 mm.
  if (asked.screwDiameterMm < NUMBER_10_MM - 0.05) return undefined;
  const furring = inches(asked.furringSpacingMm);
  const screws = inches(asked.screwSpacingMm);
  const psf = asked.claddingKgPerM2 / KG_PER_M2_PER_PSF;
  if (furring > WIDEST_IN || screws > WIDEST_IN || psf > HEAVIEST_PSF + NOISE) return undefined;
  const lb = (psf * furring * screws) / IN2_PER_FT2;
  const above = CELLS.findIndex((cell) => lb <= cell.lb + NOISE);
  const heavier = CELLS[above];
  if (!heavier) return undefined;
  const lighter = CELLS[above - 1];
  if (!lighter || lighter.lb === heavier.lb || Math.abs(lb - heavier.lb) <= NOISE)
    return heavier.foam * MM_PER_INCH;
  const share = (1 / lb - 1 / heavier.lb) / (1 / lighter.lb - 1 / heavier.lb);
  return (heavier.foam + (lighter.foam - heavier.foam) * share) * MM_PER_INCH;
}

const NOISE = 1e-6;

/** Metric spacings of 400 and 600, and 406 and 610 for 16 and 24 in, count as the inch spacing that they stand for. */
function inches(mm: number): number {
  const exact = mm / MM_PER_INCH;
  const named = [12, 16, 24].find((inch) => Math.abs(mm - inch * MM_PER_INCH) <= 0.5);
  return named ?? exact;
}

export const THICKEST_FOAM = equation({
  name: "thickest-foam",
  formula:
    "the table’s cells for screwDiameterMm of No. 10 or more, by screwSpacingMm · furringSpacingMm · claddingKgPerM2 on a screw, a line over its inverse between them; nothing outside",
  inputs: [
    { key: "screwDiameterMm", unit: "mm", range: [4.78, 12] },
    { key: "screwSpacingMm", unit: "mm", range: [50, 610] },
    { key: "furringSpacingMm", unit: "mm", range: [100, 610] },
    { key: "claddingKgPerM2", unit: "kg/m²", range: [1, 122] },
  ],
  result: { unit: "mm" },
  source: FOAM_TABLE,
  work: (asked) => thickestFoam(asked) ?? Number.NaN,
});
