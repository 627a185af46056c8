/**
 * What lies behind the cladding and is forgotten on site: the membrane's strips, pans and bucks of openings, what closes
 * level joints, sleeves and boxes; and what is to be said of slivers, of the edge under the roof, of soft insulation.
 */
import type { Finding } from "../../findings/finding.ts";
import type { Joint, Piece, Solid, Vent } from "../facade.ts";
import { bucks } from "./bucks.ts";
import { ductSlivers } from "./duct-slivers.ts";
import { membraneStrips } from "./membrane.ts";
import { roofEdge } from "./roof-edge.ts";
import { sheetJointStrips } from "./sheet-joints.ts";
import { sillPans } from "./sill-pans.ts";
import { sleeves } from "./sleeves.ts";
import { squeezedInsulation } from "./squeezed.ts";
import type { Wall } from "./wall.ts";

export { membraneStrips, USUAL_ROLL } from "./membrane.ts";

export function behindCladding(
  wall: Wall,
  {
    joints,
    vents,
    solids,
  }: {
    readonly joints: readonly Joint[];
    readonly vents: readonly Vent[];
    readonly solids: readonly Solid[];
  },
): { readonly pieces: readonly Piece[]; readonly findings: readonly Finding[] } {
  const made = [
    membraneStrips(wall),
    sillPans(wall),
    bucks(wall, solids),
    sheetJointStrips(wall, joints),
    sleeves(wall),
  ];
  return {
    pieces: made.flatMap(({ pieces }) => pieces),
    findings: [
      ...made.flatMap(({ findings }) => findings),
      ...ductSlivers(wall),
      ...roofEdge(wall, vents),
      ...squeezedInsulation(wall),
    ],
  };
}
