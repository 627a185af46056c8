/** The rules of proof. A rule is its file, its line here or among the rules of one face, and its test. */

import { byWeight, type Finding } from "../findings/finding.ts";
import { boardProportion } from "./board-proportion.ts";
import { boardThickness } from "./board-thickness.ts";
import { cavityBarriers } from "./cavity-barriers.ts";
import { cavityDepth } from "./cavity-depth.ts";
import { type ProofInput, type ProofRule, proofContext } from "./context.ts";
import { cutEnds } from "./cut-ends.ts";
import { drivenRain } from "./driven-rain.ts";
import { FACE_RULES, proveFaces } from "./face-rules.ts";
import { groundClearance } from "./ground-clearance.ts";
import { lightDose } from "./light-dose.ts";
import { membraneLaps } from "./membrane-laps.ts";
import { oldPaint } from "./old-paint.ts";
import { openingSizes } from "./opening-sizes.ts";
import { ownFigures } from "./own-figures.ts";
import type { ProofMemo } from "./proof-memo.ts";
import { screwCorrosion } from "./screw-corrosion.ts";
import { siteCautions } from "./site-cautions.ts";
import { snowBase } from "./snow-base.ts";
import { structureCautions } from "./structure-cautions.ts";
import { timberOutdoors } from "./timber-outdoors.ts";
import { weeksUncovered } from "./weeks-uncovered.ts";
import { windInputs } from "./wind-inputs.ts";
import { woodMetals } from "./wood-metals.ts";

/** Rules that look at more than one face, or at what is no face. */
const BUILDING_RULES: readonly ProofRule[] = [
  cavityDepth,
  boardProportion,
  groundClearance,
  snowBase,
  timberOutdoors,
  oldPaint,
  weeksUncovered,
  siteCautions,
  lightDose,
  drivenRain,
  openingSizes,
  screwCorrosion,
  woodMetals,
  cutEnds,
  cavityBarriers,
  boardThickness,
  membraneLaps,
  ownFigures,
  windInputs,
  structureCautions,
];

export const PROOF_RULES: readonly ProofRule[] = [...FACE_RULES, ...BUILDING_RULES];

/**
 * Every finding of every rule, what is to be settled first at the head. With a memo, faces that were laid out before with the
 * same of everything else are not proven again by rules of one face; the findings are the same either way.
 */
export function prove(input: ProofInput, memo?: ProofMemo): Finding[] {
  const context = proofContext(input);
  return [...proveFaces(context, memo), ...BUILDING_RULES.flatMap((rule) => rule(context))].sort(byWeight);
}
