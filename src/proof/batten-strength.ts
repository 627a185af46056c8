/** P048: stress of battens and rails in wind. */
import type { Finding } from "../findings/finding.ts";
import type { FaceContext } from "./context.ts";
import { strengthInWind } from "./wind/bending-findings.ts";

export function battenStrength(context: FaceContext): Finding[] {
  return strengthInWind(context, "carriers");
}
