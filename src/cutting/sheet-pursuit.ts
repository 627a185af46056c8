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
