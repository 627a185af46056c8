/** Metals outdoors, and wood. */
import type { Equation } from "../equation.ts";
import { AREA_MASS } from "./area-mass.ts";
import { CHLORIDE_EXPOSURE } from "./chloride-exposure.ts";
import { COEFFICIENT_FROM_SHRINKAGE } from "./coefficient-from-shrinkage.ts";
import { CORROSION_CLASS } from "./corrosion-class.ts";
import { SULPHUR_EXPOSURE } from "./sulphur-exposure.ts";
import { WOOD_DENSITY } from "./wood-density.ts";

export const DURABILITY_EQUATIONS: readonly Equation[] = [
  CHLORIDE_EXPOSURE,
  SULPHUR_EXPOSURE,
  CORROSION_CLASS,
  WOOD_DENSITY,
  COEFFICIENT_FROM_SHRINKAGE,
  AREA_MASS,
];
