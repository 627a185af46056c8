/** The search of the pile against trying every way to rip and cut small piles. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutPile, type PileRequest } from "../../src/cutting/index.ts";

interface Strip {
  readonly width: number;
  readonly rooms: readonly number[];
}

interface Board {
  readonly free: number;
  readonly runs: readonly number[];
  readonly strips: readonly Strip[];
}

/** Least area left out, by trying each piece in every place and nowhere. Kerf 0, nothing trimmed: room is room. */
function leastLeft(boards: readonly Board[], pieces: readonly { width: number; length: number }[]): number {
  const [piece, ...others] = pieces;
  if (piece === undefined) return 0;
  const { width, length } = piece;
  let least = width * length + leastLeft(boards, others);
  const take = (runs: readonly number[], use: (rooms: readonly number[]) => Board, at: number): void => {
    runs.forEach((room, run) => {
      if (room < length || least === 0) return;
      const rooms = runs.map((one, index) => (index === run ? one - length : one));
      const next = boards.map((one, index) => (index === at ? use(rooms) : one));
      least = Math.min(least, leastLeft(next, others));
    });
  };
  boards.forEach((board, at) => {
    board.strips.forEach((strip, index) => {
      if (strip.width !== width) return;
      take(
        strip.rooms,
        (rooms) => ({
          ...board,
          strips: board.strips.map((one, other) => (other === index ? { ...one, rooms } : one)),
        }),
        at,
      );
    });
    if (board.free < width) return;
    const add = (rooms: readonly number[]): Board => ({
      ...board,
      free: board.free - width,
      strips: [...board.strips, { width, rooms }],
    });
    take(board.runs, add, at);
  });
  return least;
}

const boards = fc.array(
  fc.record({
    width: fc.integer({ min: 60, max: 220 }),
    runs: fc.array(fc.integer({ min: 5, max: 20 }), { minLength: 1, maxLength: 2 }),
  }),
  { minLength: 1, maxLength: 2 },
);
const pieces = fc.array(fc.record({ wide: fc.boolean(), length: fc.integer({ min: 3, max: 18 }) }), {
  minLength: 1,
  maxLength: 5,
});

describe("the search of the pile", () => {
  it("leaves out no more than it must, on small piles", () => {
    fc.assert(
      fc.property(boards, pieces, (list, wanted) => {
        const sizes = wanted.map(({ wide, length }) => ({ width: wide ? 100 : 70, length: length * 100 }));
        const request: PileRequest = {
          kerf: 0,
          straighten: 0,
          seed: 1,
          budget: 200,
          boards: list.map(({ width, runs: [first = 0, second] }, at) => ({
            id: `b${at}`,
            lot: "A",
            length: (first + (second ?? 0)) * 100 + (second === undefined ? 0 : 50),
            width,
            thickness: 25,
            defects: second === undefined ? [] : [{ from: first * 100, to: first * 100 + 50 }],
          })),
          wanted: [70, 100].map((width) => ({
            section: String(width),
            width,
            pieces: sizes.flatMap((size, at) =>
              size.width === width ? [{ id: `p${at}`, length: size.length }] : [],
            ),
          })),
        };
        const { lengths, leftOut } = cutPile(request);
        const left = lengths.plan.unplaced.reduce((sum, { demandId }) => {
          const { width = 0, length = 0 } = sizes[Number(demandId.slice(1))] ?? {};
          return sum + width * length;
        }, 0);
        const open = list.map(
          ({ width, runs }): Board => ({ free: width, runs: runs.map((run) => run * 100), strips: [] }),
        );
        expect(left).toBe(leastLeft(open, sizes));
        expect(leftOut.least).toBeLessThanOrEqual(leftOut.area);
        expect(leftOut.area).toBeCloseTo(left / 1e6, 6);
      }),
      { numRuns: 400, seed: 1 },
    );
  });
});
