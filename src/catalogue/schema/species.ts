/** `data/species.json`: how woods and commercial groups of woods move, weigh and last. */
import * as z from "zod";
import { figureSchema, idSchema, quantitySchema, rangeSchema, statementSchema } from "./figure.ts";

const speciesSchema = z.strictObject({
  id: idSchema,
  kind: z.enum(["species", "group"]),
  botanical: z.string().min(1).optional(),
  /** Green to ovendry, percent of the green dimension. */
  shrinkageRadial: figureSchema.optional(),
  shrinkageTangential: figureSchema.optional(),
  /** Share of the dimension for one point of moisture content, within 6–14 %. */
  coefficientRadial: figureSchema.optional(),
  coefficientTangential: figureSchema.optional(),
  /** Only where it is known to differ from the usual value in `rules`. */
  fibreSaturation: figureSchema.optional(),
  /** Ovendry mass over green volume. */
  specificGravityGreen: figureSchema.optional(),
  /** Ovendry mass over volume at 12 % moisture content. */
  specificGravityAt12: figureSchema.optional(),
  /** Ovendry basis, for fastener formulae only. */
  specificGravityFastener: figureSchema.optional(),
  densityAt12: quantitySchema.optional(),
  /** Modulus of elasticity in bending at 12 % moisture content, along the grain. */
  modulusAt12: figureSchema.optional(),
  durability: statementSchema.optional(),
  cautions: z.array(statementSchema).optional(),
});

export const speciesFileSchema = z.strictObject({
  rules: z.strictObject({
    coefficientAcrossGrainSoftwood: figureSchema,
    coefficientInPlanePlywood: figureSchema,
    coefficientAlongGrain: figureSchema,
    shrinkageLongitudinal: rangeSchema,
    fibreSaturation: figureSchema,
    linearRangeMoisture: rangeSchema,
    decayMoisture: rangeSchema,
    hysteresisAtHalfHumidity: rangeSchema,
    expansionAcrossGrain: rangeSchema,
    expansionAlongGrain: figureSchema,
  }),
  species: z.array(speciesSchema),
});
export type SpeciesFile = z.infer<typeof speciesFileSchema>;
export type Species = z.infer<typeof speciesSchema>;
