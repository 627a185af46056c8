/** Cladding that hangs on screws through insulation. */
import type { Equation } from "../equation.ts";
import { THICKEST_FOAM } from "./foam-sheathing.ts";
import { MISSED_STUD_ANGLE } from "./missed-stud-angle.ts";
import { SCREW_SWAY } from "./screw-sway.ts";

export const HANGING_EQUATIONS: readonly Equation[] = [MISSED_STUD_ANGLE, SCREW_SWAY, THICKEST_FOAM];
