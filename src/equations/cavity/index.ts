/** Flow, heat and drying in a ventilated cavity, and the closures at its ends. */
import type { Equation } from "../equation.ts";
import { AIR_CHANGES } from "./air-changes.ts";
import { BUOYANCY_PRESSURE } from "./buoyancy-pressure.ts";
import {
  CAVITY_FLOW_CLADDING,
  CAVITY_FLOW_LEAVING,
  CAVITY_FLOW_MEMBRANE,
  CAVITY_FLOW_SPEED,
} from "./cavity-flow-records.ts";
import { CAVITY_SPEED } from "./cavity-speed.ts";
import { CAVITY_SPEED_ROUGH } from "./cavity-speed-rough.ts";
import { DRYING_BOUND } from "./drying-bound.ts";
import { EQUIVALENT_INLET } from "./equivalent-inlet.ts";
import { GAP_CONVECTION } from "./gap-convection.ts";
import { GAP_FRICTION_FACTOR } from "./gap-friction-factor.ts";
import { GAP_LENGTH } from "./gap-length.ts";
import { GRILL_LOSS } from "./grill-loss.ts";
import { LOCAL_WIND } from "./local-wind.ts";
import { OPENING_LOSS } from "./opening-loss.ts";
import { PERFORATED_SQUARE_SHARE } from "./perforated-square-share.ts";
import { PERFORATED_STAGGERED_SHARE } from "./perforated-staggered-share.ts";
import { PLATE_FRICTION } from "./plate-friction.ts";
import { RADIATION_COEFFICIENT } from "./radiation-coefficient.ts";
import { SCREEN_LOSS } from "./screen-loss.ts";
import { WIND_PRESSURE } from "./wind-pressure.ts";

export const CAVITY_EQUATIONS: readonly Equation[] = [
  PERFORATED_STAGGERED_SHARE,
  PERFORATED_SQUARE_SHARE,
  GRILL_LOSS,
  SCREEN_LOSS,
  BUOYANCY_PRESSURE,
  WIND_PRESSURE,
  LOCAL_WIND,
  OPENING_LOSS,
  EQUIVALENT_INLET,
  PLATE_FRICTION,
  GAP_FRICTION_FACTOR,
  CAVITY_SPEED,
  CAVITY_SPEED_ROUGH,
  RADIATION_COEFFICIENT,
  GAP_CONVECTION,
  GAP_LENGTH,
  AIR_CHANGES,
  CAVITY_FLOW_SPEED,
  CAVITY_FLOW_CLADDING,
  CAVITY_FLOW_MEMBRANE,
  CAVITY_FLOW_LEAVING,
  DRYING_BOUND,
];
