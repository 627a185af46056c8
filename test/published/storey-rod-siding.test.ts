/**
 * Worked set-outs of courses between sill and head, from published text. Siding laps where our boards leave a gap, but the rod is the same:
 * so many equal courses fill the height between two lines, and all heights together are kept as even as they can be. Here a course is
 * written as a narrow board and a gap that together are its exposure; each gap lies under its board, so that k = n.
 *
 * Sources, both read as excerpts:
 * - Builder 3 & 2, Volume 2, NAVEDTRA 14044 (United States Navy, March 1994), exposure of bevel siding with figure 4-3: between the drip cap
 *   and the sill 61 in, six courses of 10 1/6 in; below the sill 31 in, three courses of 10 1/3 in.
 * - A builder's log of 23 May 2019 (fernlake.blogspot.com): shingles near 5 in, meeting the sills and heads of windows and the head of a garage
 *   door: 4 courses of 4 29/32 in, 11 of 5 1/32, 3 of 5 and 4 of 5 1/8.
 */
import { describe, expect, it } from "vitest";
import { type RodProblem, solveRod } from "../../src/setout/rod/index.ts";
import { chooseWidths } from "../../src/setout/rod-choice/index.ts";

const INCH = 25.4;

/** Heights from the bottom up, all in inches, as a rod whose boards are `board` wide and whose exposures lie within `exposures`. */
function siding(at: {
  heights: number[];
  board: number;
  exposures: [number, number];
  wished: number;
}): RodProblem {
  let from = 0;
  return {
    segments: at.heights.map((height, index) => {
      const start = from;
      from += height * INCH;
      return { id: `s${index}`, from: start, to: from, gapAtStart: true, gapAtEnd: false };
    }),
    widths: [at.board * INCH],
    gapBand: [(at.exposures[0] - at.board) * INCH, (at.exposures[1] - at.board) * INCH],
    preferredGap: (at.wished - at.board) * INCH,
    maxEqualTouching: undefined,
    secondaryLines: [],
  };
}

/** Courses and exposure in inches of each height. */
function exposures(problem: RodProblem): [courses: number, inches: number][] {
  const outcome = solveRod(problem);
  if (outcome.kind !== "solved") throw new Error(JSON.stringify(outcome));
  return outcome.best.segments.map(({ courses, gap }) => [
    courses.length,
    ((gap ?? 0) + (problem.widths[0] ?? 0)) / INCH,
  ]);
}

describe("bevel siding, 12 in wide with an exposure of about 10 in", () => {
  const bevel = siding({ heights: [31, 61], board: 8, exposures: [9.5, 10.5], wished: 10 });

  it("takes three courses of 10 1/3 in under the sill and six of 10 1/6 in beside the window", () => {
    const [below, beside] = exposures(bevel);
    expect(below?.[0]).toBe(3);
    expect(below?.[1]).toBeCloseTo(10 + 1 / 3, 5);
    expect(beside?.[0]).toBe(6);
    expect(beside?.[1]).toBeCloseTo(10 + 1 / 6, 5);
  });

  it("is as uneven as the text lets it be: by 1/6 in", () => {
    const outcome = solveRod(bevel);
    expect(outcome.kind === "solved" && outcome.best.gapSpread / INCH).toBeCloseTo(1 / 6, 5);
    const [only] = bevel.widths;
    const chosen = chooseWidths({ ...bevel, widths: { from: only ?? 0, to: only ?? 0 } });
    expect(chosen.kind === "ranked" && chosen.choices.map(({ rod }) => rod.merit.gapSpread / INCH)).toEqual([
      outcome.kind === "solved" ? outcome.best.gapSpread / INCH : undefined,
    ]);
  });
});

describe("shingles near 5 in between four lines", () => {
  it("are divided as the builder divided them, though the second height could hold twelve", () => {
    const heights = [4 * (4 + 29 / 32), 11 * (5 + 1 / 32), 3 * 5, 4 * (5 + 1 / 8)];
    const found = exposures(siding({ heights, board: 3, exposures: [4.5, 5.5], wished: 5 }));
    expect(found.map(([courses]) => courses)).toEqual([4, 11, 3, 4]);
    const wanted = [4 + 29 / 32, 5 + 1 / 32, 5, 5 + 1 / 8];
    for (const [index, [, inches]] of found.entries()) expect(inches).toBeCloseTo(wanted[index] ?? 0, 5);
    // 12 courses of 55.34 in would show 4.61 in each, within the same bounds.
    expect((heights[1] ?? 0) / 12).toBeGreaterThan(4.5);
  });
});
