/** The rules of proof in the order of their codes. A rule is its file, its line here and its test. */

import { byWeight, type Finding } from "../findings/finding.ts";
import { battenSpacing } from "./batten-spacing.ts";
import { boardProportion } from "./board-proportion.ts";
import { boardThickness } from "./board-thickness.ts";
import { boundaryFire } from "./boundary-fire.ts";
import { cavityAir } from "./cavity-air.ts";
import { cavityBarriers } from "./cavity-barriers.ts";
import { cavityDepth } from "./cavity-depth.ts";
import { cavityEnds } from "./cavity-ends.ts";
import { cavityRuleSet } from "./cavity-rule-set.ts";
import { type ProofInput, type ProofRule, proofContext } from "./context.ts";
import { cutEnds } from "./cut-ends.ts";
import { drainagePath } from "./drainage-path.ts";
import { drivenRain } from "./driven-rain.ts";
import { flashingWater } from "./flashing-water.ts";
import { groundClearance } from "./ground-clearance.ts";
import { handling } from "./handling.ts";
import { heatLoss } from "./heat-loss.ts";
import { hungLoad } from "./hung-load.ts";
import { jointWidth } from "./joint-width.ts";
import { lightDose } from "./light-dose.ts";
import { lightOpenShare } from "./light-open-share.ts";
import { membraneLaps } from "./membrane-laps.ts";
import { oldPaint } from "./old-paint.ts";
import { openArea } from "./open-area.ts";
import { openingSizes } from "./opening-sizes.ts";
import { screwCorrosion } from "./screw-corrosion.ts";
import { seasonalGap } from "./seasonal-gap.ts";
import { sheetJoint } from "./sheet-joint.ts";
import { siteCautions } from "./site-cautions.ts";
import { slidingHoles } from "./sliding-holes.ts";
import { snowBase } from "./snow-base.ts";
import { splashHeight } from "./splash-height.ts";
import { timberOutdoors } from "./timber-outdoors.ts";
import { weeksUncovered } from "./weeks-uncovered.ts";
import { windowFrame } from "./window-frame.ts";
import { woodMetals } from "./wood-metals.ts";

export const PROOF_RULES: readonly ProofRule[] = [
  cavityDepth,
  jointWidth,
  openArea,
  boardProportion,
  groundClearance,
  snowBase,
  battenSpacing,
  boundaryFire,
  timberOutdoors,
  oldPaint,
  hungLoad,
  windowFrame,
  sheetJoint,
  cavityEnds,
  seasonalGap,
  handling,
  weeksUncovered,
  slidingHoles,
  siteCautions,
  lightOpenShare,
  lightDose,
  drainagePath,
  flashingWater,
  splashHeight,
  drivenRain,
  cavityAir,
  cavityRuleSet,
  openingSizes,
  heatLoss,
  screwCorrosion,
  woodMetals,
  cutEnds,
  cavityBarriers,
  boardThickness,
  membraneLaps,
];

/** Every finding of every rule, what is to be settled first at the head. */
export function prove(input: ProofInput): Finding[] {
  const context = proofContext(input);
  return PROOF_RULES.flatMap((rule) => rule(context)).sort(byWeight);
}
