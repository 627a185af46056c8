/** One entry of the book on paper: where, what, the working with its inputs, the comparison, the clause, and what is open. */
import type { Finding, Working } from "../../findings/finding.ts";
import { type Message, message } from "../../text/message.ts";
import { type SceneText, symbolOf } from "../model.ts";
import { type Block, type BookType, block } from "./blocks.ts";
import type { BookEntry } from "./model.ts";

export function outcomeOf({ outcome, provisional }: Finding): Message {
  return provisional ? message("book.provisional") : message("drawing.term", { word: outcome });
}

export function entryBlocks(entry: BookEntry, type: BookType): Block[] {
  const { width } = type;
  const { number, finding, place, waiver, sideBySide } = entry;
  const { outcome, says, hint, working, where } = finding;
  const name = symbolOf(finding);
  const line = (text: SceneText, indent = 0): Block =>
    block([{ text, at: indent, width: width - indent }], type);
  return [
    block(
      [
        { text: number, at: 0, width: 22, weight: "bold" },
        { text: outcomeOf(finding), at: 27, width: 43, weight: "bold" },
        { text: place, at: 72, width: width - 72, ink: "second" },
      ],
      type,
      { ruled: true, withNext: true, anchor: number, ...(name && { symbol: { name, at: 24 } }) },
    ),
    line(says),
    ...(hint ? [line(message("book.hint", { hint }))] : []),
    ...(outcome === "cannot evaluate" && where.path !== undefined
      ? [line(message("book.missing-at", { path: where.path }))]
      : []),
    ...(working ? workingBlocks(working, type) : []),
    ...comparison(finding, type),
    ...(sideBySide.length > 0 ? [{ ...line(message("book.side-by-side")), withNext: true as const }] : []),
    ...sideBySide.map((one) => line(one, 5)),
    block([{ text: sourceOf(finding), at: 0, width, ink: "second" }], type),
    ...unsettledBlocks(entry, type),
    ...(waiver
      ? [block([{ text: message("book.waived", { ...waiver }), at: 0, width, weight: "bold" }], type)]
      : []),
  ];
}

/** Left edges of what a working names (mm). */
const WORD_AT = 5;
const MATH_AT = 42;

function workingBlocks({ formula, inputs, substituted }: Working, type: BookType): Block[] {
  const { width } = type;
  const row = (word: string, text: string): Block =>
    block(
      [
        { text: message(word), at: WORD_AT, width: MATH_AT - WORD_AT - 2, ink: "second" },
        { text: message("book.math", { text }), at: MATH_AT, width: width - MATH_AT },
      ],
      type,
      { withNext: true },
    );
  return [
    row("book.formula", formula),
    ...inputs.map(({ symbol, meaning, value, unit, basis }) =>
      block(
        [
          { text: symbol, at: WORD_AT, width: MATH_AT - WORD_AT - 2, weight: "bold" },
          { text: meaning, at: MATH_AT, width: width - MATH_AT - 68 },
          { text: quantity(value, unit), at: width - 66, width: 42, end: true },
          { text: message("drawing.term", { word: basis }), at: width - 21, width: 21, ink: "second" },
        ],
        type,
        { withNext: true },
      ),
    ),
    row("book.with-numbers", substituted),
  ];
}

const WORDS: readonly string[] = ["class", "weeks"];

export function quantity(value: number, unit: string): Message {
  if (unit === "1") return message("book.number", { value });
  if (unit === "mm") return message("book.length", { value });
  return message("book.quantity", {
    value,
    unit: WORDS.includes(unit) ? message(`book.unit.${unit}`) : unit,
  });
}

/** What is asked against what is allowed; undefined where nothing is compared. */
export function comparedOf({ demand, limit, unit = "1", ratio }: Finding): Message | undefined {
  if (demand === undefined || limit === undefined) return undefined;
  const values = { demand: quantity(demand, unit), limit: quantity(limit, unit) };
  return ratio === undefined || !Number.isFinite(ratio)
    ? message("book.compared", values)
    : message("book.compared-ratio", { ...values, ratio });
}

function comparison(finding: Finding, type: BookType): Block[] {
  const text = comparedOf(finding);
  // Neither a result without its source nor a working without its result at the foot of a page.
  return text === undefined
    ? []
    : [block([{ text, at: 0, width: type.width, weight: "bold" }], type, { withNext: true })];
}

function sourceOf({ source: { kind, document, clause } }: Finding): Message {
  const named = [document, clause].filter((part) => part !== undefined);
  const source = kind === "document" ? named : [message(`book.source.${kind}`), ...named];
  return message("book.source", { source });
}

/** A line for each thing that settles something, with the inputs that it settles. */
function unsettledBlocks({ finding, unsettled }: BookEntry, type: BookType): Block[] {
  const { width } = type;
  if (unsettled.length === 0) return [];
  const settled = new Map<string, { by: Message; symbols: string[] }>();
  for (const { symbol, by } of unsettled) {
    const own = settled.get(by.key) ?? { by, symbols: [] };
    settled.set(by.key, own);
    if (symbol !== undefined) own.symbols.push(symbol);
  }
  return [
    block(
      [
        {
          text: message(finding.provisional ? "book.settles-pass" : "book.settles"),
          at: 0,
          width,
          ink: "second",
        },
      ],
      type,
      { withNext: true },
    ),
    ...[...settled.values()].map(({ by, symbols }) =>
      block(
        [
          {
            text:
              symbols.length > 0 ? message("book.settles-symbols", { symbols: symbols.join(", "), by }) : by,
            at: WORD_AT,
            width: width - WORD_AT,
          },
        ],
        type,
      ),
    ),
  ];
}
