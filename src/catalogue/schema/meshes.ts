/** `data/meshes.json`: what closes the open end of a cavity and still lets air through. */
import * as z from "zod";
import { figureSchema, idSchema, quantitySchema } from "./figure.ts";

const wovenMeshSchema = z.strictObject({
  id: idSchema,
  opening: figureSchema,
  wire: figureSchema,
  /** Free area over whole area. */
  freeShare: figureSchema,
});
const perforatedSheetSchema = z.strictObject({
  id: idSchema,
  pattern: z.enum(["staggered-60", "square"]),
  hole: figureSchema,
  pitch: figureSchema,
  freeShare: figureSchema,
});
const openingLimitSchema = z.strictObject({
  id: idSchema,
  against: z.enum(["insects", "rodents", "vermin", "embers"]),
  opening: quantitySchema,
});

export const meshesFileSchema = z.strictObject({
  woven: z.array(wovenMeshSchema),
  perforated: z.array(perforatedSheetSchema),
  openings: z.array(openingLimitSchema),
});
export type MeshesFile = z.infer<typeof meshesFileSchema>;
export type WovenMesh = z.infer<typeof wovenMeshSchema>;
export type PerforatedSheet = z.infer<typeof perforatedSheetSchema>;
export type OpeningLimit = z.infer<typeof openingLimitSchema>;
