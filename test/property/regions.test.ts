/** Common parts of rectangles, told without the polygon library, against what the library tells of the same shapes. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Interval } from "../../src/geometry/interval.ts";
import type { Polygon } from "../../src/geometry/polygon.ts";
import { type Rect, rectOutline } from "../../src/geometry/rect.ts";
import { intersect } from "../../src/geometry/region.ts";

const interval = fc
  .tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: 1, max: 60 }))
  .map(([from, long]): Interval => [from * 12.5, (from + long) * 12.5]);
const rect: fc.Arbitrary<Rect> = fc.record({ x: interval, y: interval });

/** The same shape with a corner that says nothing, which only the library takes. */
function withIdleCorner(polygon: Polygon): Polygon {
  const [a, b, ...rest] = polygon;
  if (!a || !b) throw new Error("no polygon");
  return [a, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], b, ...rest];
}

describe("the common part of two rectangles", () => {
  it("is what the polygon library finds, whichever way round they are given and wherever they begin", () => {
    fc.assert(
      fc.property(rect, rect, fc.nat(3), fc.boolean(), (a, b, turn, reversed) => {
        const outline = rectOutline(a);
        const begun = [...outline.slice(turn), ...outline.slice(0, turn)];
        const subject = reversed ? begun.reverse() : begun;
        const clip = rectOutline(b);
        expect(intersect(subject, clip)).toEqual(intersect(withIdleCorner(subject), clip));
      }),
      { numRuns: 500 },
    );
  });
});
