/** P047: sag of boards and sheets in wind. */
import type { Finding } from "../findings/finding.ts";
import type { FaceContext } from "./context.ts";
import { sagInWind } from "./wind/bending-findings.ts";

export function skinSag(context: FaceContext): Finding[] {
  return sagInWind(context, "skin");
}
