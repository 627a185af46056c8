import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseLength, printLength } from "../../src/units/feet-inch.ts";
import { fromGridSteps, MM_PER_INCH, snap } from "../../src/units/length.ts";

const SEED = 20240607;

describe("reading what was printed", () => {
  it.each([16, 32, 64] as const)(
    "is exact for every multiple of 1/%d inch up to 12 ft, either sign",
    (denominator) => {
      const wrong: unknown[] = [];
      for (let count = -144 * denominator; count <= 144 * denominator; count += 1) {
        const mm = snap((count * MM_PER_INCH) / denominator);
        const text = printLength(mm, { display: "feet-inch", denominator });
        const read = parseLength(text, "mm");
        if (!read.ok || read.value !== mm) wrong.push({ mm, text, read });
      }
      expect(wrong).toEqual([]);
    },
  );

  it("is exact for every multiple of 1/64 inch up to 300 m", () => {
    fc.assert(
      fc.property(fc.integer({ min: -750_000, max: 750_000 }), (count) => {
        const mm = snap((count * MM_PER_INCH) / 64);
        const text = printLength(mm, { display: "feet-inch", denominator: 64 });
        expect(parseLength(text, "mm")).toEqual({ ok: true, value: mm });
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it("is exact on the grid of 1/8000 mm, with point or comma", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }),
        fc.constantFrom("." as const, "," as const),
        (steps, decimalSign) => {
          const mm = fromGridSteps(steps);
          const text = printLength(mm, { display: "mm", decimals: 6, decimalSign });
          expect(parseLength(text, "mm")).toEqual({ ok: true, value: mm });
        },
      ),
      { seed: SEED, numRuns: 5000 },
    );
  });
});

describe("feet-inch printing", () => {
  it("is never off by more than half a fraction, never shows 12 inches, never an unreduced fraction", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -80_000_000, max: 80_000_000 }),
        fc.constantFrom(16 as const, 32 as const, 64 as const),
        (steps, denominator) => {
          const mm = fromGridSteps(steps);
          const text = printLength(mm, { display: "feet-inch", denominator });
          const read = parseLength(text, "mm");
          expect(read.ok && Math.abs(read.value - mm)).toBeLessThanOrEqual(
            MM_PER_INCH / denominator / 2 + 1e-9,
          );
          expect(text).toMatch(
            /^-?(?:[1-9]\d*'-)?(?:\d|1[01])?(?: ?(?:[1-9]?[13579])\/(?:2|4|8|16|32|64))?"$/,
          );
        },
      ),
      { seed: SEED, numRuns: 3000 },
    );
  });
});

describe("reading anything at all", () => {
  it("gives a grid length or an error with what was typed, and never throws", () => {
    const signs = fc.constantFrom(..."0123456789 .,-'\"/½″′mincft".split(""));
    fc.assert(
      fc.property(
        fc.array(signs, { maxLength: 14 }).map((list) => list.join("")),
        (text) => {
          const read = parseLength(text, "in");
          if (read.ok) expect(snap(read.value)).toBe(read.value);
          else expect(read.error.text).toBe(text);
        },
      ),
      { seed: SEED, numRuns: 5000 },
    );
  });
});
