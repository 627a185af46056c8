/** `data/fasteners.json`: screw gauges, stainless groups and how cladding boards are fixed. */
import * as z from "zod";
import {
  basisSchema,
  figureSchema,
  idSchema,
  jurisdictionSchema,
  rangeSchema,
  statementSchema,
} from "./figure.ts";

const gaugeSchema = z.strictObject({ id: idSchema, diameterInch: figureSchema, diameter: figureSchema });
const stainlessGroupSchema = z.strictObject({
  id: idSchema,
  /** European number of a typical steel of the group. */
  grade: z.string().regex(/^1\.4\d{3}$/),
  corrosionClass: z.array(z.enum(["I", "II", "III", "IV", "V"])),
  source: idSchema,
  basis: basisSchema,
});
const penetrationSchema = z.strictObject({
  id: idSchema,
  jurisdiction: jurisdictionSchema,
  least: figureSchema,
});

export const fastenersFileSchema = z.strictObject({
  gauges: z.array(gaugeSchema),
  stainlessGroups: z.array(stainlessGroupSchema),
  cautions: z.array(statementSchema),
  boardFixing: z.strictObject({
    oneFixingBelowWidth: figureSchema,
    endDistance: figureSchema,
    predrillWithinOfEnd: rangeSchema,
    pilotShareOfShank: figureSchema,
    greenOakOversize: figureSchema,
  }),
  penetration: z.array(penetrationSchema),
  /** Factors of the place in the sum that asks a corrosion resistance class; below nought. */
  corrosion: z.strictObject({ shore: figureSchema, unwashed: figureSchema }),
});
export type FastenersFile = z.infer<typeof fastenersFileSchema>;
export type Gauge = z.infer<typeof gaugeSchema>;
export type StainlessGroup = z.infer<typeof stainlessGroupSchema>;
export type Penetration = z.infer<typeof penetrationSchema>;
