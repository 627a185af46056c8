/** What lies behind the cladding and is forgotten on site: the membrane's strips, and in time what goes with them. */
import type { Finding } from "../../findings/finding.ts";
import type { Piece } from "../facade.ts";
import { membraneStrips } from "./membrane.ts";
import type { Wall } from "./wall.ts";

export { membraneStrips, USUAL_ROLL } from "./membrane.ts";

export function behindCladding(wall: Wall): {
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
} {
  return membraneStrips(wall);
}
