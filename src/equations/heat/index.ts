/** Heat loss of a wall, by ISO 6946. */
import type { Equation } from "../equation.ts";
import { FASTENER_CORRECTION } from "./fastener-correction.ts";
import { LAYER_RESISTANCE } from "./layer-resistance.ts";
import { RESISTANCE_LOWER } from "./resistance-lower.ts";
import { RESISTANCE_UPPER } from "./resistance-upper.ts";
import { TRANSMITTANCE } from "./transmittance.ts";
import { VENTILATED_RESISTANCE } from "./ventilated-resistance.ts";

export const HEAT_EQUATIONS: readonly Equation[] = [
  LAYER_RESISTANCE,
  RESISTANCE_UPPER,
  RESISTANCE_LOWER,
  VENTILATED_RESISTANCE,
  FASTENER_CORRECTION,
  TRANSMITTANCE,
];
