/** Air and the water vapour in it. */
import type { Equation } from "../equation.ts";
import { AIR_DENSITY } from "./air-density.ts";
import { AIR_VISCOSITY } from "./air-viscosity.ts";
import { DEW_POINT } from "./dew-point.ts";
import { HUMIDITY_RATIO } from "./humidity-ratio.ts";
import { HUMIDITY_RATIO_WET_BULB } from "./humidity-ratio-wet-bulb.ts";
import { MOIST_AIR_ENTHALPY } from "./moist-air-enthalpy.ts";
import { MOIST_AIR_VOLUME } from "./moist-air-volume.ts";
import { SATURATION_PRESSURE } from "./saturation-pressure.ts";
import { STANDARD_PRESSURE } from "./standard-pressure.ts";

export const AIR_EQUATIONS: readonly Equation[] = [
  STANDARD_PRESSURE,
  AIR_DENSITY,
  AIR_VISCOSITY,
  SATURATION_PRESSURE,
  DEW_POINT,
  HUMIDITY_RATIO,
  HUMIDITY_RATIO_WET_BULB,
  MOIST_AIR_ENTHALPY,
  MOIST_AIR_VOLUME,
];
