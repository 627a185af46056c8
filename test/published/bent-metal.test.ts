/**
 * Flat widths of bent metal against Machinery's Handbook, bending of sheet metal: the length along a right angle of mild
 * steel and aluminium is 0.64 t + 1.57 r (from memory); the arc of a neutral line, A (r + k t), is as in its K-factor
 * tables of the 26th edition, near 0.40 for aluminium.
 */
import { describe, expect, it } from "vitest";
import { bendDeduction, developedWidth, NEUTRAL_LINE } from "../../src/setout/reveals/developed.ts";

describe("the flat width of bent metal", () => {
  it.each([
    [0.6, 1],
    [0.8, 1.5],
    [2, 3],
  ])("has 0.64 t + 1.57 r at a right angle: %d thick, radius %d", (t, r) => {
    const angle = { angleDeg: 90, radius: r };
    const straight = 40 - (r + t) + (25 - (r + t));
    expect(developedWidth([40, 25], angle, t)).toBeCloseTo(straight + 0.64 * t + (Math.PI / 2) * r, 9);
  });

  it("has the handbook's neutral line", () => {
    expect(Math.abs(NEUTRAL_LINE - 0.404)).toBeLessThan(0.005);
  });

  it("takes nothing off a leg that is not turned, and less the slighter the turn", () => {
    expect(bendDeduction({ angleDeg: 0, radius: 1 }, 0.6)).toBe(0);
    expect(developedWidth([30], { angleDeg: 90, radius: 1 }, 0.6)).toBe(30);
    const [slight, right] = [30, 90].map((angleDeg) => bendDeduction({ angleDeg, radius: 1 }, 0.6));
    expect(slight).toBeLessThan(right ?? 0);
  });

  it("lies between the legs and the legs inside the bends", () => {
    // A wire of no thickness bent sharp loses nothing; thick sheet bent sharp loses between nothing and twice t.
    expect(developedWidth([10, 10], { angleDeg: 90, radius: 0 }, 0)).toBe(20);
    const sharp = developedWidth([10, 10], { angleDeg: 90, radius: 0 }, 1);
    expect(sharp).toBeCloseTo(18 + 0.64, 9);
  });
});
