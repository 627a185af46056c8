/** The rules that judge each face by itself, and their findings face by face, remembered where a memo is given. */
import type { Finding } from "../findings/finding.ts";
import { battenSag } from "./batten-sag.ts";
import { battenScrews } from "./batten-screws.ts";
import { battenSpacing } from "./batten-spacing.ts";
import { battenStrength } from "./batten-strength.ts";
import { boundaryFire } from "./boundary-fire.ts";
import { cavityAir } from "./cavity-air.ts";
import { cavityEnds } from "./cavity-ends.ts";
import { cavityRuleSet } from "./cavity-rule-set.ts";
import { claddingScrews } from "./cladding-screws.ts";
import type { FaceRule, ProofContext, ZoneView } from "./context.ts";
import { drainagePath } from "./drainage-path.ts";
import { faceContexts } from "./face-contexts.ts";
import { flashingWater } from "./flashing-water.ts";
import { handling } from "./handling.ts";
import { heatLoss } from "./heat-loss.ts";
import { hungLoad } from "./hung-load.ts";
import { jointWidth } from "./joint-width.ts";
import { lightOpenShare } from "./light-open-share.ts";
import { openArea } from "./open-area.ts";
import type { ProofMemo } from "./proof-memo.ts";
import { seasonalGap } from "./seasonal-gap.ts";
import { sheetJoint } from "./sheet-joint.ts";
import { skinSag } from "./skin-sag.ts";
import { skinStrength } from "./skin-strength.ts";
import { slidingHoles } from "./sliding-holes.ts";
import { splashHeight } from "./splash-height.ts";
import { studAim } from "./stud-aim.ts";
import { windOnSkin } from "./wind-on-skin.ts";
import { windowFrame } from "./window-frame.ts";

/** What wind asks of claddings, battens and their screws. */
export const WIND_RULES: readonly FaceRule[] = [
  windOnSkin,
  skinStrength,
  skinSag,
  battenStrength,
  battenSag,
  claddingScrews,
  battenScrews,
  studAim,
];

export const FACE_RULES: readonly FaceRule[] = [
  jointWidth,
  openArea,
  boundaryFire,
  windowFrame,
  sheetJoint,
  cavityEnds,
  seasonalGap,
  handling,
  slidingHoles,
  drainagePath,
  flashingWater,
  cavityAir,
  cavityRuleSet,
  heatLoss,
  battenSpacing,
  hungLoad,
  splashHeight,
  lightOpenShare,
  ...WIND_RULES,
];

/** What they find on every face that has a zone, in the order of the faces. */
export function proveFaces(proof: ProofContext, memo?: ProofMemo): Finding[] {
  const contexts = faceContexts(proof);
  const shared = memo ? JSON.stringify([contexts[0]?.project, proof.demands]) : "";
  return contexts.flatMap((context) => {
    const find = (): Finding[] => FACE_RULES.flatMap((rule) => rule(context));
    const [first] = context.zones;
    return memo && first ? memo.recall(first.face, `${shared}\n${ownKey(context.zones)}`, find) : find();
  });
}

/** What a face's views hold beside the laid-out face and what all faces share. */
function ownKey(views: readonly ZoneView[]): string {
  const [first] = views;
  return JSON.stringify([
    first?.facePath,
    first?.projectFace,
    views.map(({ claddingPath, plane }) => [claddingPath, plane]),
  ]);
}
