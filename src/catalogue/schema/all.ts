/** The schema of each file in `data/`, by its name. */
import { cavityRulesFileSchema } from "./cavity-rules.ts";
import { clearancesFileSchema } from "./clearances.ts";
import { climatesFileSchema } from "./climates.ts";
import { codePacksFileSchema } from "./code-packs.ts";
import { fastenersFileSchema } from "./fasteners.ts";
import { finishesFileSchema } from "./finishes.ts";
import { heatFileSchema } from "./heat.ts";
import { lightFileSchema } from "./light.ts";
import { meshesFileSchema } from "./meshes.ts";
import { proportionRulesFileSchema } from "./proportion-rules.ts";
import { sheetMaterialsFileSchema } from "./sheet-materials.ts";
import { sourcesFileSchema } from "./sources.ts";
import { speciesFileSchema } from "./species.ts";
import { stockFileSchema } from "./stock.ts";
import { straightnessFileSchema } from "./straightness.ts";

export const catalogueSchemas = {
  sources: sourcesFileSchema,
  species: speciesFileSchema,
  "sheet-materials": sheetMaterialsFileSchema,
  stock: stockFileSchema,
  meshes: meshesFileSchema,
  fasteners: fastenersFileSchema,
  clearances: clearancesFileSchema,
  "cavity-rules": cavityRulesFileSchema,
  straightness: straightnessFileSchema,
  climates: climatesFileSchema,
  finishes: finishesFileSchema,
  "proportion-rules": proportionRulesFileSchema,
  light: lightFileSchema,
  heat: heatFileSchema,
  "code-packs": codePacksFileSchema,
} as const;
