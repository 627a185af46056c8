/** What screws hold by the National Design Specification for Wood Construction, 2018. */

import { ndsBearingStrength } from "../../../equations/screws/nds-bearing-strength.ts";
import { ndsHeadPullThrough } from "../../../equations/screws/nds-head-pull-through.ts";
import { ndsLateral } from "../../../equations/screws/nds-lateral.ts";
import { ndsScrewWithdrawal } from "../../../equations/screws/nds-screw-withdrawal.ts";
import type { Basis, Source } from "../../../findings/finding.ts";
import { declared, held, rootOf, round, threadIn, unknown, weakest } from "../held.ts";
import type { HeldAnswer, ScrewAsked, TimberDemand } from "../pack.ts";

const source = (clause: string): Source => ({
  kind: "document",
  document: "National Design Specification for Wood Construction, American Wood Council, 2018",
  clause,
});

const MM_PER_IN = 25.4;
const MPA_PER_PSI = 0.0068947573;

/** Table 12.2F gives heads and wood of these sizes (mm); thicker wood holds no more. */
const HEADS_MM = [0.234 * MM_PER_IN, 0.5 * MM_PER_IN] as const;
const THINNEST_MM = (5 / 16) * MM_PER_IN;
/** Least depth of a wood screw that carries across itself, in diameters. */
const LEAST_DEPTH = 6;
/** Diameters under which these equations stand (in). */
const THIN_IN = 0.25;

/** Appendix I: bending yield strength of wood screws by diameter (psi). */
function yieldMPa(diameterMm: number): number {
  const inch = diameterMm / MM_PER_IN;
  return (inch <= 0.142 ? 100_000 : inch <= 0.177 ? 90_000 : 80_000) * MPA_PER_PSI;
}

export function unitedStatesWithdrawal(asked: ScrewAsked, timber: TimberDemand): HeldAnswer {
  const { lengthMm, basis } = threadIn(asked);
  const own = declared(asked, timber, { value: "withdrawalNPerMm", lengthMm });
  if (own) return own;
  const { diameter } = asked.screw;
  const perMm = ndsScrewWithdrawal({ specificGravity: asked.holder.gravity, diameterMm: diameter });
  return held({
    newton: perMm * lengthMm * timber.fastening.value,
    basis: weakest(basis, timber.fastening.basis, asked.holder.basis),
    formula: "19.65 · G² · d · l · C",
    substituted: `19.65 · ${round(asked.holder.gravity)}² · ${round(diameter)} · ${round(lengthMm)} · ${round(timber.fastening.value)}`,
    source: source("12.2.2"),
  });
}

export function unitedStatesHead(asked: ScrewAsked, timber: TimberDemand): HeldAnswer {
  const own = declared(asked, timber, { value: "pullThroughN" });
  if (own) return own;
  const { under, screw } = asked;
  if (under.kind === "sheet") return unknown("pull-through");
  const [least, most] = HEADS_MM;
  if (screw.headDiameter < least || under.thicknessMm < THINNEST_MM) return unknown("head-outside");
  // A larger head holds no less.
  const headMm = Math.min(screw.headDiameter, most);
  const newton = ndsHeadPullThrough({
    specificGravity: under.wood.gravity,
    headMm,
    thicknessMm: under.thicknessMm,
  });
  return held({
    newton: newton * timber.fastening.value,
    basis: weakest(timber.fastening.basis, under.wood.basis),
    formula: "690·π · DH · G² · min(t, 2.5·DH) · C",
    substituted: `690·π · ${round(headMm / MM_PER_IN)} · ${round(under.wood.gravity)}² · ${round(Math.min(under.thicknessMm, 2.5 * headMm) / MM_PER_IN)} · 4.448 · ${round(timber.fastening.value)}`,
    source: source("12.2.5"),
  });
}

export function unitedStatesShear(asked: ScrewAsked, timber: TimberDemand): HeldAnswer {
  const own = declared(asked, timber, { value: "shearN" });
  if (own) return own;
  const { under, screw, biteMm, holder } = asked;
  if (under.kind === "sheet") return unknown("shear");
  const { rootMm, basis } = rootOf(asked);
  if (rootMm / MM_PER_IN >= THIN_IN || biteMm < LEAST_DEPTH * screw.diameter) return unknown("shear-outside");
  const newton = ndsLateral({
    rootMm,
    yieldMPa: yieldMPa(screw.diameter),
    sideMm: under.thicknessMm,
    // A tapered point of two diameters bears by half.
    mainMm: biteMm - screw.diameter,
    gapMm: 0,
    sideMPa: ndsBearingStrength({ specificGravity: under.wood.gravity }),
    mainMPa: ndsBearingStrength({ specificGravity: holder.gravity }),
  });
  const all: Basis = weakest(basis, timber.fastening.basis, holder.basis, under.wood.basis);
  return held({
    newton: newton * timber.fastening.value,
    basis: all,
    formula: "Z(Dr, Fyb, ls, lm, Fes, Fem) · C",
    substituted: `Z(${round(rootMm)}, ${round(yieldMPa(screw.diameter))}, ${round(under.thicknessMm)}, ${round(biteMm - screw.diameter)}) = ${round(newton)}; · ${round(timber.fastening.value)}`,
    source: source("Tables 12.3.1A and 12.3.1B"),
  });
}
