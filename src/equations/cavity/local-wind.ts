/** Wind at a height and in a terrain, from that at a weather station. */
import { equation } from "../equation.ts";

export interface StationWind {
  /** Wind at the station (m/s). */
  readonly stationMPerS: number;
  /** Height of the station’s instrument (m). */
  readonly stationHeightM: number;
  /** Boundary layer there: 270 open country, 370 rough or wooded, 460 town (m). */
  readonly stationLayerM: number;
  /** Exponent there: 0.14, 0.22, 0.33. */
  readonly stationExponent: number;
  /** Height wanted (m). */
  readonly heightM: number;
  /** Boundary layer at the building (m). */
  readonly layerM: number;
  /** Exponent at the building. */
  readonly exponent: number;
}

/** Wind (m/s). */
export function localWind({
  stationMPerS,
  stationHeightM,
  stationLayerM,
  stationExponent,
  heightM,
  layerM,
  exponent,
}: StationWind): number {
  return stationMPerS * (stationLayerM / stationHeightM) ** stationExponent * (heightM / layerM) ** exponent;
}

export const LOCAL_WIND = equation({
  name: "local-wind",
  formula: "stationMPerS · (stationLayerM/stationHeightM)^stationExponent · (heightM/layerM)^exponent",
  inputs: [
    { key: "stationMPerS", unit: "m/s", range: [0, 60] },
    { key: "stationHeightM", unit: "m", range: [1, 100] },
    { key: "stationLayerM", unit: "m", range: [150, 600] },
    { key: "stationExponent", unit: "1", range: [0.05, 0.5] },
    { key: "heightM", unit: "m", range: [0.5, 300] },
    { key: "layerM", unit: "m", range: [150, 600] },
    { key: "exponent", unit: "1", range: [0.05, 0.5] },
  ],
  result: { unit: "m/s" },
  source: {
    document: "ASHRAE Handbook of Fundamentals, as written out in an open building-energy reference manual",
  },
  work: localWind,
});
