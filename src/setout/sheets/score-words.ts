/** A layout's score in words, and the next best one beside it. */
import { type Message, message } from "../../text/message.ts";
import type { Layout } from "./columns.ts";
import type { Score } from "./score.ts";

/** What the score is made of; terms of nothing are left out. */
export function scoreWords(score: Score): Message {
  const terms = [
    message("setout.sheets.score.sheets", { count: score.sheets }),
    ...termIf("setout.sheets.score.oversize", score.oversize),
    ...termIf("setout.sheets.score.notches", score.notches),
    ...termIf("setout.sheets.score.slivers", score.slivers),
    ...termIf("setout.sheets.score.misaligned", score.misaligned),
    ...termIf("setout.sheets.score.backing", score.backing),
  ];
  return message("setout.sheets.score", { total: tenth(score.total), terms });
}

function termIf(key: string, count: number): Message[] {
  return count === 0 ? [] : [message(key, { count })];
}

/** What the best rejected layout would cost beside the chosen one. */
export function nextBest(best: Layout, runnerUp: Layout): Message {
  return message("setout.sheets.next", {
    more: tenth(runnerUp.score.total - best.score.total),
    score: scoreWords(runnerUp.score),
  });
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
