/** The published shape of `outerleaf lay-again --json`. Lengths in mm, in the face frame. */
import * as z from "zod";
import { findingShape } from "../../output/json/shapes/finding.ts";

const span = z.tuple([z.number(), z.number()]);
const rect = z.object({ x: span, y: span });

const gap = z.object({
  kind: z.enum(["joint", "clearance"]),
  marks: z.array(z.string()),
  opening: z.string().optional(),
  side: z.enum(["left", "right", "sill", "head"]).optional(),
  nominal: z.number().describe("As set out."),
  unmoved: z.number().describe("As it would be with nothing moved."),
  after: z.number(),
  band: span,
});

const piece = z.object({
  mark: z.string(),
  come: z.enum(["uncut", "cut", "finished", "fixed"]),
  fate: z.enum(["as it is", "moved", "new size", "trimmed", "made again"]),
  before: rect,
  after: rect,
  stock: z.string().optional().describe("What it comes out of, where it is cut anew."),
  price: z.number().optional().describe("Of that stock, in the project's currency."),
});

export const shape = z.object({
  schemaVersion: z.literal(1),
  faces: z.array(
    z.object({
      face: z.string(),
      possible: z.boolean(),
      cost: z.number().optional().describe("Of re-cuts, by the file's weights."),
      least: z
        .number()
        .optional()
        .describe("No layout costs less; the same as cost where the search came to its end."),
      share: z.number().optional().describe("Of its band, that the worst gap takes."),
      pieces: z.array(piece),
      gaps: z.array(gap),
      standing: z.array(gap).describe("Between things that are fixed, out of their bands."),
      choices: z.array(
        z.object({
          opening: z.string(),
          side: z.enum(["left", "right", "sill", "head"]),
          drawn: z.number(),
          measured: z.number(),
          choices: z.array(
            z.object({
              kind: z.enum(["absorb", "trim", "remake"]),
              possible: z.boolean(),
              cost: z.number().optional(),
              marks: z.array(z.string()),
            }),
          ),
        }),
      ),
    }),
  ),
  edit: z
    .array(
      z.object({ op: z.enum(["add", "remove", "replace"]), path: z.string(), value: z.unknown().optional() }),
    )
    .describe("JSON Patch (RFC 6902) that takes the layout."),
  written: z.object({ file: z.string(), bytes: z.number().int(), sha256: z.string() }).optional(),
  newlyFailing: z
    .array(findingShape)
    .describe("Of the design with the layout taken, against the design before."),
  findings: z.array(findingShape),
});

export type LayAgainJson = z.output<typeof shape>;
