/** What screws hold by EN 1995-1-1. */

import { enEmbedment } from "../../../equations/screws/en-embedment.ts";
import { enHeadPullThrough } from "../../../equations/screws/en-head-pull-through.ts";
import { enHeadStrength } from "../../../equations/screws/en-head-strength.ts";
import { enScrewShear } from "../../../equations/screws/en-screw-shear.ts";
import { enScrewWithdrawal } from "../../../equations/screws/en-screw-withdrawal.ts";
import { enYieldMoment } from "../../../equations/screws/en-yield-moment.ts";
import type { Source } from "../../../findings/finding.ts";
import { declared, held, rootOf, round, threadIn, unknown, weakest } from "../held.ts";
import type { HeldAnswer, ScrewAsked, TimberDemand } from "../pack.ts";

const source = (clause: string): Source => ({
  kind: "document",
  document: "EN 1995-1-1, 2004 with A1 and A2",
  clause,
});

/** Equation 8.39 stands for these diameters (mm), held by this many diameters of thread. */
const DIAMETERS_MM = [6, 12] as const;
const LEAST_THREAD = 6;
/** 8.7.1: a threaded screw counts with its root and a tenth. */
const OF_ROOT = 1.1;

export function europeWithdrawal(asked: ScrewAsked, timber: TimberDemand): HeldAnswer {
  const { lengthMm, basis } = threadIn(asked);
  const own = declared(asked, timber, { value: "withdrawalNPerMm", lengthMm });
  if (own) return own;
  const { diameter } = asked.screw;
  const [least, most] = DIAMETERS_MM;
  if (diameter < least || diameter > most || lengthMm < LEAST_THREAD * diameter)
    return unknown("withdrawal-outside");
  const { densityKgPerM3, basis: wood } = asked.holder;
  const newton = enScrewWithdrawal({ diameterMm: diameter, threadMm: lengthMm, densityKgPerM3 });
  return held({
    newton: newton * timber.fastening.value,
    basis: weakest(basis, wood, timber.fastening.basis),
    formula: "0.52 · d^0.5 · l^0.9 · ρ^0.8 · min(d/8, 1) · k",
    substituted: `0.52 · ${round(diameter)}^0.5 · ${round(lengthMm)}^0.9 · ${round(densityKgPerM3)}^0.8 · ${round(Math.min(diameter / 8, 1))} · ${round(timber.fastening.value)}`,
    source: source("8.7.2"),
  });
}

export function europeHead(asked: ScrewAsked, timber: TimberDemand): HeldAnswer {
  const own = declared(asked, timber, { value: "pullThroughN" });
  if (own) return own;
  const { under, screw } = asked;
  if (under.kind === "sheet") return unknown("pull-through");
  const { densityKgPerM3, basis } = under.wood;
  const newton = enHeadPullThrough({
    strengthMPa: enHeadStrength({ densityKgPerM3 }),
    headMm: screw.headDiameter,
    densityKgPerM3,
    declaredAtKgPerM3: densityKgPerM3,
  });
  return held({
    newton: newton * timber.fastening.value,
    basis: weakest(basis, timber.fastening.basis),
    formula: "70e-6·ρ² · dh² · k",
    substituted: `70e-6·${round(densityKgPerM3)}² · ${round(screw.headDiameter)}² · ${round(timber.fastening.value)}`,
    source: source("8.3.2, 8.7.2"),
  });
}

export function europeShear(asked: ScrewAsked, timber: TimberDemand): HeldAnswer {
  const own = declared(asked, timber, { value: "shearN" });
  if (own) return own;
  const { under, screw, biteMm, holder } = asked;
  const tensileMPa = screw.declared?.tensileMPa;
  if (under.kind === "sheet" || tensileMPa === undefined) return unknown("shear");
  const { rootMm, basis } = rootOf(asked);
  const diameterMm = OF_ROOT * rootMm;
  const embedment = (densityKgPerM3: number) => enEmbedment({ densityKgPerM3, diameterMm, predrilled: 0 });
  const newton = enScrewShear({
    diameterMm,
    yieldNmm: enYieldMoment({ tensileMPa, diameterMm }),
    headSideMm: under.thicknessMm,
    pointSideMm: biteMm,
    headSideMPa: embedment(under.wood.densityKgPerM3),
    pointSideMPa: embedment(holder.densityKgPerM3),
    // The same screw is pulled by wind: nothing of its pull helps it across.
    pullHeldN: 0,
  });
  return held({
    newton: newton * timber.fastening.value,
    basis: weakest(basis, timber.fastening.basis, holder.basis, under.wood.basis),
    formula: "Fv(d, My, t1, t2, f1, f2) · k",
    substituted: `Fv(${round(diameterMm)}, ${round(enYieldMoment({ tensileMPa, diameterMm }))}, ${round(under.thicknessMm)}, ${round(biteMm)}) = ${round(newton)}; · ${round(timber.fastening.value)}`,
    source: source("8.2.2"),
  });
}
