/** Every equation that a reader can list and work by hand. A new one is added here, by subject. */

import { AIR_EQUATIONS } from "./air/index.ts";
import { BEAMS_EQUATIONS } from "./beams/index.ts";
import { CAVITY_EQUATIONS } from "./cavity/index.ts";
import { CHANGE_BY_COEFFICIENT } from "./change-by-coefficient.ts";
import { CHANGE_BY_SHRINKAGE } from "./change-by-shrinkage.ts";
import { DURABILITY_EQUATIONS } from "./durability/index.ts";
import type { Equation } from "./equation.ts";
import { EQUILIBRIUM_MOISTURE } from "./equilibrium-moisture.ts";
import { HANGING_EQUATIONS } from "./hanging/index.ts";
import { HEAT_EQUATIONS } from "./heat/index.ts";
import { HOLE_SIZE } from "./hole-size.ts";
import { JOINT_WIDTH_ARITHMETIC } from "./joint-width-arithmetic.ts";
import { JOINT_WIDTH_ROOT_SUM_SQUARE } from "./joint-width-root-sum-square.ts";
import { LIGHT_EQUATIONS } from "./light/index.ts";
import { METER_MOISTURE } from "./meter-moisture.ts";
import { NET_VENT_AREA } from "./net-vent-area.ts";
import { OPEN_SHARE } from "./open-share.ts";
import { RAIN_EQUATIONS } from "./rain/index.ts";
import { SCREWS_EQUATIONS } from "./screws/index.ts";
import { SURFACE_TEMPERATURE } from "./surface-temperature.ts";
import { THERMAL_EXPANSION } from "./thermal-expansion.ts";
import { WIND_EQUATIONS } from "./wind/index.ts";
import { WOVEN_FREE_SHARE } from "./woven-free-share.ts";

export const EQUATIONS: readonly Equation[] = [
  ...LIGHT_EQUATIONS,
  EQUILIBRIUM_MOISTURE,
  METER_MOISTURE,
  CHANGE_BY_COEFFICIENT,
  CHANGE_BY_SHRINKAGE,
  SURFACE_TEMPERATURE,
  THERMAL_EXPANSION,
  JOINT_WIDTH_ARITHMETIC,
  JOINT_WIDTH_ROOT_SUM_SQUARE,
  HOLE_SIZE,
  WOVEN_FREE_SHARE,
  NET_VENT_AREA,
  OPEN_SHARE,
  ...AIR_EQUATIONS,
  ...CAVITY_EQUATIONS,
  ...RAIN_EQUATIONS,
  ...HEAT_EQUATIONS,
  ...DURABILITY_EQUATIONS,
  ...WIND_EQUATIONS,
  ...BEAMS_EQUATIONS,
  ...SCREWS_EQUATIONS,
  ...HANGING_EQUATIONS,
];
