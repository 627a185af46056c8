/**
 * The upkeep calendar against RFC 5545 (line ends and folding: 3.1; text: 3.3.11; all-day events: 3.6.1; recurrence: 3.3.10), read
 * by another library.
 */
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { type CalendarEvent, icalendar } from "../../src/output/calendar/icalendar.ts";

const OPTIONS = { name: "Entretien, à l’est; « ici »", language: "fr", stamp: "2027-09-30" };

const event = (more: Partial<CalendarEvent> = {}): CalendarEvent => ({
  uid: "house-look@outerleaf.invalid",
  day: "2028-09-30",
  months: 12,
  summary: "Look over",
  description: "One line",
  ...more,
});

function read(text: string): ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  expect(calendar.getFirstPropertyValue("version")).toBe("2.0");
  return calendar.getAllSubcomponents("vevent").map((one) => new ICAL.Event(one));
}

function days(from: ICAL.Event, count: number): string[] {
  const iterator = from.iterator();
  return Array.from({ length: count }, () => iterator.next().toString());
}

describe("a calendar", () => {
  it("ends every line with CRLF and none is longer than 75 octets, nor broken within a character", () => {
    const long = `${"é".repeat(200)}🌲${"abc,;\\".repeat(40)}`;
    const text = icalendar([event({ summary: long, description: `${long}\n${long}` })], OPTIONS);
    const lines = text.split("\r\n");
    expect(lines.pop()).toBe("");
    for (const line of lines) {
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\r\n\ufffd]/);
    }
    const [one] = read(text);
    expect(one?.summary).toBe(long);
    expect(one?.description).toBe(`${long}\n${long}`);
  });

  it("has whole days that come again each so many months", () => {
    const [yearly, monthly] = read(
      icalendar([event(), event({ uid: "b@outerleaf.invalid", day: "2027-01-15", months: 29 })], OPTIONS),
    );
    expect(yearly?.startDate.isDate).toBe(true);
    expect(yearly && days(yearly, 3)).toEqual(["2028-09-30", "2029-09-30", "2030-09-30"]);
    expect(monthly && days(monthly, 3)).toEqual(["2027-01-15", "2029-06-15", "2031-11-15"]);
    expect(yearly?.endDate.toString()).toBe("2028-10-01");
  });

  it("misses no year, though its day is one that not every month has", () => {
    const leap = read(icalendar([event({ day: "2028-02-29" })], OPTIONS))[0];
    expect(leap && days(leap, 3)).toEqual(["2028-02-28", "2029-02-28", "2030-02-28"]);
    const last = read(icalendar([event({ day: "2028-01-31", months: 1 })], OPTIONS))[0];
    expect(last && days(last, 3)).toEqual(["2028-01-28", "2028-02-28", "2028-03-28"]);
  });

  it("tells each event two weeks ahead, and names each as before when written again", () => {
    const text = icalendar([event()], OPTIONS);
    expect(text).toBe(icalendar([event()], OPTIONS));
    const alarm = new ICAL.Component(ICAL.parse(text))
      .getFirstSubcomponent("vevent")
      ?.getFirstSubcomponent("valarm");
    expect(alarm?.getFirstPropertyValue("trigger")?.toString()).toBe("-P14D");
    expect(alarm?.getFirstPropertyValue("action")).toBe("DISPLAY");
  });
});
