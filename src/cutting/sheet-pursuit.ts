import type { PieceType, Sheet } from "./sheet-nodes.ts";

/** What a search for a cheaper layout goes by: its goal and patience, and how good a layout is on the way. */
export interface Pursuit {
  /** What all sheets may cost. */
  readonly limit: number;
  readonly steps: number;
  /** How far back a layout is compared. */
  readonly history: number;
  /** Steps without a better layout after which it gives up or, if patient, looks twice as far back from then on. */
  readonly stagnation: number;
  readonly patient: boolean;
}

/** How good a layout is on the way to a goal: less area waits; then more worth is left over. */
export interface Standing {
  readonly waiting: number;
  readonly worth: number;
}

export function isWorse(a: Standing, b: Standing): boolean {
  return a.waiting > b.waiting || (a.waiting === b.waiting && a.worth < b.worth);
}

/** Of a leftover: one large is worth more than several small. */
export function worthOf(width: number, height: number): number {
  return (width * height) ** 2;
}

export function standingOf(
  sheets: readonly Sheet[],
  waiting: readonly number[],
  types: readonly PieceType[],
): Standing {
  let area = 0;
  for (let index = 0; index < types.length; index++) {
    const { width, height } = types[index] as PieceType;
    area += width * height * (waiting[index] ?? 0);
  }
  let worth = 0;
  for (const sheet of sheets) {
    if (sheet.worth < 0) {
      sheet.worth = 0;
      for (const { width, height } of sheet.leftovers) sheet.worth += worthOf(width, height);
    }
    worth += sheet.worth;
  }
  return { waiting: area, worth };
}

/** Place of the type of highest rank. */
export function highest(waiting: readonly number[], rank: readonly number[]): number {
  let best = 0;
  for (let at = 1; at < waiting.length; at++) {
    if ((rank[waiting[at] ?? 0] ?? 0) > (rank[waiting[best] ?? 0] ?? 0)) best = at;
  }
  return best;
}
