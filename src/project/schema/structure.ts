/** What the cladding hangs on: sheathing, studs and the solid bands between them. */
import * as z from "zod";
import { basis, clear, note, size, span } from "./values.ts";

const bandAtHeight = z.looseObject({
  kind: z.enum(["rim", "bottom plate", "top plates", "beam"]),
  y: span,
});
const bandUnderTop = z.looseObject({ kind: z.literal("top plates"), belowTop: size });
const bandOverOpenings = z.looseObject({ kind: z.literal("header"), aboveOpening: size });

/** What the frame is filled and lined with, for the wall's loss of heat. */
const heat = z.looseObject({
  note,
  fillWPerMK: z.number().min(0.005).max(5),
  timberWPerMK: z.number().min(0.05).max(1),
  sheathingWPerMK: z.number().min(0.01).max(5),
  /** Lining and all else inside the studs, without the surface (m²K/W). */
  innerM2KPerW: z.number().min(0).max(10),
  basis,
  source: z.string().optional(),
});

export const structure = z.looseObject({
  note,
  sheathingThickness: size,
  studs: z.looseObject({
    width: size,
    depth: size,
    spacing: size,
    /** Centre of the first stud from a face's left end, and of the last from its right end. */
    firstAt: clear,
    species: z.string().min(1),
    /** Studs on each side of an opening: trimmer and king make 2. */
    besideOpenings: z.int().min(0).max(4),
  }),
  heat: heat.optional(),
  bands: z.array(z.union([bandAtHeight, bandUnderTop, bandOverOpenings])),
});
