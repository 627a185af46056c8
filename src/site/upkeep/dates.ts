/** Days of the calendar as ISO 8601 writes them, `2027-06-01`, with no clock and no zone. */

/** A day so many months later; the last of its month where that is shorter (31 January and a month: 28 February). */
export function monthsLater(day: string, months: number): string {
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  const index = year * MONTHS + month - 1 + months;
  const [laterYear, laterMonth] = [Math.floor(index / MONTHS), (index % MONTHS) + 1];
  const last = daysOf(laterYear, laterMonth);
  return [String(laterYear).padStart(4, "0"), pad(laterMonth), pad(Math.min(date, last))].join("-");
}

const MONTHS = 12;
const SHORT: readonly number[] = [4, 6, 9, 11];

/** @param month 1 is January */
function daysOf(year: number, month: number): number {
  if (month === 2) return isLeap(year) ? 29 : 28;
  return SHORT.includes(month) ? 30 : 31;
}

/** In the Gregorian calendar, which ISO 8601 keeps to. */
function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

function pad(value: number): string {
  return String(value).padStart(2, "0");
}
