/** The choice of rip widths as text: the best in a table, evenness beside what the pile gives. */
import type { RipChoice, RipChoices } from "../../cutting/facade/rip-choice.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayLength, sayNumber } from "../../text/say.ts";
import { table } from "./table.ts";

const SHOWN = 12;
const MM_PER_M = 1000;

export function printRips(found: RipChoices, reader: Reader): string {
  const tell = (key: string, values = {}): string => say(message(`cli.rips.${key}`, values), reader);
  const { rod, cladding, lots, boards, boardsM2, best, choices } = found;
  const shown = choices.filter((one, at) => at < SHOWN || one.present);
  const unbeaten = choices.filter(({ beatenBy }) => beatenBy === 0).length;
  return [
    tell("rod", { rod, cladding, lots, count: boards, area: boardsM2 }),
    ...best.map(({ widths, yield: part }) =>
      tell("best", { widths: widthsText(widths, reader), percent: part * 100 }),
    ),
    "",
    ...(shown.length > 0
      ? [rows(shown, reader), "", tell("unbeaten", { count: unbeaten })]
      : [tell("no-rod")]),
    "",
  ].join("\n");
}

function widthsText(widths: readonly number[], reader: Reader): string {
  return widths.map((width) => sayLength(width, reader)).join(" + ");
}

function rows(choices: readonly RipChoice[], reader: Reader): string {
  const word = (key: string): string => say(message(`cli.rips.${key}`), reader);
  const head = ["", ...["widths", "courses", "missed", "gaps", "short", "buy", "left"].map(word), ""];
  const lines = choices.map((one, at) => [
    String(at + 1),
    widthsText(one.widths, reader),
    String(one.courses),
    String(one.missedLines),
    `${sayLength(one.gaps.least, reader)} – ${sayLength(one.gaps.most, reader)}`,
    one.pieces.map(({ short }) => sayNumber(short / MM_PER_M, 1, reader)).join(" + "),
    sayNumber(one.toBuyM2, 2, reader),
    sayNumber(one.leftM2, 2, reader),
    one.present ? word("present") : "",
  ]);
  return table([head, ...lines], { indent: 2, right: [0, 2, 3, 6, 7] });
}
