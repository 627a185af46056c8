/** P051: the screws of battens and rails in wind, and under their own weight; what hangs on soft layers is judged by P011. */
import type { Finding } from "../findings/finding.ts";
import type { FaceContext } from "./context.ts";
import { screwsInWind } from "./wind/screw-findings.ts";

export function battenScrews(context: FaceContext): Finding[] {
  return screwsInWind(context, { code: "P051", of: "carriers" });
}
