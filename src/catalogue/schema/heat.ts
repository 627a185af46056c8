/** `data/heat.json`: what reckoning the heat of a wall and of its sheets takes from standards and from common practice. */
import * as z from "zod";
import { figureSchema } from "./figure.ts";

export const heatFileSchema = z.strictObject({
  /** Resistances of a wall's surfaces, and of air at rest in its cavity. */
  surfaces: z.strictObject({
    inside: figureSchema,
    outside: figureSchema,
    /** Behind a well ventilated layer. */
    sheltered: figureSchema,
    stillAir: figureSchema,
  }),
  /** Openings up to which a layer of air counts as still, and from which as well ventilated. */
  airLayer: z.strictObject({ stillUpTo: figureSchema, openFrom: figureSchema }),
  fasteners: z.strictObject({
    factor: figureSchema,
    /** Share of the wall's loss up to which they need not be counted. */
    negligibleShare: figureSchema,
    /** Core of a screw beside its outer diameter. */
    coreShare: figureSchema,
  }),
  conductivity: z.strictObject({
    carbonSteel: figureSchema,
    stainlessSteel: figureSchema,
    aluminium: figureSchema,
    brass: figureSchema,
  }),
  cavityFlow: z.strictObject({ inletDischarge: figureSchema, outletDischarge: figureSchema }),
  /** A dark sheet in full sun, from the temperature at which it was fixed. */
  sunlitSheet: z.strictObject({
    fixedAt: figureSchema,
    darkAbsorption: figureSchema,
    sunOnWall: figureSchema,
  }),
});
export type HeatFile = z.infer<typeof heatFileSchema>;
