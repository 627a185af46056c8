/** The equations of sun, sky and slots, from the sun inward to the membrane. */
import type { Equation } from "../equation.ts";
import { AIR_MASS } from "./air-mass.ts";
import { CLEAR_SKY_BEAM, CLEAR_SKY_DIFFUSE, CLEAR_SKY_LEVEL } from "./clear-sky.ts";
import { CLEAR_SKY_ROUGH } from "./clear-sky-rough.ts";
import { EXTRATERRESTRIAL_BEAM } from "./extraterrestrial-beam.ts";
import { INCIDENCE } from "./incidence.ts";
import { LIT_STRIPE } from "./lit-stripe.ts";
import { PROFILE_ANGLE_LEVEL, PROFILE_ANGLE_UPRIGHT } from "./profile-angle.ts";
import { SLOT_BEAM_SHARE } from "./slot-beam-share.ts";
import { SLOT_CUT_OFF } from "./slot-cut-off.ts";
import { SLOT_EXCHANGE } from "./slot-exchange.ts";
import { SLOT_GROUND_SHARE } from "./slot-ground-share.ts";
import { SLOT_SKY_SHARE } from "./slot-sky-share.ts";
import { SLOT_WINDOW_SHARE } from "./slot-window-share.ts";
import { SUN_AZIMUTH } from "./sun-azimuth.ts";
import { SUN_ELEVATION } from "./sun-elevation.ts";
import { UV_IRRADIANCE } from "./uv-irradiance.ts";
import { VIEW_SHARE } from "./view-share.ts";
import { WALL_IRRADIANCE } from "./wall-irradiance.ts";

export const LIGHT_EQUATIONS: readonly Equation[] = [
  SUN_ELEVATION,
  SUN_AZIMUTH,
  EXTRATERRESTRIAL_BEAM,
  AIR_MASS,
  CLEAR_SKY_BEAM,
  CLEAR_SKY_DIFFUSE,
  CLEAR_SKY_LEVEL,
  CLEAR_SKY_ROUGH,
  INCIDENCE,
  WALL_IRRADIANCE,
  PROFILE_ANGLE_LEVEL,
  PROFILE_ANGLE_UPRIGHT,
  SLOT_CUT_OFF,
  SLOT_BEAM_SHARE,
  SLOT_EXCHANGE,
  SLOT_SKY_SHARE,
  SLOT_GROUND_SHARE,
  SLOT_WINDOW_SHARE,
  VIEW_SHARE,
  LIT_STRIPE,
  UV_IRRADIANCE,
];
