/** Days of the calendar as ISO 8601 writes them, `2027-06-01`, with no clock and no zone. */

/** A day so many months later; the last of its month where that is shorter (31 January and a month: 28 February). */
export function monthsLater(day: string, months: number): string {
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  const index = year * 12 + month - 1 + months;
  const [laterYear, laterMonth] = [Math.floor(index / 12), index % 12];
  const last = new Date(Date.UTC(laterYear, laterMonth + 1, 0)).getUTCDate();
  return iso(laterYear, laterMonth + 1, Math.min(date, last));
}

function iso(year: number, month: number, date: number): string {
  return [String(year).padStart(4, "0"), pad(month), pad(date)].join("-");
}

function pad(value: number): string {
  return String(value).padStart(2, "0");
}
