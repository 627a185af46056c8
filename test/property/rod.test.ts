import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bestRod,
  type RodMerit,
  type RodProblem,
  type RodSolution,
  solveRod,
  solveRodToDraw,
} from "../../src/setout/rod/index.ts";
import { snap } from "../../src/units/length.ts";
import { bestOfEachCounts, type TriedRod } from "./rod-brute.ts";

const SEED = 1480;
const GRID = 1 / 8000;

/** Small rods of whole and half millimetres, about half of them impossible. */
const smallRod: fc.Arbitrary<RodProblem> = fc
  .record({
    from: fc.integer({ min: -60, max: 40 }),
    // Three in four segments are made from boards and a gap, so that something fits; the others have any length.
    made: fc.array(
      fc.record({
        length: fc.oneof(
          { weight: 3, arbitrary: fc.constant(undefined) },
          { weight: 1, arbitrary: fc.integer({ min: 130, max: 420 }) },
        ),
        boards: fc.array(fc.nat(2), { minLength: 1, maxLength: 5 }),
        gapShare: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    ends: fc.array(fc.tuple(fc.boolean(), fc.boolean()), { minLength: 3, maxLength: 3 }),
    breaks: fc.array(fc.constantFrom(0, 0, 0, 90), { minLength: 3, maxLength: 3 }),
    widths: fc.uniqueArray(fc.integer({ min: 62, max: 128 }), { minLength: 1, maxLength: 3 }),
    least: fc.integer({ min: 4, max: 20 }).map((halves) => halves / 2),
    band: fc.integer({ min: 0, max: 12 }).map((halves) => halves / 2),
    most: fc.constantFrom(undefined, 1, 2, 2, 3, 3),
    lines: fc.array(
      fc.record({
        share: fc.double({ min: 0, max: 1, noNaN: true }),
        edge: fc.constantFrom("end-of-board" as const, "start-of-board" as const),
        tolerance: fc.integer({ min: 0, max: 30 }),
      }),
      { maxLength: 3 },
    ),
    odd: fc.constantFrom(undefined, undefined, undefined, 43, 57),
    preferred: fc.option(
      fc.integer({ min: 4, max: 24 }).map((halves) => halves / 2),
      { nil: undefined },
    ),
  })
  .map(({ from, made, ends, breaks, widths, least, band, most, lines, odd, preferred }) => {
    let at = from;
    const segments = made.map(({ length, boards, gapShare }, index) => {
      const start = at;
      const timber = boards.reduce((sum, board) => sum + widths[board % widths.length]!, 0);
      const gaps = boards.length - 1 + Number(ends[index]![0]) + Number(ends[index]![1]);
      at += length ?? timber + gaps * (Math.round((least + gapShare * band) * 2) / 2);
      const segment = {
        id: `s${index}`,
        from: start,
        to: at,
        gapAtStart: ends[index]![0],
        gapAtEnd: ends[index]![1],
      };
      at += breaks[index]!;
      return segment;
    });
    return {
      segments,
      widths,
      gapBand: [least, least + band],
      maxEqualTouching: most,
      secondaryLines: lines.map(({ share, edge, tolerance }, index) => ({
        id: `l${index}`,
        at: Math.round(from + share * (at - from)),
        edge,
        tolerance,
      })),
      ...(odd === undefined ? {} : { ripped: [{ segment: "s0", width: odd }] }),
      ...(preferred === undefined ? {} : { preferredGap: preferred }),
    } satisfies RodProblem;
  });

const meritOf = (rod: TriedRod): RodMerit => ({
  missedLines: rod.missed,
  gapSpread: rod.spread,
  gapOffset: rod.offset,
  boards: rod.boards,
});

const rounded = (merit: RodMerit | undefined) => ({
  missedLines: merit?.missedLines,
  gapSpread: (merit?.gapSpread ?? Number.NaN).toFixed(6),
  gapOffset: (merit?.gapOffset ?? Number.NaN).toFixed(6),
  boards: merit?.boards,
});

function expectSound(problem: RodProblem, rod: RodSolution): void {
  const [min, max] = problem.gapBand;
  let run = 0;
  let last = Number.NaN;
  rod.segments.forEach((segment, index) => {
    const asked = problem.segments[index]!;
    const odd = (problem.ripped ?? []).find((board) => board.segment === asked.id)?.width;
    if (asked.from !== problem.segments[index - 1]?.to) last = Number.NaN;
    let edge = asked.from;
    segment.courses.forEach((course, place) => {
      const gap = course.from - edge;
      if (place === 0 && !asked.gapAtStart) expect(course.from).toBe(asked.from);
      else {
        expect(Math.abs(gap - (segment.gap ?? Number.NaN))).toBeLessThanOrEqual(GRID + 1e-9);
        expect(gap).toBeGreaterThanOrEqual(min - GRID - 1e-9);
        expect(gap).toBeLessThanOrEqual(max + GRID + 1e-9);
      }
      expect(snap(course.to - course.from)).toBe(course.width);
      expect([snap(course.from), snap(course.to)]).toEqual([course.from, course.to]);
      expect([...problem.widths, odd]).toContain(course.width);
      run = course.width === last ? run + 1 : 1;
      last = course.width;
      if (problem.maxEqualTouching !== undefined) expect(run).toBeLessThanOrEqual(problem.maxEqualTouching);
      edge = course.to;
    });
    if (asked.gapAtEnd)
      expect(Math.abs(asked.to - edge - (segment.gap ?? Number.NaN))).toBeLessThanOrEqual(GRID + 1e-9);
    else expect(edge).toBe(asked.to);
    if (odd !== undefined) expect(segment.courses.filter((course) => course.width === odd)).toHaveLength(1);
    const counted = segment.counts.flatMap(({ width, count }) => Array.from({ length: count }, () => width));
    expect([...counted].sort()).toEqual(segment.courses.map((course) => course.width).sort());
  });
  expect(rod.missedLines).toHaveLength(rod.merit.missedLines);
  expect(rod.merit.gapSpread).toBe(rod.gapSpread);
}

describe("against trying every row of boards, 500 small rods", () => {
  it("agrees on whether there is one, on the best, on the next best, on the calmest order and on what each rule costs", () => {
    const seen = { solved: 0, impossible: 0, missing: 0 };
    fc.assert(
      fc.property(smallRod, (problem) => {
        const tried = bestOfEachCounts(problem);
        const outcome = solveRod(problem);
        expect(outcome.kind).toBe(tried.length > 0 ? "solved" : "impossible");
        expect(bestRod(problem)).toEqual(outcome.kind === "solved" ? outcome.best : undefined);
        expect(solveRodToDraw(problem)).toEqual({
          ...outcome,
          ...(outcome.kind !== "unusable" && { ruleCosts: [] }),
          ...(outcome.kind === "impossible" && { nearestChanges: [] }),
        });
        if (outcome.kind === "unusable") return;
        seen[outcome.kind] += 1;
        const withoutLook = outcome.ruleCosts.find((cost) => cost.rule === "look");
        if (withoutLook !== undefined) {
          const [best] = bestOfEachCounts({ ...problem, maxEqualTouching: undefined });
          expect(rounded(withoutLook.withoutIt.merit)).toEqual(rounded(best && meritOf(best)));
        }
        if (outcome.kind !== "solved") return;
        const withoutLines = outcome.ruleCosts.find((cost) => cost.rule === "secondary");
        if (withoutLines !== undefined) {
          const [best] = bestOfEachCounts({ ...problem, secondaryLines: [] });
          expect(rounded(withoutLines.withoutIt.merit)).toEqual(rounded(best && meritOf(best)));
        }
        const rods = [outcome.best, ...outcome.alternatives];
        expect(rods.map((rod) => rounded(rod.merit))).toEqual(
          tried.slice(0, 4).map((rod) => rounded(meritOf(rod))),
        );
        expect(outcome.best.missedLines).toHaveLength(tried[0]!.missed);
        if (outcome.best.missedLines.length > 0) seen.missing += 1;
        const sameCounts = tried.find((rod) =>
          rod.rows.every(
            (row, index) =>
              [...row].sort().join() ===
              outcome.best.segments[index]!.courses.map((c) => c.width)
                .sort()
                .join(),
          ),
        );
        expect(outcome.best.repeats).toBe(sameCounts?.repeats);
        for (const rod of rods) expectSound(problem, rod);
      }),
      { seed: SEED, numRuns: 500 },
    );
    // The cases must be worth something: many with a rod, many without, many that cannot meet every line.
    expect(seen.solved).toBeGreaterThan(120);
    expect(seen.impossible).toBeGreaterThan(120);
    expect(seen.missing).toBeGreaterThan(40);
  });
});

describe("where counts differ in nothing else", () => {
  it("takes the fewest boards", () => {
    // Two boards of 55 and a gap of 10 are as long as one of 120: 250 = 2 x 120 + 10 = 120 + 2 x 55 + 2 x 10 = 4 x 55 + 3 x 10.
    const outcome = solveRod({
      segments: [{ id: "only", from: 0, to: 250, gapAtStart: false, gapAtEnd: false }],
      widths: [55, 120],
      gapBand: [10, 10],
      maxEqualTouching: undefined,
      secondaryLines: [],
    });
    if (outcome.kind !== "solved") throw new Error("expected a rod");
    expect([outcome.best, ...outcome.alternatives].map((rod) => rod.merit.boards)).toEqual([2, 3, 4]);
  });
});

describe("rods of real size", () => {
  const realRod: fc.Arbitrary<RodProblem> = fc
    .record({
      lengths: fc.array(fc.integer({ min: 5_000_000, max: 15_000_000 }), { minLength: 1, maxLength: 4 }),
      widths: fc.uniqueArray(fc.integer({ min: 80, max: 145 }), { minLength: 2, maxLength: 2 }),
      most: fc.constantFrom(2, 3, undefined),
      lines: fc.array(fc.integer({ min: 100, max: 4000 }), { maxLength: 4 }),
    })
    .map(({ lengths, widths, most, lines }) => {
      let at = -50;
      const segments = lengths.map((steps, index) => {
        const from = at;
        at = (Math.round(from * 8000) + steps) / 8000;
        return { id: `s${index}`, from, to: at, gapAtStart: index > 0, gapAtEnd: false };
      });
      return {
        segments,
        widths,
        gapBand: [6, 12],
        maxEqualTouching: most,
        secondaryLines: lines.map((line, index) => ({
          id: `l${index}`,
          at: line,
          edge: "end-of-board",
          tolerance: 2,
        })),
      };
    });

  it("fill exactly, keep the band and the look, and come out the same twice", () => {
    fc.assert(
      fc.property(realRod, (problem) => {
        const outcome = solveRod(problem);
        expect(solveRod(structuredClone(problem))).toEqual(outcome);
        if (outcome.kind === "solved")
          for (const rod of [outcome.best, ...outcome.alternatives]) expectSound(problem, rod);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});
