/** P050: the screws of boards and sheets in wind, and under their weight. */
import type { Finding } from "../findings/finding.ts";
import type { FaceContext } from "./context.ts";
import { screwsInWind } from "./wind/screw-findings.ts";

export function claddingScrews(context: FaceContext): Finding[] {
  return screwsInWind(context, { code: "P050", of: "skins" });
}
