/** What metals screws are made of can stand, and which woods attack them. */
import { stainlessGroup } from "../catalogue/fasteners.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import type { Basis, Source } from "../findings/finding.ts";
import type { Project, Screw } from "../project/schema/project.ts";
import { documentOf, type FigureValue, figureValue, sourceOf } from "./rule-value.ts";
import { speciesNamed } from "./species-named.ts";

export type Metal = NonNullable<Screw["metal"]>;

const CLASSES = ["I", "II", "III", "IV", "V"] as const;

/** Name of a corrosion resistance class, 1 to 5. */
export function className(grade: number): string {
  return CLASSES[grade - 1] ?? String(grade);
}

/** The highest corrosion resistance class (1 to 5) that a stainless group meets; undefined for other metals. */
export function classOf(metal: Metal): { readonly grade: number; readonly basis: Basis } | undefined {
  const group = stainlessGroup(metal);
  if (!group) return undefined;
  const grade = Math.max(...group.corrosionClass.map((name) => CLASSES.indexOf(name) + 1));
  return { grade, basis: group.basis === "memory" ? "memory" : "given" };
}

/** Factors of the place that ask a corrosion resistance class. */
export interface CorrosionDemand {
  /** Within 0.25 km of the sea. */
  readonly shore: FigureValue;
  /** In a cavity, where rain washes nothing. */
  readonly unwashed: FigureValue;
}

export function corrosionDemand({ figures }: Pick<Project, "figures">): CorrosionDemand {
  const { shore, unwashed } = catalogueWith(figures).fasteners.corrosion;
  return { shore: figureValue(shore), unwashed: figureValue(unwashed) };
}

/** Trade guidance on fixings: these stain or fail in any timber cladding. */
const UNSUITED: readonly Metal[] = ["aluminium", "zinc-plated steel", "brass"];

export interface WoodMetals {
  /** Metals that the wood lets be, or `any` where the wood asks nothing of its own. */
  readonly asks: "stainless" | "stainless or coated" | "nothing known";
  readonly source: Source;
}

/** What a wood asks of its fixings, by the catalogue's cautions on it. */
export function woodAsks(wood: string): WoodMetals {
  const cautions = speciesNamed(wood)?.cautions ?? [];
  const stainless = cautions.find(({ key }) => key === "stainless-fixings");
  const coated = cautions.find(({ key }) => key === "stainless-or-specially-coated-fixings");
  if (stainless) return { asks: "stainless", source: sourceOf(stainless) };
  if (coated) return { asks: "stainless or coated", source: sourceOf(coated) };
  return { asks: "nothing known", source: GUIDANCE };
}

const GUIDANCE = documentOf("timber-cladding-fixings-guidance");

/** Whether a metal may hold boards of a wood. */
export function suits(metal: Metal, asks: WoodMetals["asks"]): boolean {
  if (UNSUITED.includes(metal)) return false;
  const stainless = metal === "A2" || metal === "A4";
  if (asks === "stainless") return stainless;
  if (asks === "stainless or coated") return stainless || metal === "coated steel";
  return true;
}

/** Swedish practice for boards left bare, oiled or weathered with iron vitriol: the A4 group. */
export const BARE_OR_OILED = documentOf("swedish-panel-instruction");
