/** A year of light behind a row of like slots: through the slot, and at each point of the membrane. */
import { type Slot, slope } from "../../equations/light/slot.ts";
import { type FaceSun, YEAR } from "./face-sun.ts";
import type { LightSite, YearOfLight } from "./model.ts";
import { pointShares, slotShares, wallShares } from "./shares.ts";
import type { SunTable } from "./sun-table.ts";
import { sum, ultraviolet, yearOfLight } from "./year-of-light.ts";

/** A slot before the membrane. */
export interface SlotBefore extends Slot {
  /** From the back of the boards to the membrane (mm). */
  readonly cavityMm: number;
  /** From one slot to the next like it, middle to middle (mm). */
  readonly everyMm: number;
}

/** Whose light: the place, its year of sun, and the face's share of it. */
export interface Lit {
  readonly site: LightSite;
  readonly table: SunTable;
  readonly sun: FaceSun;
  /** Tells faces of one place apart. */
  readonly key: string;
}

const MONTHS = Array.from({ length: 12 }, (_, month) => month);

export function bareWall(lit: Lit): YearOfLight {
  const beam = MONTHS.map((month) => lit.sun.under(Infinity, month));
  return yearOfLight(lit, { beam, shares: wallShares(lit.sun) });
}

/** What comes out at the back, per area of slot. On the whole membrane it is thinned by gap over module. */
export function throughSlot(lit: Lit, slot: Slot): YearOfLight {
  const ratio = slot.thicknessMm / slot.gapMm;
  const middle = -slope(slot);
  // The share let through falls evenly from 1 at the middle to 0 on both sides: a second difference of running integrals.
  const beam = MONTHS.map((month) => {
    const at = (q: number): number => lit.sun.underSum(q, month);
    return Math.max(0, ratio * (at(middle + 1 / ratio) - 2 * at(middle) + at(middle - 1 / ratio)));
  });
  return yearOfLight(lit, { beam, shares: slotShares(slot, lit.sun) });
}

/** The tangents between which a point sees out through one slot; the first is greater where it sees nothing. */
function windowOf(slot: SlotBefore, at: number): readonly [low: number, high: number] {
  const rise = slot.thicknessMm * slope(slot);
  const back = Math.max(slot.cavityMm, SHALLOWEST);
  const front = back + slot.thicknessMm;
  return [
    Math.max(-at / front, (rise - at) / back),
    Math.min((slot.gapMm - at) / front, (rise + slot.gapMm - at) / back),
  ];
}

/** Stands in for a membrane that touches the boards (mm). */
const SHALLOWEST = 0.01;

/** A year at a point, told from the slot's lower (or left) edge at the outer face; neighbouring slots are seen too. */
export function atPoint(lit: Lit, slot: SlotBefore, at: number): YearOfLight {
  const windows = windowsOf(slot, at);
  const beam = MONTHS.map((month) => sum(windows.map((window) => beamBetween(lit.sun, window, month))));
  const shares = windows.map((window) => pointShares(window, lit.sun));
  return yearOfLight(lit, {
    beam,
    shares: { sky: sum(shares.map(({ sky }) => sky)), ground: sum(shares.map(({ ground }) => ground)) },
  });
}

function beamBetween(sun: FaceSun, [low, high]: readonly [number, number], month: number): number {
  return Math.max(0, sun.under(high, month) - sun.under(low, month));
}

/** Of every slot of the row, the window that a point sees out through. */
function windowsOf(slot: SlotBefore, at: number): (readonly [number, number])[] {
  const [lowest, highest] = reach(slot);
  const windows: (readonly [number, number])[] = [];
  const last = Math.floor((at - lowest) / slot.everyMm);
  for (let k = Math.ceil((at - highest) / slot.everyMm); k <= last; k++) {
    const window = windowOf(slot, at - k * slot.everyMm);
    if (window[0] < window[1]) windows.push(window);
  }
  return windows;
}

export interface Brightest {
  /** Place on the membrane (mm) from the slot's lower (or left) edge at the outer face. */
  readonly at: number;
  readonly year: YearOfLight;
}

const SCAN = 160;
const REFINE = 24;

/** The point of the membrane that takes most ultraviolet in a year. */
export function brightest(lit: Lit, slot: SlotBefore): Brightest {
  const uvAt = uvOfPoint(lit, slot);
  const [from, to] = reach(slot);
  const step = (to - from) / SCAN;
  let best = from;
  let most = -1;
  for (let i = 0; i <= SCAN; i++) {
    const at = from + i * step;
    const uv = uvAt(at);
    if (uv > most) [best, most] = [at, uv];
  }
  const at = climb(uvAt, [best - step, best + step]);
  const top = uvAt(at) > most ? at : best;
  return { at: top, year: atPoint(lit, slot, top) };
}

/** Ultraviolet of the year at a point, without telling the months apart. */
function uvOfPoint(lit: Lit, slot: SlotBefore): (at: number) => number {
  const { site, sun } = lit;
  const parts = MONTHS.map((month) => ultraviolet(lit, month));
  const sky = sum(parts.map(({ skyPart }) => skyPart));
  const ground = sum(
    parts.map(({ beamPart, skyPart }, month) => (site.groundUvShare[month] ?? 0) * (beamPart + skyPart)),
  );
  return (at) => {
    let uv = 0;
    for (const window of windowsOf(slot, at)) {
      const shares = pointShares(window, sun);
      uv += site.beamUvShare * beamBetween(sun, window, YEAR) + shares.sky * sky + shares.ground * ground;
    }
    return uv;
  };
}

/** Where light through the slot can land at all. */
function reach(slot: SlotBefore): readonly [number, number] {
  const rise = slot.thicknessMm * slope(slot);
  const ratio = slot.gapMm / slot.thicknessMm;
  const back = Math.max(slot.cavityMm, SHALLOWEST);
  return [rise - back * (ratio - slope(slot)), rise + slot.gapMm + back * (ratio + slope(slot))];
}

/** Golden section between two places, for a top that lies within. */
function climb(value: (at: number) => number, [from, to]: readonly [number, number]): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)];
  let [valueA, valueB] = [value(a), value(b)];
  for (let i = 0; i < REFINE; i++) {
    if (valueA >= valueB) {
      [high, b, valueB] = [b, a, valueA];
      a = high - golden * (high - low);
      valueA = value(a);
    } else {
      [low, a, valueA] = [a, b, valueB];
      b = low + golden * (high - low);
      valueB = value(b);
    }
  }
  return (low + high) / 2;
}
