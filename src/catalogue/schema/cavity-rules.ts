/** `data/cavity-rules.json`: named rule sets on the cavity, its vents and its fire stops. Sources disagree widely. */
import * as z from "zod";
import { figureSchema, idSchema, jurisdictionSchema, rangeSchema } from "./figure.ts";

const cavityRuleSetSchema = z.strictObject({
  id: idSchema,
  jurisdiction: jurisdictionSchema,
  /** Least depth behind cladding with closed joints. */
  depth: figureSchema,
  localDepth: figureSchema.optional(),
  depthRange: rangeSchema.optional(),
  depthPerHeight: figureSchema.optional(),
  depthOpenJoint: figureSchema.optional(),
  depthBaffledJoint: figureSchema.optional(),
  depthSevereExposure: figureSchema.optional(),
  counterBattenDepth: figureSchema.optional(),
  drainageMaterialDepth: figureSchema.optional(),
  drainageMaterialOpenShare: figureSchema.optional(),
  looseCladdingDepth: figureSchema.optional(),
  looseCladdingBottomDepth: figureSchema.optional(),
  /** Least free area in, and again out, per metre of wall. */
  ventArea: figureSchema.optional(),
  ventShareOfCavity: figureSchema.optional(),
  ventSlot: figureSchema.optional(),
  profiledSheetArea: figureSchema.optional(),
  openJoint: figureSchema.optional(),
  battenBevel: figureSchema.optional(),
  dripEdge: figureSchema.optional(),
});

/** Largest stretches of cavity without a fire stop, or how far a stop stands out. */
const fireStopRuleSchema = z.strictObject({
  id: idSchema,
  jurisdiction: jurisdictionSchema,
  horizontal: figureSchema.optional(),
  vertical: figureSchema.optional(),
  anyDirection: figureSchema.optional(),
  area: figureSchema.optional(),
  exemptDepth: figureSchema.optional(),
  projection: figureSchema.optional(),
  projectionRestricted: figureSchema.optional(),
});

export const cavityRulesFileSchema = z.strictObject({
  ruleSets: z.array(cavityRuleSetSchema),
  fireStops: z.array(fireStopRuleSchema),
});
export type CavityRulesFile = z.infer<typeof cavityRulesFileSchema>;
export type CavityRuleSet = z.infer<typeof cavityRuleSetSchema>;
export type FireStopRule = z.infer<typeof fireStopRuleSchema>;
