/** Stretches of cavity that published rules ask to be stopped against fire. Cautions: the local code decides. */
import { fireStopRules } from "../catalogue/cavity-rules.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import type { Basis, Source } from "../findings/finding.ts";
import type { Project } from "../project/schema/project.ts";
import { type Jurisdiction, jurisdictionOf, namesOf, sourceOf } from "./rule-value.ts";

export interface FireStopDemand {
  readonly id: string;
  readonly own: boolean;
  /** Longest stretch along the wall and up it (mm); infinite where the rule does not say. */
  readonly alongMm: number;
  readonly upMm: number;
  /** A single air space up to this depth is left out (mm); 0 where none is. */
  readonly exemptDepthMm: number;
  readonly basis: Basis;
  readonly source: Source;
}

/** Rules with a stretch to them; those on how far a stop stands out ask nothing of a set-out facade. */
const PLACES: readonly Jurisdiction[] = ["canada", "usa", "scotland"];

const MM: Readonly<Record<string, number>> = { m: 1000, ft: 304.8, mm: 1 };

export function fireStops(project: Project): FireStopDemand[] {
  const place = jurisdictionOf(project);
  const catalogue = catalogueWith(project.figures);
  const rules = PLACES.flatMap((one) => fireStopRules(one, catalogue)).flatMap((rule) => {
    const along = rule.horizontal ?? rule.anyDirection;
    const up = rule.vertical ?? rule.anyDirection;
    if (!along || !up) return [];
    return [
      {
        id: `fire-${rule.id}`,
        own: rule.jurisdiction === place,
        alongMm: along.value * (MM[along.unit] ?? 1),
        upMm: up.value * (MM[up.unit] ?? 1),
        exemptDepthMm: rule.exemptDepth?.value ?? 0,
        basis: "given" as const,
        source: { ...sourceOf(along), figures: namesOf(along, up, rule.exemptDepth) },
      },
    ];
  });
  return [...rules.filter(({ own }) => own), ...rules.filter(({ own }) => !own)];
}
