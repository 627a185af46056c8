/** What holds alike, on paper: the governing place in full, then a line a place, each number still to be followed by hand. */
import type { WorkingInput } from "../../findings/finding.ts";
import { type Message, message } from "../../text/message.ts";
import { type Block, type BookType, block } from "./blocks.ts";
import { comparedOf, entryBlocks, quantity } from "./entry-blocks.ts";
import { type LikeRow, likeRows } from "./like.ts";
import type { BookEntry } from "./model.ts";

export function likeBlocks(group: readonly BookEntry[], type: BookType): Block[] {
  const [first] = group;
  if (!first) return [];
  const worked = entryBlocks(first, type);
  const like = likeRows(group);
  if (!like) return worked;
  const { heading, rows } = like;
  return [
    ...worked,
    block([{ text: heading, at: NUMBER_WIDTH, width: type.width - NUMBER_WIDTH, ink: "second" }], type, {
      withNext: true,
    }),
    ...rows.map((one) => row(one, type)),
  ];
}

/** Of the columns (mm). */
const NUMBER_WIDTH = 20;
const PLACE_WIDTH = 44;
const RESULT_WIDTH = 46;

function row({ entry: { number, finding, place }, inputs: differing }: LikeRow, type: BookType): Block {
  const at = NUMBER_WIDTH + PLACE_WIDTH;
  const result = comparedOf(finding);
  const inputs = differing.map(inputOf);
  const rest = type.width - at - (result ? RESULT_WIDTH : 0) - 2;
  return block(
    [
      { text: number, at: 0, width: NUMBER_WIDTH - 1, weight: "bold" },
      { text: place, at: NUMBER_WIDTH, width: PLACE_WIDTH - 2, ink: "second" },
      { text: inputs.length > 0 ? message("book.inputs", { inputs }) : finding.says, at, width: rest },
      ...(result ? [{ text: result, at: type.width - RESULT_WIDTH, width: RESULT_WIDTH }] : []),
    ],
    type,
    { ruled: true, anchor: number },
  );
}

function inputOf({ symbol, value, unit }: WorkingInput): Message {
  return message("book.input", { symbol, value: quantity(value, unit) });
}
