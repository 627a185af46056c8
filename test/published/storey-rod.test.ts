/**
 * Known answers for the storey rod. Source: common practice of setting out open-joint boards between control lines (sum of widths plus equal
 * gaps fills each storey segment; no more than three equal widths touch). The segments are those of an invented demo building: base at -50, sill line
 * 900, head line 2122, top line 3010; boards of 94 and 126 mm. Each expected value is worked by hand beside its check.
 */
import { describe, expect, it } from "vitest";
import { type RodProblem, type RodSolution, runsTouching, solveRod } from "../../src/setout/rod/index.ts";

const segments = [
  { id: "base to sill", from: -50, to: 900, gapAtStart: false, gapAtEnd: false },
  { id: "sill to head", from: 900, to: 2122, gapAtStart: true, gapAtEnd: false },
  { id: "head to top", from: 2122, to: 3010, gapAtStart: true, gapAtEnd: false },
] as const;

const withoutLook: RodProblem = {
  segments,
  widths: [94, 126],
  gapBand: [8, 12],
  maxEqualTouching: undefined,
  secondaryLines: [],
};

const withLook: RodProblem = {
  ...withoutLook,
  gapBand: [6, 12],
  maxEqualTouching: 3,
  secondaryLines: [{ id: "sill of the next face", at: 1480, edge: "end-of-board", tolerance: 2 }],
};

function solved(problem: RodProblem) {
  const outcome = solveRod(problem);
  if (outcome.kind !== "solved") throw new Error(`expected a rod, got ${JSON.stringify(outcome)}`);
  return outcome;
}

const countsOf = (rod: Pick<RodSolution, "segments">) =>
  rod.segments.map((segment) => segment.counts.map(({ count }) => count));
const gapsOf = (rod: Pick<RodSolution, "segments">) => rod.segments.map((segment) => segment.gap);

describe("two widths, gap 8 to 12, no look rule", () => {
  it("finds the one gap of 9.000 that runs through all three segments", () => {
    // 950 = 8 x 94 + 126 + 8 x 9;  1222 = 4 x 94 + 6 x 126 + 10 x 9;  888 = 6 x 94 + 2 x 126 + 8 x 9
    const { best } = solved(withoutLook);
    expect(countsOf(best)).toEqual([
      [8, 1],
      [4, 6],
      [6, 2],
    ]);
    expect(gapsOf(best)).toEqual([9, 9, 9]);
    expect(best.gapSpread).toBe(0);
  });
});

describe("two widths, gap 6 to 12, no more than three equal widths touching", () => {
  const outcome = solved(withLook);

  it("gives up the equal gap in the first segment, and there alone", () => {
    // Eight boards of 94 and one of 126 always leave four of 94 touching. 950 = 4 x 94 + 4 x 126 + 7 x 10.
    expect(countsOf(outcome.best)).toEqual([
      [4, 4],
      [4, 6],
      [6, 2],
    ]);
    expect(gapsOf(outcome.best)).toEqual([10, 9, 9]);
    expect(outcome.best.gapSpread).toBe(1);
    expect(outcome.best.longestRun).toBeLessThanOrEqual(3);
  });

  it("has only those counts in the first segment with 6 to 12, by trying every row of boards", () => {
    const rows: number[][] = [];
    const lay = (row: readonly number[]): void => {
      const timber = row.reduce((sum, width) => sum + width, 0);
      if (timber > 950) return;
      const spare = 950 - timber;
      if (row.length > 1 && spare >= 6 * (row.length - 1) && spare <= 12 * (row.length - 1))
        rows.push([...row]);
      lay([...row, 94]);
      lay([...row, 126]);
    };
    lay([]);
    const kept = rows.filter((row) => !/(94 ){4}|(126 ){4}/.test(`${row.join(" ")} `));
    expect(kept.length).toBeGreaterThan(0);
    expect(new Set(kept.map((row) => [...row].sort((a, b) => a - b).join(" ")))).toEqual(
      new Set(["94 94 94 94 126 126 126 126"]),
    );
  });

  it("meets the secondary line at 1479, one short of 1480 on the safe side", () => {
    // From 900: a gap of 9 before each board; 579 = 3 x 126 + 94 ... = 5 x 9 + 534, and 534 = 3 x 94 + 2 x 126.
    expect(outcome.best.missedLines).toEqual([]);
    const middle = outcome.best.segments[1]?.courses ?? [];
    expect(middle.map((course) => course.to)).toContain(1479);
  });

  it("shows what the look rule costs: a spread of 1", () => {
    const look = outcome.ruleCosts.find((cost) => cost.rule === "look");
    expect(look?.withoutIt.merit.gapSpread).toBe(0);
    expect(look?.withoutIt.segments.map((segment) => segment.counts.map(({ count }) => count))).toEqual([
      [8, 1],
      [4, 6],
      [6, 2],
    ]);
    expect(look?.saves?.gapSpread).toBe(1);
  });

  it("lays the boards from line to line, each its full width", () => {
    for (const [index, segment] of outcome.best.segments.entries()) {
      expect(segment.courses.at(-1)?.to).toBe(segments[index]?.to);
      for (const course of segment.courses) expect(course.to - course.from).toBe(course.width);
    }
    expect(outcome.best.segments[0]?.courses[0]?.from).toBe(-50);
    expect(outcome.best.segments[1]?.courses[0]?.from).toBe(909);
  });
});

describe("one width", () => {
  const whole = Array.from({ length: 61 }, (_, index) => 80 + index);

  it.each(whole)("%d mm does not run through all three segments with a gap of 8 to 12", (width) => {
    const fits = ([length, ends]: readonly [number, number]): boolean => {
      for (let boards = 1; boards * width <= length; boards += 1) {
        const gaps = boards - 1 + ends;
        const spare = length - boards * width;
        if (gaps > 0 && spare >= 8 * gaps && spare <= 12 * gaps) return true;
      }
      return false;
    };
    const lengths = [
      [950, 0],
      [1222, 1],
      [888, 1],
    ] as const;
    expect(lengths.every(fits)).toBe(false);
    const outcome = solveRod({ ...withoutLook, widths: [width] });
    expect(outcome.kind).toBe("impossible");
    if (outcome.kind !== "impossible") return;
    const refused = lengths.flatMap((length, index) => (fits(length) ? [] : [segments[index]?.id]));
    expect(outcome.segments.map(({ id, reason }) => ({ id, reason }))).toEqual(
      refused.map((id) => ({ id, reason: "no-count-fits" })),
    );
  });

  it("names the gaps nearest to the band on either side", () => {
    const outcome = solveRod({ ...withoutLook, widths: [94] });
    if (outcome.kind !== "impossible") throw new Error("expected no rod");
    // 950 = 10 x 94 + 9 x 1.111 = 9 x 94 + 8 x 13
    const [first] = outcome.segments;
    expect(first?.nearestBelow?.gap).toBeCloseTo(10 / 9, 9);
    expect(first?.nearestBelow?.counts).toEqual([{ width: 94, count: 10 }]);
    expect(first?.nearestAbove).toEqual({ gap: 13, counts: [{ width: 94, count: 9 }] });
  });
});

describe("runs", () => {
  it("are stretches of equal widths", () => {
    expect(runsTouching([94, 94, 126, 94].map((width) => ({ width })))).toEqual([
      { first: 0, count: 2, width: 94 },
      { first: 2, count: 1, width: 126 },
      { first: 3, count: 1, width: 94 },
    ]);
    expect(runsTouching([])).toEqual([]);
  });
});
