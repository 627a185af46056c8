/**
 * How many searches for columns a grid takes on the dearest faces known: work is counted, never time. That what is found is
 * the cheapest of all is held by test/property/sheet-layout.test.ts, against every set of lines.
 */
import { describe, expect, it } from "vitest";
import { findGrid } from "../../src/setout/sheets/grid.ts";
import { plannerFor } from "../../src/setout/sheets/planner.ts";
import type { SheetZone } from "../../src/setout/sheets/zone.ts";
import { faceZone } from "../helpers/sheet-faces.ts";

/** Small lying sheets, two level joints pinned, a level and an upright band kept free, a small window low down. */
const pinned = faceZone({
  width: 1747,
  height: 3650,
  openings: [{ left: 618, width: 400, sill: 170, height: 400 }],
  stock: [900, 1800],
  lay: "lying",
  pattern: "grid",
  pinned: { y: [1538, 2926] },
  forbidden: { x: [[0, 120]], y: [[2545, 2865]] },
});

/** The same under a gable. */
const gabled: SheetZone = {
  ...pinned,
  ground: {
    ...pinned.ground,
    rectangular: false,
    region: [
      [0, 0],
      [1747, 0],
      [1747, 2890],
      [607, 3650],
      [0, 3087.5],
    ],
  },
};

describe("a grid of small sheets with pins and bands", () => {
  it.each([
    ["under a level top", pinned, 420],
    ["under a gable", gabled, 420],
  ] as const)("leaves most of its sets of lines out together: %s", (_, zone, most) => {
    const found = findGrid(plannerFor(zone));
    // 2610 sets of lines fit the stock.
    expect(found.searches).toBeLessThanOrEqual(most);
    expect(found.best?.score.notches).toBe(0);
    expect(found.runnerUp?.score.total ?? 0).toBeGreaterThanOrEqual(found.best?.score.total ?? 0);
  });
});
