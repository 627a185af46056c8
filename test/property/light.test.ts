/**
 * Light behind slots against plain quadrature that shares only the sun's place and the clear sky with it: every minute of
 * every day for the beam, each told in four parts, and every angle for sky and ground. And what must hold of any slot.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clearSky } from "../../src/equations/light/clear-sky.ts";
import { extraterrestrialBeam } from "../../src/equations/light/extraterrestrial-beam.ts";
import { slotCutOff } from "../../src/equations/light/slot-cut-off.ts";
import { slotExchange } from "../../src/equations/light/slot-exchange.ts";
import { openWindowShare, slotWindowShare } from "../../src/equations/light/slot-window-share.ts";
import { type SunDirection, sunDirection } from "../../src/equations/light/sun-direction.ts";
import {
  atPoint,
  bareWall,
  brightest,
  type Lit,
  type SlotBefore,
  throughSlot,
} from "../../src/proof/light/behind-slot.ts";
import { clearYear } from "../../src/proof/light/clear-year.ts";
import type { Across } from "../../src/proof/light/face-sun.ts";
import { gapsUnder } from "../../src/proof/light/keep-under.ts";
import { type LightSite, NO_SHADE, type Shade } from "../../src/proof/light/model.ts";
import { placeSun } from "../../src/proof/light/sun-memo.ts";

const SITE: LightSite = {
  latitudeDeg: 46.8,
  longitudeDeg: -71.4,
  air: { pressureMbar: 1013.25, ozoneCm: 0.3, waterCm: 1.5, haze380: 0.15, haze500: 0.1, forwardShare: 0.85 },
  solarConstantWPerM2: 1367,
  groundShare: [0.7, 0.7, 0.7, 0.7, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.7, 0.7],
  groundUvShare: [0.88, 0.88, 0.88, 0.88, 0.05, 0.05, 0.05, 0.05, 0.05, 0.05, 0.88, 0.88],
  beamUvShare: 0.0339,
  skyUvShare: 0.138,
};
const TABLE = clearYear(SITE);

function lit(azimuthDeg: number, across: Across, shade: Shade = NO_SHADE): Lit {
  return placeSun(SITE, TABLE).on({ azimuthDeg, across, shade });
}

interface Case {
  readonly azimuthDeg: number;
  readonly across: Across;
  readonly slot: SlotBefore;
}

const slot = (gapMm: number, thicknessMm: number, bevelDeg: number): SlotBefore => ({
  gapMm,
  thicknessMm,
  bevelDeg,
  cavityMm: 30,
  everyMm: 3000,
});

const CASES: readonly Case[] = [
  { azimuthDeg: 172, across: "level", slot: slot(11, 20, 15) },
  { azimuthDeg: 262, across: "level", slot: slot(10, 20, 0) },
  { azimuthDeg: 172, across: "level", slot: slot(8, 8, 0) },
  { azimuthDeg: 352, across: "level", slot: slot(20, 20, 0) },
  { azimuthDeg: 180, across: "upright", slot: slot(10, 20, 0) },
  { azimuthDeg: 90, across: "upright", slot: slot(10, 20, 0) },
  { azimuthDeg: 128, across: "level", slot: slot(6, 20, 30) },
  { azimuthDeg: 262, across: "level", slot: { ...slot(5, 10, 0), cavityMm: 60 } },
];

const MONTH_ENDS = [31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];
const STEPS_A_DAY = 1440;
/** Where within a minute a slot is looked at, so that its edges are not met by whole minutes only. */
const PARTS = [-0.375, -0.125, 0.125, 0.375];

interface Moment {
  readonly east: number;
  readonly north: number;
  readonly up: number;
  /** What the sun's direction changes by in a minute. */
  readonly turn: SunDirection;
  /** Ultraviolet of the beam across itself, and on level ground from the sky and back from the ground (W/m²). */
  readonly beam: number;
  readonly sky: number;
  readonly ground: number;
}

function momentsOfTheYear(): Moment[] {
  const moments: Moment[] = [];
  for (let day = 0; day < 365; day++) {
    const month = MONTH_ENDS.findIndex((end) => day < end);
    for (let k = 0; k < STEPS_A_DAY; k++) {
      // Each day at other minutes, so that none is left out all the year.
      const part = (k + ((0.618034 * day) % 1)) / STEPS_A_DAY;
      const daysFromJ2000 = 9131.5 + day + part - SITE.longitudeDeg / 360;
      const sun = sunDirection({ ...SITE, daysFromJ2000 });
      if (sun.up <= 0) continue;
      const soon = sunDirection({ ...SITE, daysFromJ2000: daysFromJ2000 + 1 / STEPS_A_DAY });
      const light = clearSky({
        ...SITE.air,
        zenithDeg: (Math.acos(sun.up) * 180) / Math.PI,
        outsideWPerM2: extraterrestrialBeam({
          dayOfYear: day + 1,
          solarConstantWPerM2: SITE.solarConstantWPerM2,
        }),
        groundShare: SITE.groundShare[month] ?? 0,
      });
      const sky = SITE.skyUvShare * light.sky;
      const level = SITE.beamUvShare * (light.level - light.sky) + sky;
      moments.push({
        ...sun,
        turn: { east: soon.east - sun.east, north: soon.north - sun.north, up: soon.up - sun.up },
        beam: SITE.beamUvShare * light.beam,
        sky,
        ground: (SITE.groundUvShare[month] ?? 0) * level,
      });
    }
  }
  return moments;
}

const MOMENTS = momentsOfTheYear();

/** Share of a beam of a tangent that a slot lets through, and whether a point of the membrane sees along it. */
interface Behind {
  readonly slot: (q: number) => number;
  readonly point: (q: number) => number;
}

function behind({ gapMm, thicknessMm, bevelDeg, cavityMm }: SlotBefore, at: number): Behind {
  const rise = thicknessMm * Math.tan((bevelDeg * Math.PI) / 180);
  return {
    slot: (q) => {
      const low = Math.max(-thicknessMm * q, rise);
      const high = Math.min(gapMm - thicknessMm * q, gapMm + rise);
      return Math.max(0, high - low) / gapMm;
    },
    point: (q) => {
      const front = at + q * (cavityMm + thicknessMm);
      const back = at + q * cavityMm;
      return front >= 0 && front <= gapMm && back >= rise && back <= rise + gapMm ? 1 : 0;
    },
  };
}

/** Sky and ground through a function of the tangent, by angles of a half turn. */
function even(across: Across, through: (q: number) => number): { sky: number; ground: number } {
  const steps = 200_000;
  let [up, down] = [0, 0];
  for (let i = 0; i < steps; i++) {
    const angle = Math.PI * ((i + 0.5) / steps - 0.5);
    const part = ((through(Math.tan(angle)) * Math.cos(angle)) / 2) * (Math.PI / steps);
    if (angle > 0) up += part;
    else down += part;
  }
  const half = (up + down) / 2;
  return across === "level" ? { sky: up, ground: down } : { sky: half, ground: half };
}

function quadrature({ azimuthDeg, across }: Case, through: (q: number) => number): number {
  const east = Math.sin((azimuthDeg * Math.PI) / 180);
  const north = Math.cos((azimuthDeg * Math.PI) / 180);
  const shares = even(across, through);
  let sum = 0;
  for (const moment of MOMENTS) {
    const front = moment.east * east + moment.north * north;
    const right = moment.north * east - moment.east * north;
    const { turn } = moment;
    const passed = PARTS.map((part) => {
      const out = front + part * (turn.east * east + turn.north * north);
      const over =
        across === "level"
          ? moment.up + part * turn.up
          : right + part * (turn.north * east - turn.east * north);
      return out > 0 ? through(over / out) : 0;
    });
    const beam = front > 0 ? (moment.beam * front * passed.reduce((a, b) => a + b, 0)) / PARTS.length : 0;
    sum += beam + shares.sky * moment.sky + shares.ground * moment.ground;
  }
  return sum * (24 / STEPS_A_DAY) * 0.0036;
}

describe.each(CASES)("$across $slot.gapMm/$slot.thicknessMm at $slot.bevelDeg°, face $azimuthDeg°", (one) => {
  const light = lit(one.azimuthDeg, one.across);

  it("the bare wall within 0.1 % of plain quadrature", () => {
    expect(Math.abs(bareWall(light).uvMJYear / quadrature(one, () => 1) - 1)).toBeLessThan(0.001);
  });

  it("the average behind it within 0.1 % of plain quadrature", () => {
    const plain = quadrature(one, behind(one.slot, 0).slot);
    expect(Math.abs(throughSlot(light, one.slot).uvMJYear / plain - 1)).toBeLessThan(0.001);
  });

  it("the brightest point within 0.1 % of plain quadrature, and none brighter", () => {
    const { at, year } = brightest(light, one.slot);
    expect(Math.abs(year.uvMJYear / quadrature(one, behind(one.slot, at).point) - 1)).toBeLessThan(0.001);
    for (let place = -40; place <= 60; place += 0.37) {
      expect(atPoint(light, one.slot, place).uvMJYear).toBeLessThanOrEqual(year.uvMJYear * 1.001);
    }
  });

  it("what passes the slot lands on the membrane, neither more nor less", () => {
    const step = 0.25;
    let landed = 0;
    for (let place = -900; place < 900; place += step)
      landed += atPoint(light, one.slot, place).uvMJYear * step;
    const passed = throughSlot(light, one.slot).uvMJYear * one.slot.gapMm;
    expect(Math.abs(landed / passed - 1)).toBeLessThan(0.005);
  });
});

const slots = fc.record({
  gapMm: fc.double({ min: 3, max: 40, noNaN: true }),
  thicknessMm: fc.double({ min: 6, max: 40, noNaN: true }),
  bevelDeg: fc.double({ min: 0, max: 45, noNaN: true }),
  cavityMm: fc.double({ min: 0, max: 80, noNaN: true }),
  everyMm: fc.double({ min: 100, max: 300, noNaN: true }),
});
const azimuths = fc.integer({ min: 0, max: 359 });
const directions = fc.constantFrom<Across>("level", "upright");

describe("any slot", () => {
  it("a wider gap lets more through and has a brighter brightest point, which the average never passes", () => {
    fc.assert(
      fc.property(slots, azimuths, directions, (given, azimuthDeg, across) => {
        const light = lit(azimuthDeg, across);
        const wider = { ...given, gapMm: given.gapMm * 1.2, everyMm: given.everyMm + given.gapMm * 0.2 };
        const [narrow, wide] = [given, wider].map((one) => ({
          through: throughSlot(light, one).uvMJYear * one.gapMm,
          most: brightest(light, one).year.uvMJYear,
        }));
        if (!narrow || !wide) throw new Error("two slots");
        expect(wide.through).toBeGreaterThanOrEqual(narrow.through);
        expect(wide.most).toBeGreaterThanOrEqual(narrow.most * 0.999);
        expect(narrow.most * 1.001).toBeGreaterThanOrEqual(narrow.through / given.everyMm);
        expect(narrow.most).toBeLessThanOrEqual(bareWall(light).uvMJYear * 1.001);
      }),
      { numRuns: 40 },
    );
  });

  it("months add up to the year, and beam, sky and ground to the whole", () => {
    fc.assert(
      fc.property(slots, azimuths, directions, (given, azimuthDeg, across) => {
        const { uvMJ, uvMJYear, uvParts } = brightest(lit(azimuthDeg, across), given).year;
        expect(uvMJ).toHaveLength(12);
        expect(uvMJ.reduce((a, b) => a + b, 0)).toBeCloseTo(uvMJYear, 9);
        expect(uvParts.beam + uvParts.sky + uvParts.ground).toBeCloseTo(uvMJYear, 6);
      }),
      { numRuns: 40 },
    );
  });

  it("with a cut-off under level neither sun nor sky gets in from above", () => {
    fc.assert(
      fc.property(slots, azimuths, (given, azimuthDeg) => {
        fc.pre(slotCutOff(given) < -0.5);
        const { uvParts } = throughSlot(lit(azimuthDeg, "level"), given);
        expect(uvParts.beam).toBeLessThan(1e-6);
        expect(uvParts.sky).toBe(0);
        expect(uvParts.ground).toBeGreaterThan(0);
      }),
      { numRuns: 40 },
    );
  });

  it("eaves and side walls only take light away, and far ones take none", () => {
    fc.assert(
      fc.property(
        slots,
        azimuths,
        directions,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (given, azimuthDeg, across, near) => {
          const open = throughSlot(lit(azimuthDeg, across), given).uvMJYear;
          const shaded = throughSlot(
            lit(azimuthDeg, across, { up: near, left: near, right: 2 * near }),
            given,
          ).uvMJYear;
          const far = throughSlot(
            lit(azimuthDeg, across, { up: 1e4, left: 1e4, right: 1e4 }),
            given,
          ).uvMJYear;
          expect(shaded).toBeLessThanOrEqual(open * 1.0001);
          expect(Math.abs(far / open - 1)).toBeLessThan(0.002);
        },
      ),
      { numRuns: 30 },
    );
  });

  it("a window of all directions gives the crossed strings, an open one everything", () => {
    fc.assert(
      fc.property(slots, (given) => {
        const all = { acrossFrom: -1e4, acrossTo: 1e4, alongFrom: -Infinity, alongTo: Infinity };
        expect(slotWindowShare({ ...given, ...all })).toBeCloseTo(slotExchange(given), 4);
      }),
    );
    expect(
      openWindowShare({ acrossFrom: -8, acrossTo: 8, alongFrom: -Infinity, alongTo: Infinity }),
    ).toBeCloseTo(Math.sin(Math.atan(8)), 5);
  });
});

describe("which gap and bevel keep a dose", () => {
  it("the widest gap keeps it and 0.1 mm more does not", () => {
    const light = lit(172, "level");
    const found = gapsUnder(light, slot(12, 20, 0), { mostMJ: 15, gaps: [2, 30], bevelsDeg: [0, 15, 30] });
    expect(found.map(({ widestMm }) => widestMm !== undefined)).toEqual([true, true, true]);
    for (const { bevelDeg, widestMm = 0 } of found) {
      const dose = (gapMm: number): number =>
        brightest(light, { ...slot(gapMm, 20, bevelDeg), everyMm: 2988 + gapMm }).year.uvMJYear;
      expect(dose(widestMm)).toBeLessThanOrEqual(15);
      expect(dose(widestMm + 0.1)).toBeGreaterThan(15);
    }
  });

  it("says so where even the least gap gives more", () => {
    expect(
      gapsUnder(lit(172, "level"), slot(12, 8, 0), { mostMJ: 0.5, gaps: [5, 20], bevelsDeg: [0] }),
    ).toEqual([{ bevelDeg: 0, widestMm: undefined }]);
  });
});
