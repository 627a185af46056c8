/** Days as numbers, so that they can be taken from one another without a clock. */

const TIME = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?Z$/;

/**
 * Days since 1970-01-01T00:00Z, with their fraction, of a moment by ISO 8601 in UTC (proleptic Gregorian calendar). Not a number where
 * the text is none.
 */
export function dayOf(time: string): number {
  const parts = TIME.exec(time)
    ?.slice(1)
    .map((part) => Number(part ?? 0));
  if (!parts) return Number.NaN;
  const [year = 0, month = 1, date = 1, hour = 0, minute = 0, second = 0] = parts;
  return daysBefore(year, month) + date - 1 + (hour + (minute + second / 60) / 60) / 24;
}

/** The date of a day, `2026-05-04`. */
export function dateOf(day: number): string {
  const whole = Math.floor(day);
  let year = 1970 + Math.floor(whole / 365.2425);
  while (daysBefore(year + 1, 1) <= whole) year += 1;
  while (daysBefore(year, 1) > whole) year -= 1;
  let month = 12;
  while (daysBefore(year, month) > whole) month -= 1;
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(whole - daysBefore(year, month) + 1)}`;
}

const BEFORE_MONTH: readonly number[] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
/** Of the Gregorian calendar before 1970. */
const BEFORE_1970 = 719_162;

/** Days from 1970-01-01 to the first of a month. */
function daysBefore(year: number, month: number): number {
  const past = year - 1;
  const leaps = Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400);
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const inYear = (BEFORE_MONTH[month - 1] ?? 0) + (isLeap && month > 2 ? 1 : 0);
  return past * 365 + leaps + inYear - BEFORE_1970;
}
