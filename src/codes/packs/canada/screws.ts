/**
 * What screws hold by the Canadian standard of engineering in wood. The equation of withdrawal is from memory, so that what rests on it
 * is provisional; pull-through and shear are not known here, and a screw's data sheet must declare them.
 */
import { csaScrewWithdrawal } from "../../../equations/screws/csa-screw-withdrawal.ts";
import { declared, held, round, threadIn, unknown, weakest } from "../held.ts";
import type { HeldAnswer, ScrewAsked, StructurePack, TimberDemand } from "../pack.ts";

export function canadaWithdrawal(asked: ScrewAsked, timber: TimberDemand): HeldAnswer {
  const { lengthMm, basis } = threadIn(asked);
  const own = declared(asked, timber, { value: "withdrawalNPerMm", lengthMm });
  if (own) return own;
  if (!timber.withdrawal) return unknown("withdrawal");
  const { diameter } = asked.screw;
  const perMm = csaScrewWithdrawal({
    coefficient: timber.withdrawal.value,
    specificGravity: asked.holder.gravity,
    diameterMm: diameter,
  });
  return held({
    newton: perMm * lengthMm * timber.fastening.value,
    basis: weakest(basis, timber.withdrawal.basis, timber.fastening.basis, asked.holder.basis),
    formula: "c · d^0.82 · G^1.77 · l · φ·K",
    substituted: `${round(timber.withdrawal.value)} · ${round(diameter)}^0.82 · ${round(asked.holder.gravity)}^1.77 · ${round(lengthMm)} · ${round(timber.fastening.value)}`,
    source: { kind: "document", document: "CSA O86, from memory" },
  });
}

export function canadaHead(asked: ScrewAsked, timber: TimberDemand): HeldAnswer {
  return declared(asked, timber, { value: "pullThroughN" }) ?? unknown("pull-through");
}

export function canadaShear(asked: ScrewAsked, timber: TimberDemand): HeldAnswer {
  return declared(asked, timber, { value: "shearN" }) ?? unknown("shear");
}

/** Common practice where no document of the place was read: the shares are added, which is never less than another rule gives. */
export const canadaCombined: StructurePack["combined"] = ({ pullN, shearN, pullHeldN, shearHeldN }) =>
  pullN / pullHeldN + shearN / shearHeldN;
