/** The published shape of `outerleaf rips --json`. Lengths in mm, areas in m². */
import * as z from "zod";

const yieldOf = z.object({
  widths: z.array(z.number()).describe("Rising."),
  yield: z.number().describe("Share of the boards' area that becomes sound strip."),
  shares: z.array(z.number()).describe("Share of the strips' area that each width gives."),
});

const choice = z.object({
  widths: z.array(z.number()),
  courses: z.number().int(),
  missedLines: z.number().int().describe("Lines of openings that no course meets."),
  gaps: z.object({ least: z.number(), most: z.number() }),
  pieces: z
    .array(z.object({ width: z.number(), had: z.number(), short: z.number() }))
    .describe("Length of pieces that the pile gives, and that it is short of; courses cut as those of now."),
  toBuyM2: z
    .number()
    .describe("Face of the pieces that the pile is short of, for all claddings of the pile."),
  leftM2: z.number().describe("Boards that stay whole."),
  beatenBy: z
    .number()
    .int()
    .describe("Choices no worse in evenness and in use of the pile, and better in one of them."),
  present: z.boolean().describe("The project has these widths."),
  edit: z
    .array(
      z.object({
        op: z.enum(["add", "remove", "replace"]),
        path: z.string(),
        value: z.unknown().optional(),
      }),
    )
    .describe("Makes them the project's (RFC 6902)."),
});

export const shape = z.object({
  schemaVersion: z.literal(1),
  rods: z
    .array(
      z.object({
        rod: z.string(),
        cladding: z.string(),
        lots: z.array(z.string()),
        boards: z.number().int(),
        boardsM2: z.number().describe("Of those lots, thick enough, as they lie."),
        curve: z.array(yieldOf).describe("Every width by itself, whatever the rod asks."),
        best: z.array(yieldOf).describe("Most strip by one, two and three widths."),
        choices: z.array(choice).describe("Least beaten first, then the most even."),
      }),
    )
    .describe("Rods whose boards come from the pile."),
});

export type RipsJson = z.output<typeof shape>;
