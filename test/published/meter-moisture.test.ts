/**
 * Readings of resistance meters against the Wood Handbook (FPL-GTR-282), Chapter 13: about half a point of percent is added for each 5.6 °C
 * (10 °F) that the wood is colder than the meter's calibration, and taken off where it is warmer.
 */
import { expect, it } from "vitest";
import { meterMoisture } from "../../src/equations/meter-moisture.ts";

const SEVENTY_F = 21.1;

it.each([
  { woodF: 70, adds: 0 },
  { woodF: 60, adds: 0.5 },
  { woodF: 50, adds: 1 },
  { woodF: 20, adds: 2.5 },
  { woodF: 90, adds: -1 },
])("wood at $woodF °F: $adds points", ({ woodF, adds }) => {
  const woodC = ((woodF - 32) * 5) / 9;
  const percent = meterMoisture({ meterPercent: 14, calibratedC: SEVENTY_F, woodC, speciesPoints: 0 });
  // The handbook says "about": 5.6 °C stand for 10 °F, which are 5.56.
  expect(Math.abs(percent - (14 + adds))).toBeLessThan(0.03);
});

it("adds what the meter's own chart gives for the species", () => {
  const reading = { meterPercent: 14, calibratedC: 21, woodC: 21 };
  expect(meterMoisture({ ...reading, speciesPoints: -1.5 })).toBe(12.5);
});
