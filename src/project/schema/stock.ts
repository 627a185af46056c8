/** What can be bought and what lies in the pile. */
import * as z from "zod";
import { clear, id, length, note, picture, size } from "./values.ts";
import { declaredScrew, timberGrade } from "./wind.ts";

const price = z.number().nonnegative();

/** A2 and A4: groups of stainless steel after ISO 3506. Coated: for timber with tannin, by its data sheet. */
const metal = z.enum([
  "A2",
  "A4",
  "coated steel",
  "hot-dip galvanized steel",
  "zinc-plated steel",
  "aluminium",
  "brass",
]);

export const stock = z.looseObject({
  note,
  currency: z.string().length(3).describe("ISO 4217 code."),
  sheets: z.array(
    z.looseObject({
      id,
      width: size,
      height: size,
      price: price.optional(),
      count: z.int().nonnegative().optional(),
    }),
  ),
  battens: z.array(
    z.looseObject({
      id,
      thickness: size,
      width: size,
      lengths: z.array(size).min(1),
      pricePerM: price.optional(),
      /** The lowest of the chosen code where absent. */
      grade: timberGrade.optional(),
    }),
  ),
  packers: z.array(size),
  screws: z.array(
    z.looseObject({
      id,
      use: z.enum(["sheet", "board", "batten"]),
      diameter: size,
      headDiameter: size,
      length: size,
      metal: metal.optional(),
      driver: z.string().min(1).optional().describe("The bit that turns it, as its box says."),
      price: price.optional(),
      declared: declaredScrew.optional(),
    }),
  ),
  /** Board lengths that can be bought where the pile runs out. */
  boards: z
    .array(
      z.looseObject({
        id,
        species: z.string().min(1),
        width: size,
        thickness: size,
        lengths: z.array(size).min(1),
        pricePerM: price.optional(),
      }),
    )
    .optional(),
  saw: z.looseObject({
    kerf: clear,
    sheetTrim: clear,
    boardEndTrim: clear,
    boardEdgeTrim: clear,
    table: z
      .looseObject({ length: size, width: size })
      .optional()
      .describe(
        "The largest part of a sheet, batten or board that lies held up while it is sawn, on a table or on horses, mm.",
      ),
    fence: size
      .optional()
      .describe(
        "The furthest that a cut through a sheet, or along a board, can be set off the nearer edge of the part, mm. Cuts across a batten or board are not made against a fence.",
      ),
    lift: z
      .number()
      .positive()
      .optional()
      .describe(
        "The heaviest part that those at the saw lift and turn, kg. For one person the lifting equation of NIOSH (publication 94-110, 1994) begins at 23 kg and takes off from there.",
      ),
  }),
});

export const pile = z.looseObject({
  note,
  lots: z.array(z.looseObject({ id, from: z.string(), species: z.string() })),
  boards: z.array(
    z.looseObject({
      id,
      lot: id,
      length: size,
      width: size,
      thickness: size,
      defects: z.array(z.looseObject({ kind: z.string(), from: length, to: length })),
      wane: z.looseObject({ edge: z.enum(["left", "right"]), width: size }).optional(),
      face: z
        .string()
        .optional()
        .describe(
          "What its good face looks like, by colour or depth of char. A wall takes as few lots, and of them as few looks, as the pile allows.",
        ),
      grade: z
        .string()
        .min(1)
        .max(40)
        .optional()
        .describe(
          "What it was sorted as by colour or depth of char, in a word of your own; boards of a lot with one grade look alike, whatever `face` says.",
        ),
      pictures: z.array(picture).optional().describe("Of the board as it lies in the pile."),
    }),
  ),
});
