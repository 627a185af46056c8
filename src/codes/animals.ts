/** Openings that keep animals out of the cavity, by named sources that disagree, and the opening of a closure. */
import { highest } from "../catalogue/figure.ts";
import { mesh, openingLimits } from "../catalogue/meshes.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import type { Basis, Source } from "../findings/finding.ts";
import type { Project } from "../project/schema/project.ts";
import { sourceOf } from "./rule-value.ts";

export interface AnimalDemand {
  readonly id: string;
  readonly against: "insects" | "rodents" | "vermin" | "embers";
  /** Widest opening (mm), at the loose end of what the source gives. */
  readonly widestMm: number;
  readonly basis: Basis;
  readonly source: Source;
}

/**
 * A house mouse passes a quarter of an inch: what public-health pages on sealing buildings print. The wider ones of the
 * catalogue stand beside it.
 */
const MOUSE: AnimalDemand = {
  id: "mouse",
  against: "rodents",
  widestMm: 6,
  basis: "given",
  source: {
    kind: "document",
    document: "Public-health guidance on sealing buildings against rodents: 1/4 in, 6 mm",
  },
};

export function animals({ figures }: Pick<Project, "figures">): AnimalDemand[] {
  const catalogue = catalogueWith(figures);
  const kinds = ["insects", "rodents", "vermin", "embers"] as const;
  const listed = kinds.flatMap((against) =>
    openingLimits(against, catalogue).map(
      ({ id, opening }): AnimalDemand => ({
        id,
        against,
        widestMm: highest(opening) ?? 0,
        basis: opening.basis === "memory" ? "memory" : "given",
        source: sourceOf(opening),
      }),
    ),
  );
  return [MOUSE, ...listed];
}

/** Clear opening of a closure's mesh (mm), from its material as set out; undefined for what the catalogue does not know. */
export function closureOpening(material: string): number | undefined {
  const known = mesh(material.replace(/^mesh /, ""));
  if (!known) return undefined;
  return "wire" in known ? known.opening.value : known.hole.value;
}
