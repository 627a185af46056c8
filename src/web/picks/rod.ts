import type { Design } from "../../design.ts";
import type { RodResult } from "../../setout/facade.ts";
import { type Pick, zoneIdOf } from "./pick.ts";

/** The rod that the picked zone's courses stand by; of a face that is picked whole, its first one. */
export function rodOf(design: Design, pick: Pick): RodResult | undefined {
  const zone = zoneIdOf(design, pick);
  if (zone === undefined && pick.kind !== "face") return undefined;
  return design.facade.rods.find(({ zones }) =>
    zones.some((one) => one.face === pick.face && (zone === undefined || one.zone === zone)),
  );
}
