/**
 * Even light through slots. Hottel's crossed strings for two equal opposite strips (C-1 of Howell's catalogue):
 * √(1 + (h/w)²) − h/w; the unit square √2 − 1 is printed in the test data of an open library of heat transfer. Slots with
 * a bevel: values worked by plane quadrature and by a two-million-ray run that agreed to 4e-4.
 */
import { describe, expect, it } from "vitest";
import { slotBeamShare } from "../../src/equations/light/slot-beam-share.ts";
import { slotCutOff } from "../../src/equations/light/slot-cut-off.ts";
import { slotExchange } from "../../src/equations/light/slot-exchange.ts";
import { slotGroundShare } from "../../src/equations/light/slot-ground-share.ts";
import { slotSkyShare } from "../../src/equations/light/slot-sky-share.ts";
import { slotWindowShare } from "../../src/equations/light/slot-window-share.ts";
import { viewShare } from "../../src/equations/light/view-share.ts";

describe("two equal opposite strips, Howell C-1", () => {
  it.each([
    [1, Math.SQRT2 - 1],
    [0.5, Math.sqrt(1.25) - 0.5],
    [2, Math.sqrt(5) - 2],
    [0.1, Math.sqrt(1.01) - 0.1],
  ])("distance over width %d", (ratio, expected) => {
    expect(slotExchange({ gapMm: 10, thicknessMm: 10 * ratio, bevelDeg: 0 })).toBeCloseTo(expected, 12);
  });
});

describe.each([
  // gap, thickness, bevel, exchange, sky, ground, cut-off
  [10, 20, 0, 0.23607, 0.11803, 0.11803, 26.6],
  [10, 20, 15, 0.21687, 0.02657, 0.1903, 13.1],
  [10, 20, 30, 0.16351, 0, 0.16351, -4.4],
  [10, 22, 45, 0.08338, 0, 0.08338, -28.6],
  [50, 25, 0, 0.61803, 0.30902, 0.30902, 63.4],
])("slot %d/%d mm at %d°", (gapMm, thicknessMm, bevelDeg, exchange, sky, ground, cutOff) => {
  const slot = { gapMm, thicknessMm, bevelDeg };

  it("exchange and its halves", () => {
    expect(slotExchange(slot)).toBeCloseTo(exchange, 5);
    expect(Math.abs(slotSkyShare({ ...slot, skyToDeg: 90 }) - sky)).toBeLessThan(1e-5);
    expect(Math.abs(slotGroundShare(slot) - ground)).toBeLessThan(1e-5);
  });

  it("cut-off angle, at which the beam just ends", () => {
    expect(slotCutOff(slot)).toBeCloseTo(cutOff, 1);
    expect(slotBeamShare({ ...slot, profileDeg: slotCutOff(slot) + 0.01 })).toBe(0);
    expect(slotBeamShare({ ...slot, profileDeg: slotCutOff(slot) - 0.01 })).toBeGreaterThan(0);
  });

  it("the window of all directions is the whole exchange, and its upper half the sky's", () => {
    const all = { acrossTo: Infinity, alongFrom: -Infinity, alongTo: Infinity };
    expect(slotWindowShare({ ...slot, ...all, acrossFrom: -Infinity })).toBeCloseTo(exchange, 4);
    expect(Math.abs(slotWindowShare({ ...slot, ...all, acrossFrom: 0 }) - sky)).toBeLessThan(1e-4);
  });
});

it("seen from a point, an open half is a half", () => {
  expect(viewShare({ fromDeg: 0, toDeg: 90 })).toBeCloseTo(0.5, 12);
  expect(viewShare({ fromDeg: -90, toDeg: 90 })).toBeCloseTo(1, 12);
});
