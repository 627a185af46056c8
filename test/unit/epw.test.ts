/** A year of weather in the EPW format: read, refused where it is none, and as light on the membrane. */
import { describe, expect, it } from "vitest";
import { readEpw } from "../../src/project/weather/epw.ts";
import { bareWall, throughSlot } from "../../src/proof/light/behind-slot.ts";
import { clearYear } from "../../src/proof/light/clear-year.ts";
import { NO_SHADE } from "../../src/proof/light/model.ts";
import { placeSun } from "../../src/proof/light/sun-memo.ts";
import { weatherYear } from "../../src/proof/light/weather-year.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { clearEpw, hourOf, SITE } from "../helpers/epw.ts";

const EPW = clearEpw();

function faultOf(text: string): string {
  const read = readEpw(text);
  return read.ok ? "read" : say(read.fault, ENGLISH_MM);
}

describe("reading", () => {
  it("takes the place, the zone and 8760 hours, each from its start", () => {
    const read = readEpw(EPW);
    if (!read.ok) throw new Error("not read");
    const { place, latitudeDeg, longitudeDeg, zoneHours, hours } = read.weather;
    expect({ place, latitudeDeg, longitudeDeg, zoneHours }).toEqual({
      place: "Quebec",
      latitudeDeg: 46.8,
      longitudeDeg: -71.4,
      zoneHours: -5,
    });
    expect(hours).toHaveLength(8760);
    expect(hours[0]).toMatchObject({ month: 0, dayOfYear: 0, hour: 0, beam: 0 });
    expect(hours.at(-1)).toMatchObject({ month: 11, dayOfYear: 364, hour: 23 });
    const noon = hours[171 * 24 + 12];
    expect(noon?.level).toBeCloseTo(hourOf(171, 13)[0], 1);
    expect(noon?.beam).toBeCloseTo(hourOf(171, 13)[1], 1);
    expect(noon?.sky).toBeCloseTo(hourOf(171, 13)[2], 1);
  });

  it("leaves out 29 February, and reads a mark of byte order and bare line ends", () => {
    const leap = EPW.split("\r\n");
    const february = leap.filter((line) => line.startsWith("2025,2,28,"));
    leap.splice(8 + 59 * 24, 0, ...february.map((line) => line.replace("2025,2,28,", "2024,2,29,")));
    const read = readEpw(`\uFEFF${leap.join("\n")}\n`);
    expect(read.ok && read.weather.hours.length).toBe(8760);
  });

  it.each([
    ["nothing", "", "does not start with LOCATION"],
    ["no zone", EPW.replace(",-5,70.0", ",,70.0"), "lacks latitude, longitude and time zone"],
    ["half a year", EPW.split("\r\n").slice(0, 4000).join("\n"), "it holds 3992 hours and not 8760"],
    [
      "a missing beam",
      clearEpw((cells, line) => (line === 900 ? cells.with(14, "9999") : cells)),
      "line 900 lacks",
    ],
    [
      "an empty cell",
      clearEpw((cells, line) => (line === 900 ? cells.with(13, "") : cells)),
      "line 900 lacks",
    ],
    [
      "less than nothing",
      clearEpw((cells, line) => (line === 900 ? cells.with(15, "-3") : cells)),
      "line 900 lacks",
    ],
    [
      "a thirteenth month",
      clearEpw((cells, line) => (line === 900 ? cells.with(1, "13") : cells)),
      "line 900 has no month",
    ],
    [
      "an hour 0",
      clearEpw((cells, line) => (line === 900 ? cells.with(3, "0") : cells)),
      "line 900 has no month",
    ],
  ])("says what is wrong: %s", (_, text, word) => {
    expect(faultOf(text)).toContain(word);
  });
});

describe("light", () => {
  const read = readEpw(EPW);
  if (!read.ok) throw new Error("not read");
  const weather = weatherYear(read.weather, SITE.air);
  const clear = clearYear(SITE);
  const years = (azimuthDeg: number) =>
    [weather, clear].map((table) => {
      const lit = placeSun(SITE, table).on({ azimuthDeg, across: "level", shade: NO_SHADE });
      return {
        bare: bareWall(lit).uvMJYear,
        slot: throughSlot(lit, { gapMm: 10, thicknessMm: 20, bevelDeg: 0 }).uvMJYear,
      };
    });

  it.each([90, 180, 262, 352])(
    "of a clear year written by the hour is that of the clear year, face %d°",
    (azimuthDeg) => {
      const [hourly, fine] = years(azimuthDeg);
      expect(Math.abs((hourly?.bare ?? 0) / (fine?.bare ?? 1) - 1)).toBeLessThan(0.005);
      expect(Math.abs((hourly?.slot ?? 0) / (fine?.slot ?? 1) - 1)).toBeLessThan(0.01);
    },
  );

  it("keeps all the light that the file tells", () => {
    const told = read.weather.hours.reduce((sum, { sky }) => sum + sky, 0);
    expect(weather.sky.reduce((a, b) => a + b, 0)).toBeCloseTo(told, 3);
  });
});
