/**
 * Events that come again, as RFC 5545 writes them: CRLF after each line, lines folded at 75 octets of UTF-8, text with its commas,
 * semicolons, backslashes and line breaks escaped. Whole days, so that no zone is needed.
 */

export interface CalendarEvent {
  /** Unique in the world; the same event has the same name each time it is written. */
  readonly uid: string;
  /** First day, ISO 8601. */
  readonly day: string;
  /** Comes again each so many months. */
  readonly months: number;
  readonly summary: string;
  readonly description: string;
}

export interface CalendarOptions {
  readonly name: string;
  /** Language of the texts, RFC 5646. */
  readonly language: string;
  /** When this was written: a day, so that the same input gives the same bytes. */
  readonly stamp: string;
}

const OCTETS = 75;
/** A day that every month has. */
const LAST_COMMON_DAY = 28;
/** Before the day. */
const TOLD_DAYS_AHEAD = 14;

export function icalendar(
  events: readonly CalendarEvent[],
  { name, language, stamp }: CalendarOptions,
): string {
  const text = (key: string, value: string): string => `${key};LANGUAGE=${language}:${escaped(value)}`;
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Outerleaf//Upkeep//EN",
    "CALSCALE:GREGORIAN",
    "METHOD:PUBLISH",
    // RFC 7986, 5.1.
    text("NAME", name),
    ...events.flatMap(({ uid, day, months, summary, description }) => [
      "BEGIN:VEVENT",
      `UID:${uid}`,
      `DTSTAMP:${basic(stamp)}T000000Z`,
      `DTSTART;VALUE=DATE:${basic(comesAgain(day, months))}`,
      "DURATION:P1D",
      months % 12 === 0
        ? `RRULE:FREQ=YEARLY;INTERVAL=${months / 12}`
        : `RRULE:FREQ=MONTHLY;INTERVAL=${months}`,
      "TRANSP:TRANSPARENT",
      text("SUMMARY", summary),
      text("DESCRIPTION", description),
      "BEGIN:VALARM",
      "ACTION:DISPLAY",
      `TRIGGER:-P${TOLD_DAYS_AHEAD}D`,
      text("DESCRIPTION", summary),
      "END:VALARM",
      "END:VEVENT",
    ]),
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

function basic(day: string): string {
  return day.replaceAll("-", "");
}

/** The day, or one before it that comes in every turn: a turn without the day would be left out (RFC 5545, 3.3.10). */
function comesAgain(day: string, months: number): string {
  const comesRarely = months % 12 === 0 ? day.endsWith("-02-29") : Number(day.slice(8)) > LAST_COMMON_DAY;
  return comesRarely ? `${day.slice(0, 8)}${LAST_COMMON_DAY}` : day;
}

function escaped(value: string): string {
  return value.replaceAll(/[\\;,]/g, "\\$&").replaceAll(/\r\n|\n|\r/g, "\\n");
}

/** Broken between characters, never within one; a line that goes on begins with a space. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = "";
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character.codePointAt(0) ?? 0);
    if (octets + size > OCTETS) {
      parts.push(part);
      part = " ";
      octets = 1;
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join("\r\n");
}

/** Of a character in UTF-8 (RFC 3629). */
function octetsOf(code: number): number {
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}
