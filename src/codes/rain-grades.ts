/** From which yearly index of driving rain a face is moderately or severely exposed. */
import { catalogueWith } from "../catalogue/own-figures.ts";
import type { Basis, Source } from "../findings/finding.ts";
import type { Project } from "../project/schema/project.ts";
import { namesOf, ruleBasis, sourceOf, weaker } from "./rule-value.ts";

export interface RainGrades {
  /** m²/s. */
  readonly moderate: number;
  readonly severe: number;
  readonly basis: Basis;
  readonly source: Source;
}

export function rainGrades({ figures }: Pick<Project, "figures">): RainGrades {
  const { moderate, severe } = catalogueWith(figures).climates.drivenRain;
  return {
    moderate: moderate.value,
    severe: severe.value,
    basis: weaker(ruleBasis(moderate.basis), ruleBasis(severe.basis)),
    source: { ...sourceOf(moderate), figures: namesOf(moderate, severe) },
  };
}
