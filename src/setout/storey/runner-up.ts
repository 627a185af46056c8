/** The next best rod and what it would cost: why the chosen one was chosen. */
import { type Message, message } from "../../text/message.ts";
import { sameLength } from "../../units/length.ts";
import type { ClearOfDucts, RodMerit, RodSolution } from "../rod/index.ts";
import type { Solved } from "./solved-findings.ts";

/** In words; nothing where there is no other rod. */
export function runnerUpOf({ best, alternatives: [next] }: Solved): Message | undefined {
  if (best.clearOf) return besideDucts(best.clearOf);
  if (next === undefined) return undefined;
  return message("setout.rod.runner-up", { counts: countsOf(next), cost: costOf(best.merit, next.merit) });
}

/** The rod that would have come first, and what ducts leave of its boards. */
export function besideDucts({ without, sliver: { of, left, width } }: ClearOfDucts): Message {
  const { gapSpread: spread } = without;
  return message("setout.rod.runner-up.duct", { counts: countsOf(without), of, left, width, spread });
}

/** `3×94 + 5×126 / …`, a part for each segment from the base up; figures read alike in every language. */
function countsOf({ segments }: Pick<RodSolution, "segments">): string {
  return segments
    .map(({ counts }) =>
      counts
        .filter(({ count }) => count > 0)
        .map(({ width, count }) => `${count}×${Number(width.toFixed(1))}`)
        .join(" + "),
    )
    .join(" / ");
}

/** The first thing in the order of merit by which the next best is worse. */
function costOf(best: RodMerit, next: RodMerit): Message {
  if (next.missedLines > best.missedLines)
    return message("setout.rod.runner-up.lines", { missed: next.missedLines, best: best.missedLines });
  if (!sameLength(next.gapSpread, best.gapSpread))
    return message("setout.rod.runner-up.spread", { spread: next.gapSpread, best: best.gapSpread });
  if (!sameLength(next.gapOffset, best.gapOffset))
    return message("setout.rod.runner-up.offset", { by: next.gapOffset - best.gapOffset });
  return message("setout.rod.runner-up.boards", { boards: next.boards, best: best.boards });
}
