import { INCHES_PER_FOOT, MM_PER_INCH, snap } from "./length.ts";

/** Units a typed length may carry. */
export type LengthUnit = "mm" | "cm" | "m" | "in" | "ft";

/** What can be wrong with a typed length. */
export type LengthErrorCode =
  /** nothing was typed */
  | "empty"
  /** not written as a length */
  | "not-a-length"
  /** a number, followed by a word that is no unit of length */
  | "unknown-unit"
  /** both a point and a comma, or one of them twice: which is the decimal sign? */
  | "two-decimal-signs"
  /** a space between digits that does not part them in threes */
  | "digits-not-grouped"
  /** a fraction with a metric unit, or with none where the unit assumed is metric */
  | "fraction-needs-inches"
  /** a fraction over zero */
  | "zero-denominator"
  /** twelve inches or more beside feet, or a fraction of one or more beside whole inches */
  | "inches-carry"
  /** a part of a foot beside inches */
  | "part-of-foot-beside-inches"
  /** more than 1,000 km */
  | "out-of-range";

export type ParsedLength =
  | { readonly ok: true /** millimetres, on the grid of 1/8000 mm */; readonly value: number }
  | {
      readonly ok: false;
      readonly error: {
        readonly code: LengthErrorCode /** what was typed, as it stood */;
        readonly text: string;
      };
    };

const MM_PER_UNIT: Readonly<Record<LengthUnit, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  ft: MM_PER_INCH * INCHES_PER_FOOT,
};

/** English and French words and marks; curly and prime marks become straight ones before they are looked up. */
const UNIT_WORDS: ReadonlyMap<string, LengthUnit> = new Map<string, LengthUnit>([
  ["mm", "mm"],
  ["cm", "cm"],
  ["m", "m"],
  ...["in", "in.", "inch", "inches", "po", "po.", "pouce", "pouces", '"'].map(
    (word) => [word, "in"] as const,
  ),
  ...["ft", "ft.", "foot", "feet", "pi", "pi.", "pied", "pieds", "'"].map((word) => [word, "ft"] as const),
]);

const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

const LONGEST_MM = 1e9;

/** One number with its unit: a decimal or whole number, a fraction, or a whole number and a fraction. */
interface Quantity {
  readonly value: number;
  readonly fractional: boolean;
  readonly unit: LengthUnit | undefined;
}

type Attempt<T> = { readonly value: T } | { readonly code: LengthErrorCode };

/**
 * Reads a length as people type it and returns it in millimetres, snapped to the grid, or says what is wrong. Never throws.
 *
 * Metric: `950`, `950 mm`, `95.5 cm`, `1,2 m`, `1 222,5`. A lone point or comma is always the decimal sign; thousands are
 * parted by spaces only. Imperial: `3'-4 1/2"`, `3' 4-1/2"`, `3ft 4in`, `40 1/2 in`, `5/8"`, `4½″`, `3.5 ft`; inches
 * beside feet need no mark. A minus sign, if any, comes first and holds for the whole.
 *
 * @param defaultUnit the unit of a number typed without one
 */
export function parseLength(text: string, defaultUnit: LengthUnit): ParsedLength {
  const fail = (code: LengthErrorCode): ParsedLength => ({ ok: false, error: { code, text } });
  const plain = straighten(text);
  const negative = plain.startsWith("-");
  const body = plain.replace(/^[-+]\s*/, "");
  if (body === "") return fail(plain === "" ? "empty" : "not-a-length");
  const attempt = readMagnitude(body, defaultUnit);
  if ("code" in attempt) return fail(attempt.code);
  if (attempt.value > LONGEST_MM) return fail("out-of-range");
  return { ok: true, value: snap(negative ? -attempt.value : attempt.value) };
}

/** One spelling for each sign: straight marks, a plain hyphen, a plain slash, single spaces, lower case. */
function straighten(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR_FRACTIONS[sign] ?? ""}`)
    .replace(/[\u2212\u2010\u2011\u2013]/g, "-")
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/''|[\u2032\u2019]{2}|[\u2033\u201d\u201c]/g, '"')
    .replace(/[\u2032\u2019\u2018]/g, "'")
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}

const FEET_THEN_INCHES = /^([^'a-z]+)('|[a-z]+\.?)(?: ?- ?| )?([\d.,].*)$/;

function readMagnitude(body: string, defaultUnit: LengthUnit): Attempt<number> {
  const pair = FEET_THEN_INCHES.exec(body);
  if (pair !== null && UNIT_WORDS.get(pair[2] ?? "") === "ft") {
    return readFeetAndInches(`${pair[1]}ft`, pair[3] ?? "");
  }
  const quantity = readQuantity(body);
  if ("code" in quantity) return quantity;
  const unit = quantity.value.unit ?? defaultUnit;
  if (quantity.value.fractional && unit !== "in" && unit !== "ft") return { code: "fraction-needs-inches" };
  return { value: quantity.value.value * MM_PER_UNIT[unit] };
}

function readFeetAndInches(feetText: string, inchesText: string): Attempt<number> {
  const feet = readQuantity(feetText);
  if ("code" in feet) return feet;
  const inches = readQuantity(inchesText);
  if ("code" in inches) return inches;
  if (inches.value.unit !== undefined && inches.value.unit !== "in") return { code: "not-a-length" };
  if (!Number.isInteger(feet.value.value) || feet.value.fractional)
    return { code: "part-of-foot-beside-inches" };
  if (inches.value.value >= INCHES_PER_FOOT) return { code: "inches-carry" };
  return { value: (feet.value.value * INCHES_PER_FOOT + inches.value.value) * MM_PER_INCH };
}

function readQuantity(text: string): Attempt<Quantity> {
  const parts = splitFraction(text.trim());
  if (parts === undefined) return { code: "not-a-length" };
  const unit = parts.unit === "" ? undefined : UNIT_WORDS.get(parts.unit);
  if (parts.unit !== "" && unit === undefined) return { code: "unknown-unit" };
  const whole = parts.whole === "" ? { value: 0 } : readNumber(parts.whole);
  if ("code" in whole) return whole;
  if (parts.over === undefined) return { value: { value: whole.value, fractional: false, unit } };
  if (parts.under === 0) return { code: "zero-denominator" };
  const fraction = parts.over / parts.under;
  if (parts.whole !== "" && (fraction >= 1 || !Number.isInteger(whole.value)))
    return { code: "inches-carry" };
  return { value: { value: whole.value + fraction, fractional: true, unit } };
}

interface Parts {
  readonly whole: string;
  readonly over: number | undefined;
  readonly under: number;
  readonly unit: string;
}

const WITH_FRACTION = /^(?:([\d., ]*\d)(?: ?- ?| ))?(\d+) ?\/ ?(\d+) ?("|'|[a-zµ]+\.?)?$/;
const WITHOUT_FRACTION = /^((?:[\d., ]*\d)[.,]?) ?("|'|[a-zµ]+\.?)?$/;

function splitFraction(text: string): Parts | undefined {
  const fraction = WITH_FRACTION.exec(text);
  if (fraction !== null) {
    return {
      whole: fraction[1] ?? "",
      over: Number(fraction[2]),
      under: Number(fraction[3]),
      unit: fraction[4] ?? "",
    };
  }
  const plain = WITHOUT_FRACTION.exec(text);
  return plain === null
    ? undefined
    : { whole: plain[1] ?? "", over: undefined, under: 1, unit: plain[2] ?? "" };
}

function readNumber(text: string): Attempt<number> {
  if ((text.match(/[.,]/g) ?? []).length > 1) return { code: "two-decimal-signs" };
  const [whole = "", decimals = ""] = text.split(/[.,]/);
  if (whole.includes(" ") && !/^\d{1,3}(?: \d{3})+$/.test(whole)) return { code: "digits-not-grouped" };
  if (!/^[\d ]*$/.test(whole) || !/^\d*$/.test(decimals)) return { code: "not-a-length" };
  return { value: Number(`${whole.replaceAll(" ", "") || "0"}.${decimals || "0"}`) };
}
