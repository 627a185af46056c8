/** The published shape of `outerleaf cut --json`. */
import * as z from "zod";
import { claim, offcut, placed, reason, searched, span, tree } from "./cutting.ts";
import { findingsShape } from "./finding.ts";

const costIn = z.enum(["money", "m2", "m"]).describe("What cost and bound are counted in.");
const unplaced = z.array(z.object({ mark: z.string(), reason }));

const sheetPart = z.object({
  claddings: z.array(z.string()),
  material: z.string(),
  thickness: z.number(),
  kerf: z.number(),
  costIn,
  settings: z.number().int().describe("How often fence or stop is set; what is cut alike is cut together."),
  ...claim,
  ...searched,
  sheets: z.array(
    z.object({
      stock: z.string(),
      index: z.number().int().describe("Among the sheets used of this stock, from 0."),
      width: z.number(),
      height: z.number(),
      placements: z.array(z.object({ mark: z.string(), ...placed })),
      offcuts: z.array(offcut),
      tree,
    }),
  ),
  unplaced,
});

const bars = z.array(
  z.object({
    stock: z.string(),
    index: z.number().int(),
    length: z.number(),
    pieces: z.array(z.object({ mark: z.string(), from: z.number(), to: z.number() })),
    rests: z.array(span),
  }),
);

const lengthPart = z.object({
  use: z.enum(["battens", "backing", "boards"]),
  stock: z.string().optional(),
  material: z.string(),
  width: z.number(),
  thickness: z.number(),
  kerf: z.number(),
  costIn,
  settings: z.number().int().describe("How often fence or stop is set; what is cut alike is cut together."),
  ...claim,
  ...searched,
  bars,
  unplaced,
});

const rips = z.object({
  ...claim,
  ...searched,
  leftOut: z
    .object({ area: z.number(), least: z.number() })
    .describe("Area of the pieces that the pile does not give, and the least that any plan leaves out, m²."),
  kerf: z.number(),
  straighten: z.number().describe("Taken off each edge; wane comes off besides."),
  endTrim: z.number(),
  boards: z.array(
    z.object({
      board: z.string(),
      lot: z.string(),
      length: z.number(),
      width: z.number(),
      thickness: z.number(),
      face: z.string().optional().describe("What the project says of its face."),
      grade: z.string().optional().describe("What it was sorted as by colour or depth of char."),
      straight: span.describe("Across the board, from its left edge: where strips may lie."),
      sound: z.array(span).describe("Along the board, between its defects."),
      strips: z.array(z.object({ id: z.string(), section: z.string(), across: span })),
    }),
  ),
  supply: z
    .array(
      z.object({
        section: z.string(),
        cladding: z.string(),
        width: z.number(),
        wanted: z.number(),
        had: z.number(),
        short: z.number(),
        byLot: z.array(z.object({ lot: z.string(), had: z.number() })),
      }),
    )
    .describe("Sound length of strip, mm."),
  lots: z
    .array(
      z.object({
        lot: z.string(),
        cutM2: z.number(),
        restsM2: z.number().describe("Rests of its strips that are long enough to keep."),
        wholeM2: z.number().describe("Boards that stay whole."),
        share: z
          .number()
          .describe("Rests and whole boards over what is cut; common practice keeps 0.02 to 0.05."),
      }),
    )
    .describe("Lots that pieces are cut from, and what is left of them to mend with."),
  bars,
});

const toFind = z.object({
  cladding: z.string(),
  species: z.string(),
  width: z.number(),
  thickness: z.number(),
  pieces: z.array(z.object({ mark: z.string(), length: z.number() })),
});

const counts = z.object({
  sheets: z.number().int(),
  lengths: z.number().int().describe("Bought lengths of battens, backing and boards."),
  boards: z.number().int().describe("Of the pile, ripped."),
  missing: z.number().int().describe("Pieces without a place."),
  cost: z.number(),
});

export const shape = z.object({
  schemaVersion: z.literal(1),
  currency: z.string(),
  begun: z
    .array(z.object({ stock: z.string(), done: z.array(z.string()), still: z.array(z.string()) }))
    .describe("With --since: sheets, bars and boards that are begun, and the marks still to cut from them."),
  spoiled: z
    .object({ count: z.number().int(), before: counts.nullable(), after: counts })
    .nullable()
    .describe("What the project tells of as spoiled, and what is sawn without it; null where nothing is."),
  sheets: z.array(sheetPart),
  lengths: z.array(lengthPart).describe("Battens, backing, and boards that are bought."),
  rips: rips.nullable().describe("Null where no cladding takes boards from a pile."),
  toFind: z.array(toFind).describe("Boards that neither the pile nor the stock can give."),
  ...claim,
  findings: findingsShape,
});

export type CutJson = z.output<typeof shape>;
