/** `data/straightness.json`: how far walls and openings may be out. */
import * as z from "zod";
import { figureSchema, idSchema } from "./figure.ts";

const flatnessRowSchema = z.strictObject({
  id: idSchema,
  row: z.int(),
  /** Limit of the gap under a straightedge between two high points this far apart. */
  points: z.array(z.strictObject({ distanceM: z.number().positive(), limit: figureSchema })),
});
/** A limit for sizes up to `upToM`. */
const upToSchema = z.strictObject({ upToM: z.number().positive(), limit: figureSchema });

export const straightnessFileSchema = z.strictObject({
  flatness: z.array(flatnessRowSchema),
  angles: z.array(upToSchema),
  openings: z.array(upToSchema),
  framedWalls: z.array(z.strictObject({ overM: z.number().positive(), limit: figureSchema })),
  courses: z.array(z.strictObject({ id: idSchema, limit: figureSchema })),
});
export type StraightnessFile = z.infer<typeof straightnessFileSchema>;
export type FlatnessRow = z.infer<typeof flatnessRowSchema>;
