/** The packs of structural codes. A new edition or family is registered here. */

import { catalogueWith } from "../../catalogue/own-figures.ts";
import type { Project } from "../../project/schema/project.ts";
import type { StructureCode } from "../../project/schema/wind.ts";
import { type FigureValue, figureValue } from "../rule-value.ts";
import { CANADA } from "./canada/index.ts";
import { EUROPE } from "./europe/index.ts";
import type { Lack, StructurePack, TimberDemand, WindAnswer, Wood } from "./pack.ts";
import { UNITED_STATES } from "./united-states/index.ts";
import { lack } from "./wind-fields.ts";
import { woodsOf } from "./woods.ts";

export type {
  HeldAnswer,
  Lack,
  ScrewAsked,
  Strip,
  StructurePack,
  TimberDemand,
  WindDemand,
  Wood,
} from "./pack.ts";

const PACKS: readonly StructurePack[] = [CANADA, UNITED_STATES, EUROPE];

/** The pack of a code. */
export function structurePack(code: StructureCode): StructurePack {
  const pack = PACKS.find(({ codes }) => codes.includes(code));
  if (!pack) throw new Error(`no pack holds ${code}`);
  return pack;
}

export interface StructureDemand {
  readonly code: StructureCode;
  readonly wind: WindAnswer;
  readonly timber: TimberDemand;
  /** Root of a screw's thread beside its outer diameter. */
  readonly coreShare: FigureValue;
  /** What the code prints as the most sag of a flexible skin: a span over this. */
  readonly sagSpanOver: FigureValue | undefined;
  /** The woods of studs, battens, boards and posts, by their names in the file. */
  readonly woods: Readonly<Record<string, Wood>>;
}

export type StructureAnswer =
  | ({ readonly known: true } & StructureDemand)
  | { readonly known: false; readonly lacks: readonly Lack[] };

/** What the chosen code asks; without one, what is missing. */
export function structureDemand(project: Project): StructureAnswer {
  const code = project.site.wind?.code;
  if (code === undefined) return { known: false, lacks: [lack("", "wind")] };
  const pack = structurePack(code);
  const timber = pack.timber(project);
  return {
    known: true,
    code,
    wind: pack.wind(project),
    timber,
    coreShare: figureValue(catalogueWith(project.figures).heat.fasteners.coreShare),
    sagSpanOver: pack.sagSpanOver(project),
    woods: woodsOf(project, pack, timber.unnamed),
  };
}
