/**
 * Places of a rule that hold by the same working: the governing one is worked in full, the others follow in a table with what differs,
 * each number still to be followed by hand.
 */
import type { Finding, WorkingInput } from "../../findings/finding.ts";
import { type Message, message } from "../../text/message.ts";
import { type Block, type BookType, block } from "./blocks.ts";
import { comparedOf, entryBlocks, quantity } from "./entry-blocks.ts";
import type { BookEntry } from "./model.ts";

/** Entries in their order, those that hold alike together behind the first of them. */
export function likeEntries(entries: readonly BookEntry[]): BookEntry[][] {
  const groups = new Map<string, BookEntry[]>();
  for (const entry of entries) {
    const key = likeness(entry) ?? entry.number;
    const group = groups.get(key);
    if (group) group.push(entry);
    else groups.set(key, [entry]);
  }
  return [...groups.values()];
}

/** All but the place, the values and the sentence that tells them; undefined of what is told by itself. */
function likeness({ finding, unsettled, sideBySide, waiver }: BookEntry): string | undefined {
  const { outcome, provisional, says, hint, working, source, unit } = finding;
  if (waiver || !HELD.includes(outcome)) return undefined;
  const inputs = working?.inputs.map(({ symbol, meaning, unit: own, basis }) => [
    symbol,
    meaning,
    own,
    basis,
  ]);
  return JSON.stringify([
    [outcome, provisional, says.key, hint, unit, source.kind, source.document, source.clause],
    [working?.formula, inputs],
    [unsettled, sideBySide],
  ]);
}

const HELD: readonly string[] = ["pass", "not applicable"];

export function likeBlocks(group: readonly BookEntry[], type: BookType): Block[] {
  const [first, ...others] = group;
  if (!first) return [];
  const worked = entryBlocks(first, type);
  if (others.length === 0) return worked;
  const said = others.some(({ finding }) => differing(finding, group).length === 0);
  const heading = message(said ? "book.like-places" : "book.like-workings");
  return [
    ...worked,
    block([{ text: heading, at: NUMBER_WIDTH, width: type.width - NUMBER_WIDTH, ink: "second" }], type, {
      withNext: true,
    }),
    ...others.map((one) => row(one, group, type)),
  ];
}

/** Of the columns (mm). */
const NUMBER_WIDTH = 20;
const PLACE_WIDTH = 44;
const RESULT_WIDTH = 46;

function row({ number, finding, place }: BookEntry, group: readonly BookEntry[], type: BookType): Block {
  const at = NUMBER_WIDTH + PLACE_WIDTH;
  const result = comparedOf(finding);
  const inputs = differing(finding, group).map(inputOf);
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

/** Inputs that are not the same at every place of the group. */
function differing({ working }: Finding, group: readonly BookEntry[]): WorkingInput[] {
  return (working?.inputs ?? []).filter(({ value }, i) =>
    group.some(({ finding }) => finding.working?.inputs[i]?.value !== value),
  );
}
