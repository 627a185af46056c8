/** The published shape of `outerleaf saw --json`. Lengths are in the list's own unit. */
import * as z from "zod";
import { claim, offcut, placed, reason, searched, span, tree } from "../../output/json/shapes/cutting.ts";

const place = z.number().int();

const common = {
  id: z.string(),
  unplaced: z.array(z.object({ item: place, count: z.number().int(), reason })),
  ...claim,
  ...searched,
  problems: z
    .array(z.unknown())
    .describe("What the independent check holds against the plan; none for one that can be sawn."),
};

const sheets = z.object({
  ...common,
  kind: z.literal("2d"),
  sheets: z.array(
    z.object({
      sheet: place.describe("Its place in the list's sheets, from 0."),
      number: place
        .optional()
        .describe("Its number among all sheets, row by row from 0, where it has defects."),
      placements: z.array(z.object({ item: place, ...placed })),
      tree,
      offcuts: z.array(offcut),
    }),
  ),
});

const bars = z.object({
  ...common,
  kind: z.literal("1d"),
  bars: z.array(
    z.object({
      stock: place.describe("Its place in the list's stock, from 0."),
      board: z
        .object({ board: place, from: z.number() })
        .optional()
        .describe(
          "Where it is a sound stretch of a board: the board's place in boards, and its start there.",
        ),
      pieces: z.array(z.object({ item: place, from: z.number(), to: z.number() })),
      rests: z.array(span),
    }),
  ),
});

export const shape = z.object({
  schemaVersion: z.literal(1),
  answers: z.array(z.discriminatedUnion("kind", [sheets, bars])).describe("One a list, in their order."),
  problems: z
    .array(
      z.object({
        code: z.enum([
          "not-an-object",
          "not-a-list",
          "not-a-number",
          "out-of-range",
          "unsupported",
          "not-together",
          "not-sound",
        ]),
        where: z.string().describe("JSON Pointer (RFC 6901)."),
        value: z.unknown().optional(),
        says: z.string(),
      }),
    )
    .describe("Lists with problems get no answer; then the command ends with code 2."),
});
