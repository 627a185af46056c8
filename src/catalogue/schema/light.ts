/** `data/light.json`: what ground and clear air do with light, the ultraviolet's share of it, and how much the sun sends. */
import * as z from "zod";
import { figureSchema } from "./figure.ts";

/** Shares that the ground throws back. */
const groundSchema = z.strictObject({ light: figureSchema, ultraviolet: figureSchema });

export const lightFileSchema = z.strictObject({
  ground: z.strictObject({ bare: groundSchema, snow: groundSchema, snowFromDepth: figureSchema }),
  ultravioletShare: z.strictObject({ beam: figureSchema, sky: figureSchema }),
  air: z.strictObject({
    ozone: figureSchema,
    water: figureSchema,
    haze380: figureSchema,
    haze500: figureSchema,
    forwardShare: figureSchema,
    pressure: figureSchema,
  }),
  sun: z.strictObject({ constant: figureSchema }),
});
export type LightFile = z.infer<typeof lightFileSchema>;
