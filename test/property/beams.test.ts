/** Beams on random supports with arms and single loads: the theorem of three moments, balance, and loads added together. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Beam, type Bent, continuousBeam } from "../../src/equations/beams/continuous-beam.ts";

const beams = fc
  .record({
    spans: fc.array(fc.integer({ min: 50, max: 1200 }), { minLength: 1, maxLength: 9 }),
    arms: fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 300 })),
    load: fc.integer({ min: 0, max: 5 }),
    points: fc.array(
      fc.record({ share: fc.integer({ min: 0, max: 1000 }), load: fc.integer({ min: -50, max: 50 }) }),
      { maxLength: 5 },
    ),
  })
  .map(({ spans, arms, load, points }): Beam => {
    const supports = [0];
    for (const span of spans) supports.push((supports.at(-1) ?? 0) + span);
    const [from, to] = [-arms[0], (supports.at(-1) ?? 0) + arms[1]];
    return {
      supports,
      from,
      to,
      load,
      points: points.map(({ share, load: p }) => ({ at: from + ((to - from) * share) / 1000, load: p })),
    };
  });

function bent(beam: Beam): Bent {
  const found = continuousBeam(beam);
  if (!found) throw new Error("held by fewer than two supports");
  return found;
}

/** Six times the moment area of a span’s own loads about one end, over its length. */
function loadTerm(beam: Beam, [left, right]: readonly [number, number], about: "left" | "right"): number {
  const length = right - left;
  const points = (beam.points ?? []).filter(({ at }) => at > left && at < right);
  return points.reduce(
    (sum, { at, load }) => {
      const near = about === "left" ? at - left : right - at;
      return sum + (load * near * (length ** 2 - near ** 2)) / length;
    },
    (beam.load * length ** 3) / 4,
  );
}

/** Moment over an end support of what hangs past it. */
function armMoment({ supports, from, to, load, points = [] }: Beam, side: "left" | "right"): number {
  const support = (side === "left" ? supports[0] : supports.at(-1)) ?? 0;
  const arm = side === "left" ? support - from : to - support;
  const hung = points.filter(({ at }) => (side === "left" ? at < support : at > support));
  return hung.reduce((sum, { at, load: p }) => sum - p * Math.abs(at - support), (-load * arm ** 2) / 2);
}

describe("beams on any supports", () => {
  it("keep the equation of three moments over every inner support, and hang their ends", () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const { overSupports } = bent(beam);
        const { supports } = beam;
        const scale = Math.max(1, ...overSupports.map(Math.abs));
        for (let i = 1; i + 1 < supports.length; i++) {
          const [a, b, c] = supports.slice(i - 1, i + 2) as [number, number, number];
          const [left, over, right] = overSupports.slice(i - 1, i + 2) as [number, number, number];
          const sum =
            left * (b - a) +
            2 * over * (c - a) +
            right * (c - b) +
            loadTerm(beam, [a, b], "left") +
            loadTerm(beam, [b, c], "right");
          expect(Math.abs(sum) / (scale * (c - a))).toBeLessThan(1e-8);
        }
        expect(Math.abs((overSupports[0] ?? 0) - armMoment(beam, "left"))).toBeLessThan(1e-8 * scale);
        expect(Math.abs((overSupports.at(-1) ?? 0) - armMoment(beam, "right"))).toBeLessThan(1e-8 * scale);
      }),
      { numRuns: 300, seed: 8 },
    );
  });

  it("balance: reactions make up the loads, and turn as they do", () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const { reactions } = bent(beam);
        const points = beam.points ?? [];
        const even = beam.load * (beam.to - beam.from);
        const total = points.reduce((sum, { load }) => sum + load, even);
        const turning = points.reduce(
          (sum, { at, load }) => sum + at * load,
          (even * (beam.from + beam.to)) / 2,
        );
        const scale = Math.max(1, even, ...reactions.map(Math.abs));
        expect(Math.abs(reactions.reduce((sum, r) => sum + r, 0) - total)).toBeLessThan(1e-8 * scale);
        const turned = reactions.reduce((sum, r, i) => sum + r * (beam.supports[i] ?? 0), 0);
        expect(Math.abs(turned - turning)).toBeLessThan(1e-8 * scale * beam.to);
      }),
      { numRuns: 300, seed: 9 },
    );
  });

  it("mirrored they bend mirrored", () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const one = bent(beam);
        const other = bent({
          ...beam,
          supports: beam.supports.map((at) => -at).reverse(),
          from: -beam.to,
          to: -beam.from,
          points: (beam.points ?? []).map(({ at, load }) => ({ at: -at, load })),
        });
        const scale = Math.max(1, Math.abs(one.sag.stiff));
        expect(Math.abs(Math.abs(one.sag.stiff) - Math.abs(other.sag.stiff)) / scale).toBeLessThan(1e-8);
        expect(Math.abs(one.moment - other.moment) / Math.max(1, one.moment)).toBeLessThan(1e-8);
      }),
      { numRuns: 200, seed: 10 },
    );
  });
});

it("a beam on one support is no beam", () => {
  expect(continuousBeam({ supports: [5], from: 0, to: 10, load: 1 })).toBeUndefined();
});
