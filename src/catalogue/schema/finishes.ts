/** `data/finishes.json`: how far a litre goes and how long a finish lasts. */
import * as z from "zod";
import { figureSchema, idSchema, rangeSchema } from "./figure.ts";

const coverageSchema = z.strictObject({ id: idSchema, perCoat: rangeSchema });
const serviceLifeSchema = z.strictObject({ id: idSchema, life: rangeSchema });

export const finishesFileSchema = z.strictObject({
  /** Area a litre covers in one coat, by surface. */
  coverage: z.array(coverageSchema),
  serviceLife: z.array(serviceLifeSchema),
  moistureAtPainting: figureSchema,
  moistureWhenBuiltIn: figureSchema,
});
export type FinishesFile = z.infer<typeof finishesFileSchema>;
export type Coverage = z.infer<typeof coverageSchema>;
export type ServiceLife = z.infer<typeof serviceLifeSchema>;
