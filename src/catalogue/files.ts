/**
 * The reference data as it lies in `data/`, typed by its schemas. Checking it against them takes longer than reading
 * it, and it never changes while the program runs, so the check is a test and not work done at every start.
 */
import cavityRulesData from "../../data/cavity-rules.json" with { type: "json" };
import clearancesData from "../../data/clearances.json" with { type: "json" };
import climatesData from "../../data/climates.json" with { type: "json" };
import codePacksData from "../../data/code-packs.json" with { type: "json" };
import fastenersData from "../../data/fasteners.json" with { type: "json" };
import finishesData from "../../data/finishes.json" with { type: "json" };
import heatData from "../../data/heat.json" with { type: "json" };
import lightData from "../../data/light.json" with { type: "json" };
import meshesData from "../../data/meshes.json" with { type: "json" };
import proportionRulesData from "../../data/proportion-rules.json" with { type: "json" };
import sheetMaterialsData from "../../data/sheet-materials.json" with { type: "json" };
import sourcesData from "../../data/sources.json" with { type: "json" };
import speciesData from "../../data/species.json" with { type: "json" };
import stockData from "../../data/stock.json" with { type: "json" };
import straightnessData from "../../data/straightness.json" with { type: "json" };
import type { CavityRulesFile } from "./schema/cavity-rules.ts";
import type { ClearancesFile } from "./schema/clearances.ts";
import type { ClimatesFile } from "./schema/climates.ts";
import type { CodePacksFile } from "./schema/code-packs.ts";
import type { FastenersFile } from "./schema/fasteners.ts";
import type { FinishesFile } from "./schema/finishes.ts";
import type { HeatFile } from "./schema/heat.ts";
import type { LightFile } from "./schema/light.ts";
import type { MeshesFile } from "./schema/meshes.ts";
import type { ProportionRulesFile } from "./schema/proportion-rules.ts";
import type { SheetMaterialsFile } from "./schema/sheet-materials.ts";
import type { SourcesFile } from "./schema/sources.ts";
import type { SpeciesFile } from "./schema/species.ts";
import type { StockFile } from "./schema/stock.ts";
import type { StraightnessFile } from "./schema/straightness.ts";

/** The compiler reads words in JSON as any string; the schemas say which words they can be, and the test proves it. */
function checkedByTest<File>(data: unknown): File {
  return data as File;
}

export const sourcesFile = checkedByTest<SourcesFile>(sourcesData);
export const speciesFile = checkedByTest<SpeciesFile>(speciesData);
export const sheetMaterialsFile = checkedByTest<SheetMaterialsFile>(sheetMaterialsData);
export const stockFile = checkedByTest<StockFile>(stockData);
export const meshesFile = checkedByTest<MeshesFile>(meshesData);
export const fastenersFile = checkedByTest<FastenersFile>(fastenersData);
const clearancesFile = checkedByTest<ClearancesFile>(clearancesData);
const cavityRulesFile = checkedByTest<CavityRulesFile>(cavityRulesData);
export const straightnessFile = checkedByTest<StraightnessFile>(straightnessData);
export const climatesFile = checkedByTest<ClimatesFile>(climatesData);
export const finishesFile = checkedByTest<FinishesFile>(finishesData);
const lightFile = checkedByTest<LightFile>(lightData);
const heatFile = checkedByTest<HeatFile>(heatData);
const codePacksFile = checkedByTest<CodePacksFile>(codePacksData);
export const proportionRulesFile = checkedByTest<ProportionRulesFile>(proportionRulesData);

/** Every file that holds figures, by its name in `data/`. */
export const figureFiles = {
  species: speciesFile,
  "sheet-materials": sheetMaterialsFile,
  stock: stockFile,
  meshes: meshesFile,
  fasteners: fastenersFile,
  clearances: clearancesFile,
  "cavity-rules": cavityRulesFile,
  straightness: straightnessFile,
  climates: climatesFile,
  finishes: finishesFile,
  "proportion-rules": proportionRulesFile,
  light: lightFile,
  heat: heatFile,
  "code-packs": codePacksFile,
} as const;
export type Catalogue = typeof figureFiles;
