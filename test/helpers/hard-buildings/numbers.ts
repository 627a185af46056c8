/** Arbitrary lengths, and lengths written in inches as a builder in feet and inches writes them. */
import fc from "fast-check";
import { printLength } from "../../../src/units/feet-inch.ts";

/** Whole steps of millimetres between two lengths. */
export const millimetres = (min: number, max: number, step = 1): fc.Arbitrary<number> =>
  fc.integer({ min: Math.ceil(min / step), max: Math.floor(max / step) }).map((n) => n * step);

/** A share of a length, by hundredths. */
export const share = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min, max }).map((n) => n / 100);

/** Every length in a part of a file as text to the nearest 1/16 inch; numbers that are no lengths are not given to it. */
export function inInches<T>(value: T): T {
  if (typeof value === "number") {
    return printLength(value, { display: "feet-inch", denominator: 16 }) as T;
  }
  if (Array.isArray(value)) return value.map(inInches) as T;
  if (typeof value === "object" && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, inInches(one)])) as T;
  }
  return value;
}

/** A length to the nearest sixteenth of an inch (mm). */
export const toSixteenth = (mm: number): number => (Math.round((mm / 25.4) * 16) / 16) * 25.4;
