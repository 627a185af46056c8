/** Bending of boards, sheets and battens between their supports. */
import type { Equation } from "../equation.ts";
import { BEAM_MOMENT, BEAM_REACTION, BEAM_SAG } from "./beam-records.ts";
import { BENDING_STRESS } from "./bending-stress.ts";

export const BEAMS_EQUATIONS: readonly Equation[] = [BEAM_MOMENT, BEAM_REACTION, BEAM_SAG, BENDING_STRESS];
