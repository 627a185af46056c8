/** Wind on the walls of low buildings: Canada, the United States, Europe. */
import type { Equation } from "../equation.ts";
import { ASCE_ELEVATION } from "./asce-elevation.ts";
import { ASCE_EXPOSURE } from "./asce-exposure.ts";
import { ASCE_VELOCITY_PRESSURE } from "./asce-velocity-pressure.ts";
import { ASCE_TERRAIN, ASCE_WALL_COEFFICIENT } from "./asce-wall.ts";
import { COEFFICIENT_BY_AREA } from "./coefficient-by-area.ts";
import { EN_BASIC_PRESSURE } from "./en-basic-pressure.ts";
import { EN_PEAK_PRESSURE } from "./en-peak-pressure.ts";
import { EN_PROBABILITY } from "./en-probability.ts";
import { EN_ROUGHNESS } from "./en-roughness.ts";
import { EN_STRIP_LENGTH } from "./en-strip-length.ts";
import { EN_TERRAIN_FACTOR } from "./en-terrain-factor.ts";
import { EN_TURBULENCE } from "./en-turbulence.ts";
import { EN_TERRAIN, EN_WALL_COEFFICIENT } from "./en-wall.ts";
import { END_STRIP_WIDTH } from "./end-strip-width.ts";
import { NBC_EXPOSURE } from "./nbc-exposure.ts";
import { NBC_PRESSURE } from "./nbc-pressure.ts";
import { NBC_TERRAIN, NBC_WALL_COEFFICIENT } from "./nbc-wall.ts";
import { WIND_NET_PRESSURE } from "./wind-net-pressure.ts";

export const WIND_EQUATIONS: readonly Equation[] = [
  ASCE_ELEVATION,
  ASCE_EXPOSURE,
  ASCE_TERRAIN,
  ASCE_VELOCITY_PRESSURE,
  ASCE_WALL_COEFFICIENT,
  COEFFICIENT_BY_AREA,
  EN_BASIC_PRESSURE,
  EN_PEAK_PRESSURE,
  EN_PROBABILITY,
  EN_ROUGHNESS,
  EN_STRIP_LENGTH,
  EN_TERRAIN,
  EN_TERRAIN_FACTOR,
  EN_TURBULENCE,
  EN_WALL_COEFFICIENT,
  END_STRIP_WIDTH,
  NBC_EXPOSURE,
  NBC_PRESSURE,
  NBC_TERRAIN,
  NBC_WALL_COEFFICIENT,
  WIND_NET_PRESSURE,
];
