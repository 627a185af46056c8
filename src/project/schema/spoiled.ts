/** What was planned to be sawn and is spoiled: a sheet that broke, a length that split, a board of the pile that is rotten. */
import * as z from "zod";
import { id, note, size } from "./values.ts";

const pieces = z
  .array(z.string().min(1))
  .describe("Marks of the pieces that were planned on it: they tell it from others of its stock.");

export const spoiled = z.discriminatedUnion("kind", [
  z.looseObject({ kind: z.literal("sheet"), stock: id, pieces, note }),
  z.looseObject({
    kind: z.literal("length"),
    stock: id.describe("Id of the batten or board in stock."),
    length: size.describe("The bought length that it was."),
    pieces,
    note,
  }),
  z.looseObject({ kind: z.literal("board"), board: id.describe("Of the pile."), note }),
]);

export type Spoiled = z.output<typeof spoiled>;
