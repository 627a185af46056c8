/**
 * What the project's place, rules, woods and data sheets ask of the facade, as plain values. Setting-out and proof read
 * these and look nothing up themselves.
 */
import { cavityRuleSets } from "../catalogue/cavity-rules.ts";
import { clearancesOf } from "../catalogue/clearances.ts";
import { highest, lowest } from "../catalogue/figure.ts";
import type { Catalogue } from "../catalogue/files.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import { battenCentresRules, proportionRules } from "../catalogue/proportion-rules.ts";
import type { Basis, Source } from "../findings/finding.ts";
import type { BoardCladding, Project } from "../project/schema/project.ts";
import { type AnimalDemand, animals } from "./animals.ts";
import { boardThickness } from "./board-thickness.ts";
import { type BoardWood, boardWoods } from "./board-woods.ts";
import { BOUNDARY_CAUTION_MM, boundaryRules } from "./boundary.ts";
import { type ChosenRules, chosenRules } from "./chosen-rules.ts";
import { type FireStopDemand, fireStops } from "./fire-stops.ts";
import { type HeatDemand, heatDemand } from "./heat.ts";
import { type LightDemand, lightDemand } from "./light-site.ts";
import { type CorrosionDemand, corrosionDemand } from "./metals.ts";
import { type FigureDemand, figureDemands } from "./own-figures.ts";
import { type StructureAnswer, structureDemand } from "./packs/index.ts";
import { type RainGrades, rainGrades } from "./rain-grades.ts";
import {
  type Jurisdiction,
  jurisdictionOf,
  materialBasis,
  namesOf,
  ownFirst,
  type RuleValue,
  ruleValue,
  sourceOf,
} from "./rule-value.ts";
import { type Seasonal, type SeasonalDemand, seasonalOf } from "./seasonal.ts";
import { type SheetDemand, sheetDemand } from "./sheet-movement.ts";
import { speciesNamed } from "./species-named.ts";

export type { AnimalDemand } from "./animals.ts";
export type { ChosenRules } from "./chosen-rules.ts";
export type { FireStopDemand } from "./fire-stops.ts";
export type { FigureDemand } from "./own-figures.ts";
export type { RuleValue } from "./rule-value.ts";
export type { SeasonalDemand } from "./seasonal.ts";
export type { SheetDemand } from "./sheet-movement.ts";

/** How well the heartwood of a wood resists decay; undefined where the catalogue does not know. */
export interface WoodDemand extends BoardWood {
  readonly resistance: "very resistant" | "resistant" | "moderately resistant" | "not resistant" | undefined;
  readonly basis: Basis;
  readonly source: Source;
}

export interface BoardDemand {
  /** Least and most gap between courses when they are fixed (mm). */
  readonly gapBand: readonly [least: number, most: number];
  /** Undefined where the project lacks what it takes; `seasonalLacks` names the paths. */
  readonly seasonal: SeasonalDemand | undefined;
  readonly seasonalLacks: readonly string[];
  readonly battenCentresMm: { readonly most: number; readonly better: number; readonly source: Source };
  readonly woods: readonly WoodDemand[];
}

/** What one rule family allows of a board's width over its thickness. */
export interface ProportionDemand {
  readonly id: string;
  readonly own: boolean;
  readonly least: number | undefined;
  readonly most: number | undefined;
  readonly widestMm: number | undefined;
  readonly source: Source;
}

export interface Demands {
  /** By cladding id. */
  readonly boards: Readonly<Record<string, BoardDemand>>;
  readonly sheets: Readonly<Record<string, SheetDemand>>;
  readonly jurisdiction: Jurisdiction | undefined;
  /** The project's own limit (mm). */
  readonly cavityMinMm: number;
  /** Least cavity depth behind open joints by named rule sets (mm), own jurisdiction first, as in each list below. */
  readonly cavityDepth: readonly RuleValue[];
  /** Least net vent area in and out (cm²/m). */
  readonly ventArea: readonly RuleValue[];
  /** Least height of cladding above ground (mm). */
  readonly groundClearance: readonly RuleValue[];
  readonly proportion: readonly ProportionDemand[];
  /** Least thickness of boards (mm). */
  readonly boardThickness: readonly RuleValue[];
  /** The rule set that the user has chosen for the cavity. */
  readonly chosenRules: ChosenRules | undefined;
  readonly animals: readonly AnimalDemand[];
  readonly fireStops: readonly FireStopDemand[];
  readonly rainGrades: RainGrades;
  readonly heat: HeatDemand;
  readonly corrosion: CorrosionDemand;
  /** Distance to a boundary under which rules restrict combustible cladding (mm), and under which to take care. */
  readonly boundary: readonly RuleValue[];
  readonly boundaryCautionMm: number;
  /** Sun, sky and ground of the place. */
  readonly light: LightDemand;
  /** Common practice: a heavier piece is handled by two people (kg). */
  readonly onePersonKg: number;
  /** Common practice: work above this height is guarded against falls (mm). */
  readonly fallHeightMm: number;
  /** Wind, timber and screws by the chosen structural code. */
  readonly structure: StructureAnswer;
  /** Figures that the project puts in place of the catalogue's. */
  readonly figures: readonly FigureDemand[];
}

const ONE_PERSON_KG = 25;
const FALL_HEIGHT_MM = 3000;

/** The demands of a project: the step `require` of the flow. Neither faces nor rods are read: a memo counts on it. */
export function demandsOf(project: Project): Demands {
  const claddings = project.claddings.map((cladding, index) => ({ cladding, path: `/claddings/${index}` }));
  const catalogue = catalogueWith(project.figures);
  return {
    boards: Object.fromEntries(
      claddings.flatMap(({ cladding, path }) =>
        cladding.kind === "boards"
          ? [[cladding.id, boardDemand(project, cladding, { path, catalogue })]]
          : [],
      ),
    ),
    sheets: Object.fromEntries(
      claddings.flatMap(({ cladding }) =>
        cladding.kind === "sheets" ? [[cladding.id, sheetDemand(project, cladding)]] : [],
      ),
    ),
    jurisdiction: jurisdictionOf(project),
    cavityMinMm: project.limits.cavityMin.value,
    cavityDepth: ownFirst(
      cavityRuleSets(catalogue).map((set) =>
        ruleValue(set.depthOpenJoint ?? set.depth, { id: set.id, jurisdiction: set.jurisdiction, project }),
      ),
    ),
    ventArea: ownFirst(
      cavityRuleSets(catalogue).flatMap((set) =>
        set.ventArea
          ? [ruleValue(set.ventArea, { id: set.id, jurisdiction: set.jurisdiction, project })]
          : [],
      ),
    ),
    groundClearance: ownFirst(
      (["ground", "ground-unpaved"] as const).flatMap((kind) =>
        clearancesOf(kind, catalogue).flatMap(({ jurisdiction, figures: [figure] }) =>
          figure ? [ruleValue(figure, { id: `${jurisdiction}-${kind}`, jurisdiction, project })] : [],
        ),
      ),
    ),
    proportion: proportions(project, catalogue),
    boardThickness: boardThickness(project),
    chosenRules: chosenRules(project),
    animals: animals(project),
    fireStops: fireStops(project),
    rainGrades: rainGrades(project),
    heat: heatDemand(project),
    corrosion: corrosionDemand(project),
    boundary: ownFirst(boundaryRules(project)),
    boundaryCautionMm: BOUNDARY_CAUTION_MM,
    light: lightDemand(project),
    onePersonKg: ONE_PERSON_KG,
    fallHeightMm: FALL_HEIGHT_MM,
    structure: structureDemand(project),
    figures: figureDemands(project),
  };
}

function boardDemand(
  project: Project,
  cladding: BoardCladding,
  { path, catalogue }: { path: string; catalogue: Catalogue },
): BoardDemand {
  const seasonal: Seasonal = seasonalOf(project, cladding, path);
  return {
    gapBand: cladding.gapBand,
    seasonal: seasonal.known ? seasonal.demand : undefined,
    seasonalLacks: seasonal.known ? [] : seasonal.lacks,
    battenCentresMm: battenCentres(cladding.thickness, catalogue),
    woods: boardWoods(project, cladding).map((wood) => woodDemand(wood, catalogue)),
  };
}

function battenCentres(thickness: number, catalogue: Catalogue): BoardDemand["battenCentresMm"] {
  const rule = (id: string) => battenCentresRules(catalogue).find((entry) => entry.id === id)?.perThickness;
  const most = rule("german-rule-largest");
  const better = rule("german-rule-better");
  return {
    most: (most?.value ?? 0) * thickness,
    better: (better?.value ?? 0) * thickness,
    source: { ...sourceOf(most), figures: namesOf(most, better) },
  };
}

function woodDemand(wood: BoardWood, catalogue: Catalogue): WoodDemand {
  const durability = speciesNamed(wood.name, catalogue)?.durability;
  return {
    ...wood,
    resistance: durability ? RESISTANCE[durability.key] : undefined,
    basis: durability ? materialBasis(durability.basis) : "typical",
    source: sourceOf(durability),
  };
}

const RESISTANCE: Readonly<Record<string, WoodDemand["resistance"]>> = {
  "heartwood-very-resistant": "very resistant",
  "heartwood-resistant": "resistant",
  "heartwood-moderately-resistant": "moderately resistant",
  "heartwood-not-resistant": "not resistant",
};

/** Rules on board and batten are another cladding's, and say nothing of a ratio. */
function proportions(project: Project, catalogue: Catalogue): ProportionDemand[] {
  return proportionRules(catalogue).flatMap((rule) =>
    rule.widthToThickness
      ? [
          {
            id: rule.id,
            own: rule.jurisdiction === jurisdictionOf(project),
            least: lowest(rule.widthToThickness),
            most: highest(rule.widthToThickness),
            widestMm: rule.largestWidth?.value,
            source: {
              ...sourceOf(rule.widthToThickness),
              figures: namesOf(rule.widthToThickness, rule.largestWidth),
            },
          },
        ]
      : [],
  );
}
