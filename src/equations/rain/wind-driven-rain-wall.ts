/**
 * Rain that reaches a wall, by ASHRAE 160. The standard fixes 0.2 s/m in its equation; exposure and deposition are for the
 * reader to judge, and what was remembered of their tables is said with each.
 */
import { equation } from "../equation.ts";

/** Empirical constant of the standard (s/m). */
const EMPIRICAL = 0.2;

export interface RainOnWall {
  /** Rain exposure factor, 0.7 sheltered to 1.5 open (from memory). */
  readonly exposure: number;
  /** Rain deposition factor: 0.35 under a steep roof, 0.5 under a low one, 1.0 where water runs down (from memory). */
  readonly deposition: number;
  /** Wind while it rains (m/s). */
  readonly windMPerS: number;
  /** Rain on level ground (mm/h). */
  readonly rainMmPerH: number;
  /** Between the wind and the wall’s normal (°). */
  readonly angleDeg: number;
}

/** Rain (mm/h). */
export function windDrivenRainWall({
  exposure,
  deposition,
  windMPerS,
  rainMmPerH,
  angleDeg,
}: RainOnWall): number {
  const across = Math.max(0, Math.cos((angleDeg * Math.PI) / 180));
  return exposure * deposition * EMPIRICAL * windMPerS * across * rainMmPerH;
}

export const WIND_DRIVEN_RAIN_WALL = equation({
  name: "wind-driven-rain-wall",
  formula: "exposure · deposition · 0.2 · windMPerS · max(0, cos angleDeg) · rainMmPerH",
  inputs: [
    { key: "exposure", unit: "1", range: [0.5, 2] },
    { key: "deposition", unit: "1", range: [0, 1] },
    { key: "windMPerS", unit: "m/s", range: [0, 40] },
    { key: "rainMmPerH", unit: "mm/h", range: [0, 200] },
    { key: "angleDeg", unit: "°", range: [-180, 180] },
  ],
  result: { unit: "mm/h" },
  source: { document: "ASHRAE 160, as printed on a building-physics wiki" },
  work: windDrivenRainWall,
});
