/** P046: stress of boards and sheets in wind. */
import type { Finding } from "../findings/finding.ts";
import type { FaceContext } from "./context.ts";
import { strengthInWind } from "./wind/bending-findings.ts";

export function skinStrength(context: FaceContext): Finding[] {
  return strengthInWind(context, "skin");
}
