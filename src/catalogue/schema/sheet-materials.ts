/** `data/sheet-materials.json`: sheets of the facade, typical values only; the data sheet of the sheet rules. */
import * as z from "zod";
import { figureSchema, idSchema, quantitySchema, rangeSchema } from "./figure.ts";

const sheetMaterialSchema = z.strictObject({
  id: idSchema,
  /** Always true: a typical value never replaces the data sheet of the sheet that is bought. */
  deferToDataSheet: z.literal(true),
  density: quantitySchema.optional(),
  areaMass: quantitySchema.optional(),
  modulus: quantitySchema.optional(),
  bendingStrength: figureSchema.optional(),
  /** One entry a source; sources may disagree. */
  expansion: z.array(quantitySchema),
  /** Length change between dry and wet. */
  moistureMovement: quantitySchema.optional(),
  lengthwiseShareOfMovement: figureSchema.optional(),
  thickness: rangeSchema.optional(),
  largestWidth: figureSchema.optional(),
  largestLength: figureSchema.optional(),
  serviceTemperature: rangeSchema.optional(),
  rules: z.strictObject({
    joint: z.array(quantitySchema).optional(),
    fixingSpacingAlongBatten: rangeSchema.optional(),
    fixingSpacingAcross: rangeSchema.optional(),
    edgeDistance: z.array(rangeSchema).optional(),
    cornerDistance: rangeSchema.optional(),
    fixedPoints: figureSchema.optional(),
    fixedHole: rangeSchema.optional(),
    slidingHole: figureSchema.optional(),
    leastThickness: figureSchema.optional(),
  }),
});

const fibreCementClassSchema = z.strictObject({ id: idSchema, wet: figureSchema, ambient: figureSchema });

/** Limits either way for a size in millimetres between the bounds the key names. */
const fibreCementToleranceSchema = z.strictObject({
  id: idSchema,
  upTo600: figureSchema.optional(),
  from600To1000: figureSchema.optional(),
  upTo1000: figureSchema.optional(),
  from1000To1600: figureSchema,
  above1600: figureSchema,
  edgeStraightness: figureSchema,
  squareness: figureSchema,
});

export const sheetMaterialsFileSchema = z.strictObject({
  materials: z.array(sheetMaterialSchema),
  fibreCementClasses: z.array(fibreCementClassSchema),
  fibreCementTolerances: z.array(fibreCementToleranceSchema),
});
export type SheetMaterialsFile = z.infer<typeof sheetMaterialsFileSchema>;
export type SheetMaterial = z.infer<typeof sheetMaterialSchema>;
export type FibreCementClass = z.infer<typeof fibreCementClassSchema>;
export type FibreCementTolerance = z.infer<typeof fibreCementToleranceSchema>;
