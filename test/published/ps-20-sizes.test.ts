/**
 * American Softwood Lumber Standard, PS 20: dressed dry sizes. The millimetres are those of the printed tables; the inches
 * beside them are from memory and serve as a second check.
 */
import { describe, expect, it } from "vitest";
import { lumber, lumberIds, nominalThickness } from "../../src/catalogue/stock.ts";

/** Nominal name, thickness and width in inches, thickness and width in millimetres. */
const printed: [string, number, number, number, number][] = [
  ["1x2", 0.75, 1.5, 19, 38],
  ["1x3", 0.75, 2.5, 19, 64],
  ["1x4", 0.75, 3.5, 19, 89],
  ["1x6", 0.75, 5.5, 19, 140],
  ["1x8", 0.75, 7.25, 19, 184],
  ["1x10", 0.75, 9.25, 19, 235],
  ["1x12", 0.75, 11.25, 19, 286],
  ["2x2", 1.5, 1.5, 38, 38],
  ["2x3", 1.5, 2.5, 38, 64],
  ["2x4", 1.5, 3.5, 38, 89],
  ["2x6", 1.5, 5.5, 38, 140],
  ["2x8", 1.5, 7.25, 38, 184],
];

describe("dressed dry sizes", () => {
  it.each(printed)("%s", (id, thicknessInch, widthInch, thickness, width) => {
    expect(lumber(id)?.thickness).toMatchObject({ value: thickness, unit: "mm" });
    expect(lumber(id)?.width).toMatchObject({ value: width, unit: "mm" });
    // The printed millimetres are the inches to the nearest millimetre.
    expect(Math.round(thicknessInch * 25.4)).toBe(thickness);
    expect(Math.round(widthInch * 25.4)).toBe(width);
  });

  it("no other size is given", () => {
    expect(lumberIds()).toEqual(printed.map(([id]) => id));
  });

  it("1, 5/4 and 2 inch nominal are 3/4, 1 and 1-1/2 dry and 1/32 or 1/16 more green", () => {
    const cells: [string, number, number][] = [
      ["1", 3 / 4, 25 / 32],
      ["5/4", 1, 1 + 1 / 32],
      ["2", 1.5, 1 + 9 / 16],
    ];
    for (const [id, dry, green] of cells) {
      expect(nominalThickness(id)?.dry).toMatchObject({ value: dry, unit: "in" });
      expect(nominalThickness(id)?.green).toMatchObject({ value: green, unit: "in" });
    }
  });
});
