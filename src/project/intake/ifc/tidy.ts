/** Lengths as their author meant them, where the file's decimals cut them short. */
import { MM_PER_INCH, snap } from "../../../units/length.ts";

/** Decimals of a file in feet or metres are off by less (mm); steps of both kinds lie further apart. */
const CUT_SHORT_MM = 0.0015;

const TENTH_MM = 0.1;

/** Parts of an inch that a tape is read to. */
const INCH_PARTS = 64;

/** The nearest whole step, a tenth of a millimetre or 1/64 inch as the file's unit has it, where one lies so near; else the length on the grid. */
export function tidy(mm: number, unitMm: number): number {
  const steps = Math.round((mm * INCH_PARTS) / MM_PER_INCH);
  const stepped = isInches(unitMm)
    ? (steps * MM_PER_INCH) / INCH_PARTS
    : Number((Math.round(mm / TENTH_MM) * TENTH_MM).toFixed(1));
  return snap(Math.abs(stepped - mm) <= CUT_SHORT_MM ? stepped : mm);
}

/** Inches, feet and yards hold whole inches. */
function isInches(unitMm: number): boolean {
  const inches = unitMm / MM_PER_INCH;
  return Math.abs(inches - Math.round(inches)) < 1e-4 && Math.round(inches) > 0;
}
