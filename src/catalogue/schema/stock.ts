/** `data/stock.json`: sizes in which lumber, battens, sheets and packers are bought. */
import * as z from "zod";
import { figureSchema, idSchema, rangeSchema } from "./figure.ts";

const sectionSchema = z.strictObject({ id: idSchema, thickness: figureSchema, width: figureSchema });
const sheetFormatSchema = z.strictObject({ id: idSchema, width: figureSchema, height: figureSchema });

export const stockFileSchema = z.strictObject({
  /** Dressed dry sizes by nominal name. */
  lumber: z.array(sectionSchema),
  nominalThickness: z.array(z.strictObject({ id: idSchema, dry: figureSchema, green: figureSchema })),
  battens: z.array(sectionSchema),
  boardLengths: z.array(figureSchema),
  sheetFormats: z.array(sheetFormatSchema),
  packers: z.array(figureSchema),
  kerfs: z.array(z.strictObject({ id: idSchema, width: rangeSchema })),
  reclaimedEndTrim: rangeSchema,
});
export type StockFile = z.infer<typeof stockFileSchema>;
export type Section = z.infer<typeof sectionSchema>;
