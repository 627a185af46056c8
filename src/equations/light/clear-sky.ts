/** Sunlight under a clear sky: beam, sky and both on level ground. The model of Bird and Hulstrom. */
import { equation } from "../equation.ts";
import { airMass } from "./air-mass.ts";

export interface ClearAir {
  /** Of the sun, 0 to 90. */
  readonly zenithDeg: number;
  /** Sunlight outside the air (W/m²). */
  readonly outsideWPerM2: number;
  readonly pressureMbar: number;
  readonly ozoneCm: number;
  readonly waterCm: number;
  /** Optical depth of haze at 380 and at 500 nm. */
  readonly haze380: number;
  readonly haze500: number;
  /** Share of what haze scatters that goes on forward, 0.84 usually. */
  readonly forwardShare: number;
  /** Share of light that the ground throws back. */
  readonly groundShare: number;
}

export interface ClearSkyLight {
  /** Across the sun's beam (W/m²). */
  readonly beam: number;
  /** From the sky on level ground (W/m²). */
  readonly sky: number;
  /** Both together on level ground (W/m²). */
  readonly level: number;
}

export function clearSky(air: ClearAir): ClearSkyLight {
  const mass = airMass(air);
  const pressed = (mass * air.pressureMbar) / 1013;
  const rayleigh = Math.exp(-0.0903 * pressed ** 0.84 * (1 + pressed - pressed ** 1.01));
  const o = air.ozoneCm * mass;
  const ozone =
    1 - 0.1611 * o * (1 + 139.48 * o) ** -0.3034 - (0.002715 * o) / (1 + 0.044 * o + 0.0003 * o * o);
  const gases = Math.exp(-0.0127 * pressed ** 0.26);
  const w = air.waterCm * mass;
  const water = 1 - (2.4959 * w) / ((1 + 79.034 * w) ** 0.6828 + 6.385 * w);
  const depth = 0.2758 * air.haze380 + 0.35 * air.haze500;
  const haze = Math.exp(-(depth ** 0.873) * (1 + depth - depth ** 0.7088) * mass ** 0.9108);
  const absorbed = 1 - 0.1 * (1 - mass + mass ** 1.06) * (1 - haze);
  const scattered = haze / absorbed;
  const skyShare = 0.0685 + (1 - air.forwardShare) * (1 - scattered);
  const cosine = Math.cos((air.zenithDeg * Math.PI) / 180);
  const beam = 0.9662 * air.outsideWPerM2 * rayleigh * ozone * gases * water * haze;
  const fromAir =
    (air.outsideWPerM2 *
      cosine *
      0.79 *
      ozone *
      gases *
      water *
      absorbed *
      (0.5 * (1 - rayleigh) + air.forwardShare * (1 - scattered))) /
    (1 - mass + mass ** 1.02);
  const level = (beam * cosine + fromAir) / (1 - air.groundShare * skyShare);
  return { beam, level, sky: level - beam * cosine };
}

const AIR_INPUTS = [
  { key: "zenithDeg", unit: "°", range: [0, 90] },
  { key: "outsideWPerM2", unit: "W/m²", range: [1300, 1420] },
  { key: "pressureMbar", unit: "mbar", range: [500, 1100] },
  { key: "ozoneCm", unit: "cm", range: [0.05, 0.6] },
  { key: "waterCm", unit: "cm", range: [0.01, 7] },
  { key: "haze380", unit: "1", range: [0.01, 1] },
  { key: "haze500", unit: "1", range: [0.01, 1] },
] as const;

const inputs = [
  ...AIR_INPUTS,
  { key: "forwardShare", unit: "1", range: [0.5, 1] },
  { key: "groundShare", unit: "1", range: [0, 0.95] },
] as const;

const THROUGH_AIR =
  "M from zenithDeg; M' = M · pressureMbar/1013; Tr, To, Tg, Tw, Ta from M', ozoneCm · M, waterCm · M and 0.2758 · haze380 + 0.35 · haze500";
const STEPS = `${THROUGH_AIR}; rs = 0.0685 + (1 − forwardShare) · (1 − Ta/Taa)`;

const source = {
  document:
    "Bird and Hulstrom, A simplified clear sky model, Solar Energy Research Institute, SERI/TR-642-761 (1981)",
} as const;

export const CLEAR_SKY_BEAM = equation({
  name: "clear-sky-beam",
  formula: `0.9662 · outsideWPerM2 · Tr · To · Tg · Tw · Ta; ${THROUGH_AIR}`,
  inputs: AIR_INPUTS,
  result: { unit: "W/m²" },
  source,
  work: (air) => clearSky({ ...air, forwardShare: 1, groundShare: 0 }).beam,
});

export const CLEAR_SKY_LEVEL = equation({
  name: "clear-sky-level",
  formula: `(Id · cos z + outsideWPerM2 · cos z · 0.79 · To · Tg · Tw · Taa · (0.5(1 − Tr) + forwardShare · (1 − Ta/Taa))/(1 − M + M^1.02))/(1 − groundShare · rs); ${STEPS}`,
  inputs,
  result: { unit: "W/m²" },
  source,
  work: (air) => clearSky(air).level,
});

export const CLEAR_SKY_DIFFUSE = equation({
  name: "clear-sky-diffuse",
  formula: `level − Id · cos z, with level from outsideWPerM2 and groundShare; ${STEPS}`,
  inputs,
  result: { unit: "W/m²" },
  source,
  work: (air) => clearSky(air).sky,
});
