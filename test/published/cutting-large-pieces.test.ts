/**
 * Bounds by large pieces: Martello & Vigo, Management Science 44 (1998) 388-399, on instances of Berkey & Wang, J. Operational
 * Research Society 38 (1987) 423-429, and their own. The four values of each were reckoned by another program from the same
 * formulas; the small jobs are worked by hand.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { largePieceBounds } from "../../src/cutting/large-pieces.ts";

interface Instance {
  id: string;
  sheets: [[number, number]];
  items: [number, number, number][];
  ref: Record<string, number>;
}

const { instances } = JSON.parse(
  readFileSync(new URL("../../bench/instances/2d-bpp-classes.json", import.meta.url), "utf8"),
) as { instances: Instance[] };

function boundsOf({ sheets: [[width, height]], items }: Pick<Instance, "sheets" | "items">) {
  return largePieceBounds(
    items.map(([w, h, count]) => ({ width: w, height: h, count })),
    { width, height },
  );
}

describe("L0 to L3", () => {
  it.each([
    ["Class_01_20_1", 7, 7, 7, 6],
    ["Class_05_60_1", 18, 18, 19, 15],
    ["Class_07_60_1", 15, 17, 17, 6],
    ["Class_10_60_1", 11, 10, 11, 8],
  ])("%s: %i, %i, %i, %i", (id, l0, l1, l2, l3) => {
    const instance = instances.find((one) => one.id === id)!;
    expect(boundsOf(instance)).toEqual({ l0, l1, l2, l3 });
  });

  it("are never above what has been reached without turns, and L2 never below L1", () => {
    for (const instance of instances) {
      const { l0, l1, l2, l3 } = boundsOf(instance);
      expect(Math.max(l0, l1, l2, l3), instance.id).toBeLessThanOrEqual(instance.ref.bestOF!);
      expect(l2, instance.id).toBeGreaterThanOrEqual(l1);
    }
  });

  it("by hand, on 10 by 10: four of 6 by 6 take four; nine of 4 by 4 three, two by area; five of 6 by 4 three", () => {
    const sheets: [[number, number]] = [[10, 10]];
    expect(boundsOf({ sheets, items: [[6, 6, 4]] })).toMatchObject({ l0: 2, l1: 4 });
    expect(boundsOf({ sheets, items: [[4, 4, 9]] })).toMatchObject({ l2: 2, l3: 3 });
    expect(boundsOf({ sheets, items: [[6, 4, 5]] })).toMatchObject({ l0: 2, l1: 3 });
  });
});
