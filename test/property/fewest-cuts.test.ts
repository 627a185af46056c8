/** The fewest re-cuts against every choice there is, tried one by one, on small rows of pieces between walls. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Bound } from "../../src/site/as-built/bounds.ts";
import type { LevelCosts } from "../../src/site/as-built/cheapest-cover.ts";
import { evenPlaces } from "../../src/site/as-built/even-places.ts";
import { type CutQuestion, fewestCuts } from "../../src/site/as-built/fewest-cuts.ts";
import { canBeLaid, cheapestOfAll } from "./cuts-brute.ts";

interface Row {
  readonly question: CutQuestion;
  readonly drawn: readonly number[];
  readonly together: readonly (readonly number[])[];
}

/** Pieces side by side between two walls, the right one moved; each with its size, the gap after it, its stage. */
const row = fc
  .record({
    pieces: fc.array(
      fc.record({
        size: fc.integer({ min: 20, max: 60 }),
        gap: fc.integer({ min: 2, max: 8 }),
        play: fc.integer({ min: 0, max: 3 }),
        stage: fc.constantFrom("fixed", "kept", "uncut", "cut", "finished"),
        longest: fc.integer({ min: 0, max: 12 }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    moved: fc.integer({ min: -14, max: 14 }),
    from: fc.integer({ min: -6, max: 6 }),
  })
  .map(({ pieces, moved, from }): Row => {
    const bounds: Bound[] = [];
    const costs: LevelCosts[] = [];
    const drawn = [0];
    const together: number[][] = [];
    let at = 5;
    let before: readonly [unknown: number, place: number] = [0, from];
    const gapTo = (to: readonly [number, number], gap: number, play: number): void => {
      bounds.push(
        {
          from: before[0],
          to: to[0],
          most: gap + play - (to[0] === 0 ? to[1] : 0) + (before[0] === 0 ? before[1] : 0),
        },
        {
          from: to[0],
          to: before[0],
          most: -(gap - play) + (to[0] === 0 ? to[1] : 0) - (before[0] === 0 ? before[1] : 0),
        },
      );
    };
    let gap = 5;
    let play = 2;
    pieces.forEach((piece, i) => {
      const COSTS = {
        fixed: [undefined, undefined],
        kept: [undefined, undefined],
        uncut: [1, 1],
        cut: [1001, 2001],
        finished: [3001, 6001],
      } as const;
      costs.push(COSTS[piece.stage]);
      const [low, high] = [drawn.length, drawn.length + 1];
      drawn.push(at, at + piece.size);
      together.push([low, high]);
      gapTo([low, at], gap, play);
      bounds.push(
        { from: low, to: high, most: piece.size, gives: { piece: i, level: 2 } },
        { from: high, to: low, most: -piece.size, gives: { piece: i, level: 1 } },
        { from: low, to: high, most: piece.size + piece.longest },
        { from: high, to: low, most: -15 },
        { from: 0, to: low, most: at + 40 },
        { from: low, to: 0, most: 40 - at },
      );
      if (piece.stage === "fixed")
        bounds.push({ from: 0, to: low, most: at }, { from: low, to: 0, most: -at });
      before = [high, at + piece.size];
      gap = piece.gap;
      play = piece.play;
      at += piece.size + piece.gap;
    });
    gapTo([0, at + moved], gap, play);
    return { question: { costs, axes: [{ unknowns: drawn.length, bounds }] }, drawn, together };
  });

describe("the fewest re-cuts", () => {
  it("cost what the cheapest of all choices costs, and are impossible where none can be laid", () => {
    const seen = { found: 0, impossible: 0, costly: 0 };
    fc.assert(
      fc.property(row, ({ question }) => {
        const answer = fewestCuts(question);
        const best = cheapestOfAll(question);
        if (answer.kind === "impossible") {
          seen.impossible++;
          expect(best).toBeUndefined();
          expect(answer.ring.reduce((sum, { most }) => sum + most, 0)).toBeLessThan(0);
          return;
        }
        seen.found++;
        if (answer.cost > 0) seen.costly++;
        expect(answer.cost).toBe(best);
        expect(answer.least).toBe(answer.cost);
        expect(canBeLaid(question, answer.levels)).toBe(true);
      }),
      { numRuns: 400, seed: 11 },
    );
    // Each of the three is met often, so that none of them goes unproven.
    expect(Math.min(seen.found, seen.impossible, seen.costly)).toBeGreaterThan(20);
  });

  it("never cost more than a search with less time says, which gives its bound", () => {
    fc.assert(
      fc.property(row, fc.integer({ min: 1, max: 6 }), ({ question }, steps) => {
        const [whole, short] = [fewestCuts(question), fewestCuts(question, steps)];
        expect(short.kind).toBe(whole.kind);
        if (whole.kind === "impossible" || short.kind === "impossible") return;
        expect(short.least).toBeLessThanOrEqual(whole.cost);
        expect(short.cost).toBeGreaterThanOrEqual(whole.cost);
        expect(canBeLaid(question, short.levels)).toBe(true);
      }),
      { numRuns: 200, seed: 12 },
    );
  });

  it("leave places under every bound, kept pieces with their size", () => {
    fc.assert(
      fc.property(row, ({ question, drawn, together }) => {
        const answer = fewestCuts(question);
        if (answer.kind === "impossible") return;
        const [axis] = question.axes;
        if (!axis) return;
        const placed = evenPlaces(axis, { levels: answer.levels, drawn, together });
        expect(placed).toBeDefined();
        const x = placed?.x ?? [];
        for (const { from, to, most, gives } of axis.bounds) {
          if (gives && (answer.levels[gives.piece] as number) >= gives.level) continue;
          expect((x[to] as number) - (x[from] as number)).toBeLessThanOrEqual(most);
        }
      }),
      { numRuns: 200, seed: 13 },
    );
  });
});
