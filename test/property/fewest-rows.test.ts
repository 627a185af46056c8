/**
 * Rows of screws on small sheets: the areas that screws hold make up the sheet, and the fewest rows are never more than a search finds
 * that tries every count and every edge distance to the millimetre, with the areas worked out apart.
 */
import * as fc from "fast-check";
import { expect, it } from "vitest";
import type { ZoneView } from "../../src/proof/context.ts";
import { fewestRows } from "../../src/proof/wind/fewest-rows.ts";
import { membersOf, screwShares } from "../../src/proof/wind/members.ts";
import { proofFixture } from "../helpers/proof-fixture.ts";

/** What the worst row holds of the height, by half gaps. */
function worstShare(rows: readonly number[], height: number): number {
  return Math.max(
    ...rows.map((y, i) => {
      const from = i === 0 ? 0 : ((rows[i - 1] ?? 0) + y) / 2;
      const to = i === rows.length - 1 ? height : (y + (rows[i + 1] ?? 0)) / 2;
      return to - from;
    }),
  );
}

function bruteFewest(asked: {
  height: number;
  edge: readonly [number, number];
  spacing: readonly [number, number];
  most: number;
}): number | undefined {
  const { height, edge, spacing, most } = asked;
  for (let count = 2; count <= 40; count++)
    for (let inset = edge[0]; inset <= edge[1]; inset++) {
      const space = (height - 2 * inset) / (count - 1);
      if (space < spacing[0] - 1e-9 || space > spacing[1] + 1e-9) continue;
      const rows = Array.from({ length: count }, (_, i) => inset + i * space);
      if (worstShare(rows, height) <= most + 1e-9) return count;
    }
  return undefined;
}

it("never more rows than trying them all, and always within the bands", () => {
  fc.assert(
    fc.property(
      fc.record({
        height: fc.integer({ min: 250, max: 1600 }),
        edge: fc.tuple(fc.integer({ min: 20, max: 60 }), fc.integer({ min: 0, max: 80 })),
        spacing: fc.tuple(fc.integer({ min: 60, max: 250 }), fc.integer({ min: 0, max: 400 })),
        most: fc.integer({ min: 70, max: 600 }),
      }),
      ({ height, edge: [inset, more], spacing: [close, wider], most }) => {
        const edge = [inset, inset + more] as const;
        const spacing = [close, close + wider] as const;
        const rows = fewestRows({
          heightMm: height,
          edgeMm: edge,
          spacingMm: spacing,
          hold: (tried) => worstShare(tried, height) <= most + 1e-9,
        });
        const brute = bruteFewest({ height, edge, spacing, most });
        if (brute !== undefined) expect(rows?.length ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(brute);
        if (!rows) return;
        const [first = 0, second = 0] = rows;
        const last = rows.at(-1) ?? 0;
        expect(first).toBeGreaterThanOrEqual(edge[0] - 1e-9);
        expect(first).toBeLessThanOrEqual(edge[1] + 1e-9);
        expect(height - last).toBeCloseTo(first, 9);
        expect(second - first).toBeGreaterThanOrEqual(spacing[0] - 1e-9);
        expect(second - first).toBeLessThanOrEqual(spacing[1] + 1e-9);
        expect(worstShare(rows, height)).toBeLessThanOrEqual(most + 1e-6);
      },
    ),
    { numRuns: 400, seed: 11 },
  );
});

it("what the screws of a sheet hold makes up the sheet, wherever its battens and rows lie", () => {
  const places = (most: number) =>
    fc.uniqueArray(fc.integer({ min: 30, max: most - 30 }), { minLength: 2, maxLength: 7 }).filter((all) => {
      const sorted = [...all].sort((a, b) => a - b);
      return sorted.every((at, i) => i === 0 || at - (sorted[i - 1] ?? 0) >= 30);
    });
  const { zones } = proofFixture();
  const sheets = zones.find(({ where }) => where.zone === "sheets") as ZoneView;
  const [like] = sheets.pieces;
  if (!like?.fixings[0]) throw new Error("no sheet");
  const [screw] = like.fixings;
  fc.assert(
    fc.property(places(1220), places(2440), (xs, ys) => {
      const fixings = xs.flatMap((x) => ys.map((y) => ({ ...screw, x, y, into: "FS0" })));
      const outline = [
        [0, 0],
        [1220, 0],
        [1220, 2440],
        [0, 2440],
      ] as const;
      const [member] = membersOf({ ...sheets, pieces: [{ ...like, outline, fixings }] }).skins;
      if (!member) throw new Error("no member");
      const held = screwShares(member).reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
      expect(Math.abs(held / (1220 * 2440) - 1)).toBeLessThan(1e-9);
    }),
    { numRuns: 150, seed: 12 },
  );
});
