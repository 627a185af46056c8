/**
 * Rain that wind carries through an upright plane in open country. 2/9 and 8/9 belong to the standard's own equation: a
 * national way of reckoning is another equation, such as Lacy's.
 */
import { equation } from "../equation.ts";

export interface DrivenRain {
  /** Wind while it rains (m/s). */
  readonly windMPerS: number;
  /** Rain on level ground (mm/h). */
  readonly rainMmPerH: number;
  /** Between the wind and the wall’s normal (°). */
  readonly angleDeg: number;
}

/** Rain (mm/h, which is L/m²h); nothing from behind. */
export function windDrivenRain({ windMPerS, rainMmPerH, angleDeg }: DrivenRain): number {
  const across = Math.max(0, Math.cos((angleDeg * Math.PI) / 180));
  return (2 / 9) * windMPerS * rainMmPerH ** (8 / 9) * across;
}

export const WIND_DRIVEN_RAIN = equation({
  name: "wind-driven-rain",
  formula: "2/9 · windMPerS · rainMmPerH^(8/9) · max(0, cos angleDeg)",
  inputs: [
    { key: "windMPerS", unit: "m/s", range: [0, 40] },
    { key: "rainMmPerH", unit: "mm/h", range: [0, 200] },
    { key: "angleDeg", unit: "°", range: [-180, 180] },
  ],
  result: { unit: "mm/h" },
  source: { document: "ISO 15927-3, as coded in a public building-physics script" },
  work: windDrivenRain,
});
