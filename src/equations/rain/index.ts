/** Rain driven by wind. */
import type { Equation } from "../equation.ts";
import { DRIVING_RAIN_FACTOR } from "./driving-rain-factor.ts";
import { DRIVING_RAIN_INDEX } from "./driving-rain-index.ts";
import { RAIN_ROUGHNESS } from "./rain-roughness.ts";
import { RAIN_WALL_INDEX } from "./rain-wall-index.ts";
import { WIND_DRIVEN_RAIN } from "./wind-driven-rain.ts";
import { WIND_DRIVEN_RAIN_LACY } from "./wind-driven-rain-lacy.ts";
import { WIND_DRIVEN_RAIN_WALL } from "./wind-driven-rain-wall.ts";

export const RAIN_EQUATIONS: readonly Equation[] = [
  WIND_DRIVEN_RAIN,
  WIND_DRIVEN_RAIN_LACY,
  WIND_DRIVEN_RAIN_WALL,
  RAIN_ROUGHNESS,
  RAIN_WALL_INDEX,
  DRIVING_RAIN_INDEX,
  DRIVING_RAIN_FACTOR,
];
