/** `data/clearances.json`: the lowest edge of cladding above ground, roof, deck and flashing. */
import * as z from "zod";
import { figureSchema, jurisdictionSchema } from "./figure.ts";

export const clearanceKindSchema = z.enum([
  "ground",
  "ground-paved",
  "ground-unpaved",
  "ground-gravel-strip",
  "roof",
  "deck",
  "flashing",
]);
export type ClearanceKind = z.infer<typeof clearanceKindSchema>;

const clearanceSchema = z.strictObject({
  jurisdiction: jurisdictionSchema,
  kind: clearanceKindSchema,
  /** The required value first; a second entry is another value in circulation there. */
  figures: z.array(figureSchema).min(1),
});

export const clearancesFileSchema = z.strictObject({ clearances: z.array(clearanceSchema) });
export type ClearancesFile = z.infer<typeof clearancesFileSchema>;
export type Clearance = z.infer<typeof clearanceSchema>;
