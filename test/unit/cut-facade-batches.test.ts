/** A list too long to be cut at one go: one plan, one bound, nothing lost between batches. */
import { describe, expect, it } from "vitest";
import { inBatches } from "../../src/cutting/facade/in-batches.ts";
import { cutLengths, type LengthRequest, verifyLengthPlan } from "../../src/cutting/index.ts";

function request(count: number): LengthRequest {
  return {
    kerf: 3,
    budget: 5,
    stock: [2440, 3660].map((length) => ({
      id: `b ${length}`,
      length,
      section: "b",
      sound: [{ from: 0, to: length }],
    })),
    demands: Array.from({ length: count }, (_, i) => ({
      id: `L${i}`,
      // Every hundredth is longer than any bar.
      length: i % 100 === 99 ? 4000 : 400 + ((i * 37) % 21) * 100,
      section: "b",
    })),
  };
}

describe("in batches", () => {
  const long = request(600);

  it("a long list passes the verifier whole, its cost and bound too", () => {
    const result = inBatches(cutLengths)(long);
    expect(verifyLengthPlan({ request: long, plan: result.plan, claim: result })).toEqual([]);
    expect(result.plan.unplaced.length).toBe(6);
    // At least the metres of its pieces, each with a blade less one a bar.
    const metres = long.demands.reduce((sum, { length }) => sum + (length < 4000 ? length : 0), 0) / 1000;
    expect(result.bound.bound).toBeGreaterThanOrEqual(metres);
    expect(result.cost).toBeLessThan(1.06 * metres);
  });

  it("are even, so that no last bar is cut for a few pieces", () => {
    const sizes: number[] = [];
    inBatches((one) => {
      sizes.push(one.demands.length);
      return cutLengths(one);
    })(request(502));
    expect(sizes).toEqual([168, 168, 166]);
  });

  it("a short list, or stock of which there is only so much, goes at one go", () => {
    const counted = { ...long, stock: long.stock.map((one) => ({ ...one, count: 900 })) };
    for (const one of [request(250), counted]) {
      let times = 0;
      inBatches((asked) => {
        times += 1;
        expect(asked).toBe(one);
        return cutLengths({ ...asked, demands: [] });
      })(one);
      expect(times).toBe(1);
    }
  });
});
