/** The published shape of `outerleaf reach --json`. Lengths in mm, in the face frame. */
import * as z from "zod";

const screws = z
  .array(
    z.object({
      screw: z.string().describe("Id in the project's stock."),
      count: z.number().int(),
      driver: z.string().optional().describe("The bit that turns it, where the stock says so."),
    }),
  )
  .describe("Most first.");

export const shape = z.object({
  schemaVersion: z.literal(1),
  face: z.string(),
  mark: z.string().optional().describe("The piece that was asked for."),
  at: z.array(z.number()).length(2).optional().describe("[x, y] of the place that was asked for."),
  depth: z.enum(["membrane", "batten"]).optional().describe("How deep the place is reached."),
  steps: z
    .array(z.object({ mark: z.string(), kind: z.string(), screws, massKg: z.number() }))
    .describe("In the order in which they come off."),
  screws: screws.describe("Of all steps, most first."),
  screwCount: z.number().int(),
  massKg: z.number(),
  cautions: z.array(z.object({ key: z.string(), says: z.string() })),
});

export type ReachJson = z.output<typeof shape>;
