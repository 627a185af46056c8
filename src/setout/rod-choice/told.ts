import { type Message, message } from "../../text/message.ts";
import { fromGridSteps, sameLength } from "../../units/length.ts";
import type { GridRod } from "../rod/grid-rod.ts";
import type { RippedBoard } from "../rod/problem.ts";
import type { CountsFound } from "../rod/search.ts";
import { summarise } from "../rod/solution.ts";
import type { WidthChoice } from "./question.ts";
import type { Supply } from "./supply.ts";

/** A set of widths that earned its place, before it is put into words. */
export interface Chosen {
  readonly widths: readonly number[];
  readonly boards: readonly RippedBoard[];
  readonly rod: GridRod;
  readonly found: CountsFound;
}

/** Yields closer than this are the same with different noise. */
const SAME_YIELD = 1e-9;

/** The choices with their numbers, and why each stands behind the one before it. */
export function told(chosen: readonly Chosen[], supply: Supply, hasSupply: boolean): WidthChoice[] {
  const choices: WidthChoice[] = [];
  for (const one of chosen) {
    const { widths, boards, rod, found } = one;
    const bare = {
      widths: widths.map(fromGridSteps),
      rod: summarise(rod, found),
      ripped: boards,
      yield: hasSupply ? supply.yieldOf(rod, found) : undefined,
      short: supply.shortOf(rod, found),
    };
    const before = choices.at(-1);
    choices.push({ ...bare, says: numbersOf(bare), behind: before && behind(before, bare) });
  }
  return choices;
}

type Bare = Omit<WidthChoice, "says" | "behind">;

function numbersOf({ widths, rod, ripped, yield: part, short }: Bare): Message {
  const gaps = rod.segments.flatMap(({ gap }) => (gap === undefined ? [] : [gap]));
  const more = [
    ...(rod.merit.missedLines > 0
      ? [message("setout.rod.choice.missed", { lines: rod.merit.missedLines })]
      : []),
    ...ripped.map(({ segment, width }) => message("setout.rod.choice.ripped", { segment, width })),
    ...(part === undefined ? [] : [message("setout.rod.choice.yield", { percent: part * 100 })]),
    ...short.map(({ width, metres }) => message("setout.rod.choice.short", { width, metres })),
  ];
  return message("setout.rod.choice", {
    widths: widths.map((width) => message("setout.rod.choice.one", { width })),
    facts: [
      message("setout.rod.choice.gaps", {
        least: gaps.length === 0 ? 0 : Math.min(...gaps),
        most: gaps.length === 0 ? 0 : Math.max(...gaps),
        courses: rod.merit.boards,
      }),
      ...more,
    ],
  });
}

/** The first thing in the order of the ranking in which the one is behind the other. */
function behind(before: Bare, one: Bare): Message {
  const [a, b] = [before.rod.merit, one.rod.merit];
  if (one.ripped.length > before.ripped.length)
    return message("setout.rod.choice.behind.ripped", { boards: one.ripped.length });
  if (b.missedLines > a.missedLines)
    return message("setout.rod.choice.behind.missed", { lines: b.missedLines - a.missedLines });
  if (!sameLength(a.gapSpread, b.gapSpread))
    return message("setout.rod.choice.behind.spread", { by: b.gapSpread - a.gapSpread });
  const [more = 1, less = 1] = [before.yield, one.yield];
  if (more - less > SAME_YIELD)
    return message("setout.rod.choice.behind.yield", { percent: (more - less) * 100 });
  if (!sameLength(a.gapOffset, b.gapOffset))
    return message("setout.rod.choice.behind.offset", { by: b.gapOffset - a.gapOffset });
  if (b.boards > a.boards) return message("setout.rod.choice.behind.boards", { boards: b.boards - a.boards });
  return message("setout.rod.choice.behind.nothing");
}
