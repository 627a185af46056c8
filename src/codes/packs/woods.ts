/** Woods as the fastening equations of the packs know them. */
import { catalogueWith } from "../../catalogue/own-figures.ts";
import type { Project } from "../../project/schema/project.ts";
import { type FigureValue, ruleBasis, weaker } from "../rule-value.ts";
import { speciesNamed } from "../species-named.ts";
import type { StructurePack, Wood } from "./pack.ts";

const KG_PER_M3 = 1000;

/** A wood taken in place of one that is not known: typical at best. */
export function byGravity({ value, basis }: FigureValue): Wood {
  return { gravity: value, densityKgPerM3: value * KG_PER_M3, basis: weaker("typical", basis) };
}

export function byDensity({ value, basis }: FigureValue): Wood {
  return { gravity: value / KG_PER_M3, densityKgPerM3: value, basis: weaker("typical", basis) };
}

/** The woods of studs, battens, boards and posts, by their names in the file. */
export function woodsOf(project: Project, pack: StructurePack, unnamed: Wood): Record<string, Wood> {
  const { structure, claddings, corners } = project;
  const boards = claddings.flatMap((cladding) => (cladding.kind === "boards" ? [cladding.species] : []));
  const posts = (corners ?? []).flatMap(({ post }) => (post ? [post.material] : []));
  return Object.fromEntries(
    [structure.studs.species, ...boards, ...posts].map((name) => {
      const figure =
        pack.woodBy === "gravity"
          ? speciesNamed(name, catalogueWith(project.figures))?.specificGravityFastener
          : undefined;
      const wood = figure && {
        ...byGravity({ value: figure.value, basis: "given", figures: [] }),
        basis: ruleBasis(figure.basis),
      };
      return [name, wood ?? unnamed];
    }),
  );
}
