/** The words of the walk stand beside their place, inside the window. */
import { describe, expect, it } from "vitest";
import { beside } from "../../src/web/walk/beside.ts";

const words = { width: 320, height: 140 };
const window = { width: 1680, height: 1050 };

describe("the words of a step", () => {
  it.each([
    ["a column at the right", { left: 1336, top: 12, width: 332, height: 600 }],
    ["a band at the foot", { left: 110, top: 490, width: 1220, height: 550 }],
    ["a button at the left", { left: 12, top: 80, width: 90, height: 48 }],
    ["a field at the lower right", { left: 1336, top: 960, width: 332, height: 50 }],
  ])("keep clear of %s", (_, place) => {
    const { left, top } = beside(place, { words, window });
    const clear =
      left + words.width <= place.left ||
      left >= place.left + place.width ||
      top + words.height <= place.top ||
      top >= place.top + place.height;
    expect(clear).toBe(true);
    expect(left >= 0 && top >= 0 && left + words.width <= 1680 && top + words.height <= 1050).toBe(true);
  });

  it("stay inside the window where the place fills it, or is not there", () => {
    for (const place of [{ left: 0, top: 0, width: 1680, height: 1050 }, undefined]) {
      const { left, top } = beside(place, { words, window });
      expect(left >= 0 && top >= 0 && left + words.width <= 1680 && top + words.height <= 1050).toBe(true);
    }
  });
});
