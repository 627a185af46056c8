/** The rain index of a wall from that of open country. */
import { equation } from "../equation.ts";

export interface WallIndex {
  /** Index in open country (L/m²). */
  readonly airfieldIndex: number;
  /** Roughness coefficient. */
  readonly roughness: number;
  /** Topography coefficient, 1 on the flat. */
  readonly topography: number;
  /** Obstruction factor, 0.2 beside a neighbour to 1 free. */
  readonly obstruction: number;
  /** Wall factor, 0.2 to 0.5 for most walls. */
  readonly wallFactor: number;
}

/** Index (L/m²). */
export function rainWallIndex({
  airfieldIndex,
  roughness,
  topography,
  obstruction,
  wallFactor,
}: WallIndex): number {
  return airfieldIndex * roughness * topography * obstruction * wallFactor;
}

export const RAIN_WALL_INDEX = equation({
  name: "rain-wall-index",
  formula: "airfieldIndex · roughness · topography · obstruction · wallFactor",
  inputs: [
    { key: "airfieldIndex", unit: "L/m²", range: [0, 5000] },
    { key: "roughness", unit: "1", range: [0, 3] },
    { key: "topography", unit: "1", range: [0.5, 2] },
    { key: "obstruction", unit: "1", range: [0, 1] },
    { key: "wallFactor", unit: "1", range: [0, 1] },
  ],
  result: { unit: "L/m²" },
  source: { document: "ISO 15927-3, as coded in a public building-physics script" },
  work: rainWallIndex,
});
