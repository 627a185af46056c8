/** `data/code-packs.json`: factors of structural codes that a data sheet, an annex or another edition can give otherwise. */
import * as z from "zod";
import { figureSchema } from "./figure.ts";

export const codePacksFileSchema = z.strictObject({
  canada: z.strictObject({
    windFactor: figureSchema,
    deadFactor: figureSchema,
    sagImportance: figureSchema,
    partlyEnclosed: figureSchema,
    duration: figureSchema,
    bendingResistance: figureSchema,
    withdrawalResistance: figureSchema,
    withdrawalCoefficient: figureSchema,
    wetTimber: figureSchema,
    lowestBending: figureSchema,
    lowestModulus: figureSchema,
    unnamedGravity: figureSchema,
  }),
  unitedStates: z.strictObject({
    windShare: figureSchema,
    sagShare: figureSchema,
    sagSpanOver: figureSchema,
    leastPressure: figureSchema,
    duration: figureSchema,
    wetTimber: figureSchema,
    wetBending: figureSchema,
    lowestBending: figureSchema,
    lowestModulus: figureSchema,
    unnamedGravity: figureSchema,
  }),
  europe: z.strictObject({
    windFactor: figureSchema,
    deadFactor: figureSchema,
    shortDry: figureSchema,
    shortWet: figureSchema,
    timberSafety: figureSchema,
    lowestBending: figureSchema,
    lowestModulus: figureSchema,
    unnamedDensity: figureSchema,
  }),
});
export type CodePacksFile = z.infer<typeof codePacksFileSchema>;
