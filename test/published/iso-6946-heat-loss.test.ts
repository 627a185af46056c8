/**
 * ISO 6946. Worked examples 6.B.2 and 6.B.3 of the Scottish technical handbook, annex on the combined method (a timber-framed
 * wall; a block wall with studs before it), as quoted in a public test file: upper limit 3.435, lower limit 3.304 m²K/W, U
 * 0.297 W/m²K; and 3.617, 3.136, 0.30. Ventilated layers as printed in a Spanish code text. Fasteners: F.3.2 of the 2017
 * edition, as coded in two public building-energy tools, with values worked apart; and against anchors of
 * structural steel that the Passive House Institute worked out with a model of the heat flow (protocol volume 35, appendix A,
 * table A1: four of 6 mm a square metre). The table does not print the insulation's conductivity: 0.04 W/mK is taken.
 */
import { describe, expect, it } from "vitest";
import { fastenerCorrection } from "../../src/equations/heat/fastener-correction.ts";
import { layerResistance } from "../../src/equations/heat/layer-resistance.ts";
import { resistanceLower } from "../../src/equations/heat/resistance-lower.ts";
import { resistanceUpper } from "../../src/equations/heat/resistance-upper.ts";
import { transmittance } from "../../src/equations/heat/transmittance.ts";
import { ventilatedResistance } from "../../src/equations/heat/ventilated-resistance.ts";

const INSIDE = 0.13;
const OUTSIDE = 0.04;
/** Of a fastener that passes the whole layer. */
const ANNEX_F = 0.8;
const layer = (thicknessMm: number, conductivityWPerMK: number): number =>
  layerResistance({ thicknessMm, conductivityWPerMK });

/** Insulation and studs of the frame. */
const frame = { mainM2KPerW: layer(140, 0.04), bridgeM2KPerW: layer(140, 0.12), bridgeShare: 0.15 };

describe("6.B.2: brick, cavity, sheathing, 140 mm frame, board", () => {
  const wall = {
    ...frame,
    seriesM2KPerW: INSIDE + layer(102, 0.77) + 0.18 + layer(9, 0.13) + layer(12.5, 0.21) + OUTSIDE,
  };

  it.each([
    ["brick", 102, 0.77, 0.132],
    ["sheathing", 9, 0.13, 0.069],
    ["insulation", 140, 0.04, 3.5],
    ["studs", 140, 0.12, 1.167],
    ["board", 12.5, 0.21, 0.06],
  ])("resistance of the %s", (_, thicknessMm, conductivityWPerMK, printed) => {
    expect(Math.abs(layer(thicknessMm, conductivityWPerMK) - printed)).toBeLessThan(0.0006);
  });

  it("upper limit 3.435 m²K/W", () => {
    expect(resistanceUpper(wall)).toBeCloseTo(3.435, 3);
  });

  it("lower limit 3.304 m²K/W", () => {
    expect(Math.abs(resistanceLower(wall) - 3.304)).toBeLessThan(0.0006);
  });

  it("U 0.297 W/m²K", () => {
    const limits = { upperM2KPerW: resistanceUpper(wall), lowerM2KPerW: resistanceLower(wall) };
    expect(transmittance({ ...limits, addedWPerM2K: 0 })).toBeCloseTo(0.297, 3);
  });
});

describe("6.B.3: brick, cavity, 125 mm blocks in mortar, 89 mm of wool between studs, board", () => {
  const [studs, mortar] = [0.118, 0.067];
  const wool = {
    mainM2KPerW: layer(89, 0.038),
    bridgeM2KPerW: layer(89, 0.13),
    bridgeShare: studs,
  };
  const blocks = { mainM2KPerW: layer(125, 0.11), bridgeM2KPerW: layer(125, 0.88), bridgeShare: mortar };
  const seriesM2KPerW = INSIDE + layer(102, 0.77) + 0.18 + layer(12.5, 0.21) + OUTSIDE;
  // Two bridged layers: the paths through the one, each shared out by the other.
  const past = (resistance: number): number =>
    resistanceUpper({ ...wool, seriesM2KPerW: seriesM2KPerW + resistance });
  const upper = 1 / ((1 - mortar) / past(blocks.mainM2KPerW) + mortar / past(blocks.bridgeM2KPerW));
  const lower = resistanceLower({
    ...wool,
    seriesM2KPerW: resistanceLower({ ...blocks, seriesM2KPerW }),
  });

  // The example adds resistances that it prints to thousandths.
  it("upper limit 3.617 m²K/W", () => {
    expect(Math.abs(upper - 3.617)).toBeLessThan(0.0015);
  });

  it("lower limit 3.136 m²K/W", () => {
    expect(Math.abs(lower - 3.136)).toBeLessThan(0.0015);
  });

  it("U 0.30 W/m²K", () => {
    expect(transmittance({ upperM2KPerW: upper, lowerM2KPerW: lower, addedWPerM2K: 0 })).toBeCloseTo(0.3, 2);
  });
});

describe("air layers open to outside (mm² per metre)", () => {
  const wall = { stillUpToMm2PerM: 500, openFromMm2PerM: 1500, stillM2KPerW: 3, openM2KPerW: 2.6 };
  it.each([
    [0, 3],
    [500, 3],
    [750, 2.9],
    [1000, 2.8],
    [1250, 2.7],
    [1500, 2.6],
    [20_000, 2.6],
  ])("%d", (openingMm2PerM, expected) => {
    expect(ventilatedResistance({ ...wall, openingMm2PerM })).toBeCloseTo(expected, 9);
  });
});

describe("the same studs with 80 mm of wool outside and a ventilated cladding (worked apart)", () => {
  const outsideWool = layer(80, 0.036);
  const series = INSIDE + layer(9, 0.13) + layer(12.5, 0.21) + INSIDE;
  const bare = { ...frame, seriesM2KPerW: series + outsideWool };
  const whole = (resistanceUpper(bare) + resistanceLower(bare)) / 2;

  it("U 0.1836 W/m²K without fasteners", () => {
    expect(1 / whole).toBeCloseTo(0.1836, 4);
  });

  it.each([
    ["carbon steel", 50, 0.0083],
    ["stainless", 17, 0.0028],
  ])("%s screws, 4.5 mm core, at 400 by 400 mm", (_, conductivityWPerMK, printed) => {
    const added = fastenerCorrection({
      factor: ANNEX_F,
      conductivityWPerMK,
      coreMm2: 15.9,
      perM2: 6.25,
      insulationMm: 80,
      depthMm: 80,
      insulationM2KPerW: outsideWool,
      wholeM2KPerW: whole,
    });
    expect(added).toBeCloseTo(printed, 4);
  });

  it("a recessed fastener: the factor falls as its length does, and the length divides", () => {
    const screw = {
      factor: ANNEX_F,
      conductivityWPerMK: 50,
      coreMm2: 15.9,
      perM2: 6.25,
      insulationMm: 80,
      insulationM2KPerW: outsideWool,
      wholeM2KPerW: whole,
    };
    const full = fastenerCorrection({ ...screw, depthMm: 80 });
    // 0.8·d_1/d_0 · λ·A·n/d_1 · (R_1/R_T)², with half of the layer passed: a quarter by the resistance alone.
    const half = { ...screw, depthMm: 40, insulationM2KPerW: outsideWool / 2 };
    expect(fastenerCorrection(half)).toBeCloseTo(full / 4, 12);
    // Askew through all of it: the longer way conducts less.
    expect(fastenerCorrection({ ...screw, depthMm: 100 })).toBeCloseTo(full * 0.8, 12);
  });
});

describe("38 mm timber straps at 600 mm through those 80 mm of wool, studs as before (worked apart)", () => {
  it("raise U from 0.1836 to 0.1911 W/m²K by the limits of both layers together", () => {
    const stud = 0.15;
    const strap = 38 / 600;
    const wool = { main: layer(80, 0.036), bridge: layer(80, 0.12) };
    const series = INSIDE + layer(9, 0.13) + layer(12.5, 0.21) + INSIDE;
    // Straps and studs cross at random: the four paths by their shares.
    const paths = [
      [(1 - stud) * (1 - strap), frame.mainM2KPerW + wool.main],
      [(1 - stud) * strap, frame.mainM2KPerW + wool.bridge],
      [stud * (1 - strap), frame.bridgeM2KPerW + wool.main],
      [stud * strap, frame.bridgeM2KPerW + wool.bridge],
    ] as const;
    const upperM2KPerW =
      1 / paths.reduce((sum, [share, resistance]) => sum + share / (series + resistance), 0);
    const strapped = resistanceLower({
      seriesM2KPerW: series,
      mainM2KPerW: wool.main,
      bridgeM2KPerW: wool.bridge,
      bridgeShare: strap,
    });
    const lowerM2KPerW = resistanceLower({ ...frame, seriesM2KPerW: strapped });
    expect(transmittance({ upperM2KPerW, lowerM2KPerW, addedWPerM2K: 0 })).toBeCloseTo(0.1911, 3);
  });
});

describe("four steel anchors of 6 mm a square metre, worked out with a model of the heat flow", () => {
  it.each([
    ["masonry", 300, 0.127, 0.0035, 0.141],
    ["masonry", 250, 0.151, 0.004, 0.167],
    ["reinforced concrete", 300, 0.129, 0.0037, 0.143],
    ["reinforced concrete", 250, 0.153, 0.0042, 0.17],
  ])("%s, %d mm: U %d, each anchor %d W/K, together %d", (_, insulationMm, plain, each, together) => {
    const added = fastenerCorrection({
      factor: ANNEX_F,
      conductivityWPerMK: 50,
      coreMm2: Math.PI * 3 ** 2,
      perM2: 4,
      insulationMm,
      depthMm: insulationMm,
      insulationM2KPerW: layer(insulationMm, 0.04),
      wholeM2KPerW: 1 / plain,
    });
    expect(Math.abs(added / (4 * each) - 1)).toBeLessThan(0.05);
    expect(Math.abs(plain + added - together)).toBeLessThan(0.0005);
  });
});
