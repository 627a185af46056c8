/** Choice of rip widths: worked by hand, and against trying every row of strips on every board. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { PileBoard } from "../../src/cutting/index.ts";
import { ripWidths } from "../../src/cutting/index.ts";

const board = (id: string, width: number, more: Partial<PileBoard> = {}): PileBoard => ({
  id,
  lot: "A",
  length: 2000,
  width,
  thickness: 24,
  defects: [],
  ...more,
});

describe("rip widths", () => {
  it("by hand: 205 less 5 of straightening is 200, two of 98 and a blade of 4 to the hair", () => {
    const request = { boards: [board("a", 205)], kerf: 4, widths: [98, 99] };
    const { curve, best } = ripWidths(request);
    expect(curve.map((one) => one.yield)).toEqual([(2 * 98) / 205, 99 / 205]);
    expect(best).toEqual([{ widths: [98], yield: (2 * 98) / 205, shares: [1] }, ...best.slice(1)]);
  });

  it("by hand: 120 and 76 with a blade of 4 fill 200; neither alone does", () => {
    const { best } = ripWidths({ boards: [board("a", 205)], kerf: 4, widths: [120, 76, 140] });
    expect(best[1]).toEqual({ widths: [76, 120], yield: 196 / 205, shares: [76 / 196, 120 / 196] });
  });

  it("takes wane, straightening, defects and runs that are too short off what a board gives", () => {
    const waney = board("a", 217, {
      wane: { edge: "left", width: 12 },
      defects: [
        { from: 300, to: 350 },
        { from: 1900, to: 2000 },
      ],
    });
    const { curve } = ripWidths({ boards: [waney], kerf: 4, widths: [98], shortest: 400 });
    expect(curve[0]?.yield).toBeCloseTo((2 * 98 * 1550) / (217 * 2000), 12);
  });

  it("leaves out choices of which a width gives less than the least share", () => {
    const boards = [...Array(9).keys()].map((at) => board(`b${at}`, 205)).concat(board("odd", 125));
    const free = ripWidths({ boards, kerf: 4, widths: [98, 120] });
    expect(free.best.at(-1)?.widths).toEqual([98, 120]);
    const held = ripWidths({ boards, kerf: 4, widths: [98, 120], leastShare: 0.2 });
    expect(held.best.map(({ widths }) => widths)).toEqual([[98]]);
  });

  it("of three widths none gives more than the best, on random piles", () => {
    /** Most strip that a room takes, by trying every strip first. */
    const most = (room: number, widths: readonly number[], kerf: number): number =>
      Math.max(
        0,
        ...widths.filter((one) => one <= room).map((one) => one + most(room - one - kerf, widths, kerf)),
      );
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 60, max: 230 }), { minLength: 1, maxLength: 6 }),
        fc.uniqueArray(fc.integer({ min: 40, max: 130 }), { minLength: 3, maxLength: 5 }),
        fc.constantFrom(0, 3, 3.5),
        (rooms, widths, kerf) => {
          const boards = rooms.map((width, at) => board(`b${at}`, width));
          const { best } = ripWidths({ boards, kerf, straighten: 0, widths });
          const area = rooms.reduce((sum, width) => sum + width, 0);
          const tried = widths.flatMap((a, i) =>
            widths
              .slice(i + 1)
              .flatMap((b, j) =>
                widths
                  .slice(i + j + 2)
                  .map((c) => rooms.reduce((sum, room) => sum + most(room, [a, b, c], kerf), 0) / area),
              ),
          );
          expect(best.find((one) => one.widths.length === 3)?.yield ?? 0).toBeCloseTo(Math.max(...tried), 9);
        },
      ),
      { numRuns: 80 },
    );
  });
});
