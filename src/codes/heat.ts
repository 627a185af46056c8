/** What standards and common practice put into the heat of a wall, its fasteners and the air of its cavity. */
import type { Figure } from "../catalogue/figure.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import type { HeatFile } from "../catalogue/schema/heat.ts";
import type { Project } from "../project/schema/project.ts";
import type { Metal } from "./metals.ts";
import { type FigureValue, figureValue } from "./rule-value.ts";

type Values<Group> = { readonly [Name in keyof Group]: FigureValue };

export interface HeatDemand {
  /** m²K/W. */
  readonly surfaces: Values<HeatFile["surfaces"]>;
  /** Openings in a metre of wall (mm²/m). */
  readonly airLayer: Values<HeatFile["airLayer"]>;
  /** Plain ratios; the negligible share in percent. */
  readonly fasteners: Values<HeatFile["fasteners"]>;
  /** W/mK. */
  readonly conductivity: Values<HeatFile["conductivity"]>;
  readonly cavityFlow: Values<HeatFile["cavityFlow"]>;
}

export function heatDemand({ figures }: Pick<Project, "figures">): HeatDemand {
  const { surfaces, airLayer, fasteners, conductivity, cavityFlow } = catalogueWith(figures).heat;
  return {
    surfaces: valuesOf(surfaces),
    airLayer: valuesOf(airLayer),
    fasteners: valuesOf(fasteners),
    conductivity: valuesOf(conductivity),
    cavityFlow: valuesOf(cavityFlow),
  };
}

function valuesOf<Group extends Readonly<Record<string, Figure>>>(group: Group): Values<Group> {
  return Object.fromEntries(
    Object.entries(group).map(([name, figure]) => [name, figureValue(figure)]),
  ) as Values<Group>;
}

/** Heat conductivity of a screw (W/mK); a metal that is not told is taken as carbon steel. */
export function conductivityOf(metal: Metal | undefined, known: HeatDemand["conductivity"]): FigureValue {
  if (metal === "A2" || metal === "A4") return known.stainlessSteel;
  if (metal === "aluminium") return known.aluminium;
  return metal === "brass" ? known.brass : known.carbonSteel;
}
