/** P049: sag of battens and rails in wind. */
import type { Finding } from "../findings/finding.ts";
import type { FaceContext } from "./context.ts";
import { sagInWind } from "./wind/bending-findings.ts";

export function battenSag(context: FaceContext): Finding[] {
  return sagInWind(context, "carriers");
}
