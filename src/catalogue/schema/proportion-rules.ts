/** `data/proportion-rules.json`: what sources allow of a board's width, its gaps and its joints. They disagree. */
import * as z from "zod";
import { figureSchema, idSchema, jurisdictionSchema, rangeSchema } from "./figure.ts";

const proportionRuleSchema = z.strictObject({
  id: idSchema,
  jurisdiction: jurisdictionSchema,
  widthToThickness: rangeSchema.optional(),
  leastThickness: figureSchema.optional(),
  largestWidth: figureSchema.optional(),
  largestWidthSmallMovement: figureSchema.optional(),
  largestWidthTongueAndGroove: figureSchema.optional(),
});
const openJointRuleSchema = z.strictObject({
  id: idSchema,
  jurisdiction: jurisdictionSchema.optional(),
  gap: rangeSchema,
  bevel: figureSchema.optional(),
});
const battenCentresRuleSchema = z.strictObject({
  id: idSchema,
  /** Largest centres as a multiple of the board's thickness. */
  perThickness: figureSchema.optional(),
  spacing: figureSchema.optional(),
});

export const proportionRulesFileSchema = z.strictObject({
  proportions: z.array(proportionRuleSchema),
  openJoints: z.array(openJointRuleSchema),
  buttJoints: z.strictObject({ spacingAlongRun: figureSchema, offsetToNeighbour: figureSchema }),
  battenCentres: z.array(battenCentresRuleSchema),
});
export type ProportionRulesFile = z.infer<typeof proportionRulesFileSchema>;
export type ProportionRule = z.infer<typeof proportionRuleSchema>;
export type OpenJointRule = z.infer<typeof openJointRuleSchema>;
export type BattenCentresRule = z.infer<typeof battenCentresRuleSchema>;
