/** The share of a wall that its joints leave open. */
import { equation } from "./equation.ts";

export interface OpenJoints {
  readonly gapMm: number;
  readonly boardMm: number;
}

/** Open area over whole area, 0 to 1. */
export function openShare({ gapMm, boardMm }: OpenJoints): number {
  return gapMm / (boardMm + gapMm);
}

export const OPEN_SHARE = equation({
  name: "open-share",
  formula: "gapMm / (boardMm + gapMm)",
  inputs: [
    { key: "gapMm", unit: "mm", range: [0, 1000] },
    { key: "boardMm", unit: "mm", range: [1, 10_000] },
  ],
  result: { unit: "1" },
  source: { document: "Own geometry" },
  work: openShare,
});
