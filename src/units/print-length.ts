import { GRID_STEPS_PER_MM, INCHES_PER_FOOT, MM_PER_INCH, toGridSteps } from "./length.ts";

/** How lengths are shown. */
export interface LengthStyle {
  readonly display: "mm" | "feet-inch";
  /** Smallest fraction of an inch shown, for `feet-inch`; 16 unless told. */
  readonly denominator?: 16 | 32 | 64;
  /** Most decimals shown, for `mm`, 0 to 6; 1 unless told. Six show every length of the grid exactly. */
  readonly decimals?: number;
  /** Decimal sign, for `mm`; a point unless told. */
  readonly decimalSign?: "." | ",";
}

const GRID_STEPS_PER_INCH = Math.round(GRID_STEPS_PER_MM * MM_PER_INCH);
const MOST_DECIMALS = 6;

/**
 * Prints a length in millimetres.
 *
 * `mm`: the bare number, rounded to the decimals asked for, halves away from zero, with no trailing zeros and no
 * grouping (`950`, `95.5`).
 *
 * `feet-inch`: from one foot on, feet and inches, both always shown (`3'-4 1/2"`, `10'-0"`); under it, inches only (`5/8"`, `0"`).
 * The total is rounded to the fraction first and split afterwards, so 5.9999 ft reads `6'-0"`; fractions are reduced; a
 * negative length carries one sign, in front; a length that rounds to zero carries none.
 *
 * `parseLength` reads either back: exactly, wherever the style shows the length whole.
 */
export function printLength(mm: number, style: LengthStyle): string {
  if (!Number.isFinite(mm)) return String(mm);
  return style.display === "mm" ? printMillimetres(mm, style) : printFeetInch(mm, style.denominator ?? 16);
}

function printMillimetres(mm: number, { decimals = 1, decimalSign = "." }: LengthStyle): string {
  const places = Math.min(MOST_DECIMALS, Math.max(0, Math.trunc(decimals)));
  const scale = 10 ** places;
  const steps = toGridSteps(mm);
  // Rounding whole grid steps rather than the decimal number keeps halves exact: 0.0125 mm is 100 steps, but no exact binary number.
  const scaled = Math.round((Math.abs(steps) * scale) / GRID_STEPS_PER_MM);
  const fraction = String(scaled % scale)
    .padStart(places, "0")
    .replace(/0+$/, "");
  const whole = String(Math.floor(scaled / scale));
  const sign = steps < 0 && scaled > 0 ? "-" : "";
  return places === 0 || fraction === "" ? sign + whole : sign + whole + decimalSign + fraction;
}

function printFeetInch(mm: number, denominator: 16 | 32 | 64): string {
  const steps = toGridSteps(mm);
  const total = Math.round((Math.abs(steps) * denominator) / GRID_STEPS_PER_INCH);
  const sign = steps < 0 && total > 0 ? "-" : "";
  const feet = Math.floor(total / (INCHES_PER_FOOT * denominator));
  const rest = total - feet * INCHES_PER_FOOT * denominator;
  const inches = printInches(Math.floor(rest / denominator), {
    over: rest % denominator,
    denominator,
    beside: feet > 0,
  });
  return feet > 0 ? `${sign}${feet}'-${inches}"` : `${sign}${inches}"`;
}

function printInches(whole: number, part: { over: number; denominator: number; beside: boolean }): string {
  if (part.over === 0) return String(whole);
  let { over, denominator } = part;
  while (over % 2 === 0) {
    over /= 2;
    denominator /= 2;
  }
  return whole === 0 && !part.beside ? `${over}/${denominator}` : `${whole} ${over}/${denominator}`;
}
