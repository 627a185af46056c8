/**
 * Flat widths of bent metal against Machinery's Handbook, bending of sheet metal: the length along a right angle of mild
 * steel and aluminium is 0.64 t + 1.57 r (from memory); the arc of a neutral line, A (r + k t), is as in its K-factor
 * tables of the 26th edition, near 0.40 for aluminium.
 */
import { describe, expect, it } from "vitest";
import { bendDeduction, developedWidth, NEUTRAL_LINE } from "../../src/setout/bent-metal.ts";

/** Two legs with a right angle between them. */
const angle = (a: number, b: number): [number, number][] => [
  [0, 0],
  [a, 0],
  [a, b],
];

const RIGHT = Math.PI / 2;

describe("the flat width of bent metal", () => {
  it.each([
    [0.6, 1],
    [0.8, 1.5],
    [2, 3],
  ])("has 0.64 t + 1.57 r at a right angle: %d thick, radius %d", (thickness, radius) => {
    const straight = 40 - (radius + thickness) + (25 - (radius + thickness));
    expect(developedWidth(angle(40, 25), { radius, thickness })).toBeCloseTo(
      straight + 0.64 * thickness + RIGHT * radius,
      9,
    );
  });

  it("has the handbook's neutral line", () => {
    expect(Math.abs(NEUTRAL_LINE - 0.404)).toBeLessThan(0.005);
  });

  it("takes nothing off a leg that is not turned, and less the slighter the turn", () => {
    const fold = { radius: 1, thickness: 0.6 };
    expect(bendDeduction(0, fold)).toBe(0);
    expect(
      developedWidth(
        [
          [0, 0],
          [12, 0],
          [30, 0],
        ],
        fold,
      ),
    ).toBe(30);
    expect(bendDeduction(RIGHT / 3, fold)).toBeLessThan(bendDeduction(RIGHT, fold));
    // A point told twice is no leg.
    expect(
      developedWidth(
        [
          [0, 0],
          [0, 0],
          [30, 0],
        ],
        fold,
      ),
    ).toBe(30);
  });

  it("lies between the legs and the legs inside the bends", () => {
    // A wire of no thickness bent sharp loses nothing; thick sheet bent sharp loses between nothing and twice t.
    expect(developedWidth(angle(10, 10), { radius: 0, thickness: 0 })).toBe(20);
    expect(developedWidth(angle(10, 10), { radius: 0, thickness: 1 })).toBeCloseTo(18 + 0.64, 9);
  });

  it("takes off each bend by its own turn, whichever way it goes", () => {
    const fold = { radius: 1.5, thickness: 0.8 };
    // Out by a slope of 45 degrees, down: an eighth of a turn at each, whatever their sides.
    const section: [number, number][] = [
      [0, 20],
      [0, 10],
      [10, 0],
      [10, -8],
    ];
    expect(developedWidth(section, fold)).toBeCloseTo(
      10 + Math.hypot(10, 10) + 8 - 2 * bendDeduction(Math.PI / 4, fold),
      9,
    );
    const channel = [...angle(30, 20), [20, 20] as const];
    expect(developedWidth(channel, fold)).toBeCloseTo(60 - 2 * bendDeduction(RIGHT, fold), 9);
  });
});
