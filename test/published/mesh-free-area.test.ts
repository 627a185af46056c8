/**
 * Free area of closures. Woven square mesh: 100 (w / (w + d))², the form of ISO 9044 as a terminology page prints it.
 * Perforated sheet: π d² / (2 √3 p²) staggered at 60° and π d² / (4 p²) square, from the perforators' handbook; its
 * second example, 0.066 in holes at 0.125 in, gives 25.17 % with √3/2 taken as 0.87 (25.28 % exactly).
 */
import { describe, expect, it } from "vitest";
import { mesh, meshIds } from "../../src/catalogue/meshes.ts";

const staggered = (share: { hole: number; pitch: number }): number =>
  (100 * Math.PI * share.hole ** 2) / (2 * Math.sqrt(3) * share.pitch ** 2);

describe("cells", () => {
  const cells: [string, number][] = [
    ["3.15-0.8", 63.6],
    ["3-0.5", 73.47],
    ["4-1", 64],
    ["2-0.5", 64],
    ["1.6-0.4", 64],
    ["staggered-60-3-5", 32.65],
    ["staggered-60-5-8", 35.43],
    ["staggered-60-4-6", 40.31],
    ["staggered-60-5-7", 46.27],
    ["square-3-5", 28.27],
  ];
  it.each(cells)("%s", (id, percent) => {
    expect(Math.abs((mesh(id)?.freeShare.value ?? Number.NaN) - percent)).toBeLessThan(0.05);
  });

  it("cover every mesh of the data", () => {
    expect(meshIds()).toEqual(cells.map(([id]) => id));
  });
});

it("each share is its formula to two places", () => {
  for (const id of meshIds()) {
    const entry = mesh(id);
    if (entry === undefined) throw new Error(`${id} is listed and not found`);
    const expected =
      "wire" in entry
        ? 100 * (entry.opening.value / (entry.opening.value + entry.wire.value)) ** 2
        : entry.pattern === "square"
          ? (100 * Math.PI * entry.hole.value ** 2) / (4 * entry.pitch.value ** 2)
          : staggered({ hole: entry.hole.value, pitch: entry.pitch.value });
    expect(entry.freeShare.value, id).toBeCloseTo(expected, 2);
  }
});

it("the perforators' example: 25.28 % exactly, and 25.17 % with the rounding it uses", () => {
  const exact = staggered({ hole: 0.066, pitch: 0.125 });
  expect(exact).toBeCloseTo(25.28, 2);
  expect((exact * Math.sqrt(3)) / 2 / 0.87).toBeCloseTo(25.17, 1);
});
