import { sameLength } from "../../units/length.ts";

/** A stretch of boards of one width that touch. */
export interface TouchingRun {
  /** Place of its first board in the row, from 0. */
  readonly first: number;
  readonly count: number;
  /** Millimetres. */
  readonly width: number;
}

/** The runs of equal widths along a row of boards, in order. */
export function runsTouching(courses: readonly { readonly width: number }[]): TouchingRun[] {
  const runs: TouchingRun[] = [];
  courses.forEach(({ width }, place) => {
    const last = runs.at(-1);
    if (last !== undefined && sameLength(last.width, width))
      runs[runs.length - 1] = { ...last, count: last.count + 1 };
    else runs.push({ first: place, count: 1, width });
  });
  return runs;
}
