/**
 * Sheets sawn for generated faces against a published lower bound, written here apart from the program's own: items that
 * fill a bin in conservative scales, one function an axis (Fekete & Schepers, A general framework for bounds for
 * higher-dimensional orthogonal packing problems, Math. Methods of Operations Research 60 (2004) 311-329). Plain
 * proportion on both axes makes the continuous bound L0 of Martello & Vigo, Management Science 44 (1998) 388-399.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { design } from "../../src/design.ts";
import { faceProject, smallFace } from "../helpers/sheet-faces.ts";

const RUNS = process.env.OUTERLEAF_SOAK ? 3000 : 150;
const LIMIT_MS = process.env.OUTERLEAF_SOAK ? 3_600_000 : 120_000;
const NOISE = 1e-9;

type Scale = (share: number) => number;

/** u(k): what fills more than whole parts of k + 1 counts as parts of k. */
const parts =
  (k: number): Scale =>
  (x) => {
    const whole = Math.round((k + 1) * x);
    return Math.abs((k + 1) * x - whole) < NOISE ? x : Math.floor((k + 1) * x) / k;
  };

/** U(ε): what leaves less than ε counts as the whole, what is less than ε as nothing. */
const threshold =
  (least: number): Scale =>
  (x) =>
    x > 1 - least + NOISE ? 1 : x < least - NOISE ? 0 : x;

const scales = (shares: readonly number[]): Scale[] => [
  (x) => x,
  ...[1, 2, 3, 4, 5].map(parts),
  ...[...new Set(shares)].filter((share) => share <= 1 / 2).map(threshold),
];

interface Box {
  readonly width: number;
  readonly height: number;
}

/** Pieces that may turn count by the way they lie that counts less: no plan does with less than that. */
function publishedBound(pieces: readonly (Box & { readonly turns: boolean })[], sheet: Box): number {
  const across = scales(pieces.flatMap(({ width, height }) => [width / sheet.width, height / sheet.width]));
  const up = scales(pieces.flatMap(({ width, height }) => [height / sheet.height, width / sheet.height]));
  const fills = (width: number, height: number, f: Scale, g: Scale): number =>
    width > sheet.width + NOISE || height > sheet.height + NOISE
      ? Number.POSITIVE_INFINITY
      : f(width / sheet.width) * g(height / sheet.height);
  const sums = across.flatMap((f) =>
    up.map((g) =>
      pieces.reduce((sum, { width, height, turns }) => {
        const straight = fills(width, height, f, g);
        return sum + (turns ? Math.min(straight, fills(height, width, f, g)) : straight);
      }, 0),
    ),
  );
  return Math.ceil(Math.max(...sums) - 1e-6);
}

describe("the sheets sawn for a generated face", () => {
  it(
    "are never fewer than the published bound for their pieces, and at most one more",
    () => {
      let sawn = 0;
      fc.assert(
        fc.property(smallFace(), (face) => {
          const project = faceProject(face);
          const part = cutFacade(project, design(project).facade).plan?.sheets[0];
          if (!part) throw new Error("the face has sheets to saw");
          const { result, request } = part;
          const { kerf = 0 } = request;
          const trim = 2 * (request.stock[0]?.trim ?? 0);
          const unplaced = result.plan.unplaced.map(({ demandId }) => demandId);
          // A saw's kerf lies beside every piece, and once more than it must in a sheet.
          const pieces = request.demands
            .filter(({ id }) => !unplaced.includes(id))
            .map(({ width, height, mayTurn }) => ({
              width: width + kerf,
              height: height + kerf,
              turns: mayTurn ?? true,
            }));
          const [width, height] = face.stock;
          const sheet = { width: width - trim + kerf, height: height - trim + kerf };
          const bound = publishedBound(pieces, sheet);
          sawn += result.plan.sheets.length;
          expect(result.plan.sheets.length).toBeGreaterThanOrEqual(bound);
          expect(result.plan.sheets.length).toBeLessThanOrEqual(bound + 1);
        }),
        { numRuns: RUNS, seed: 20261204 },
      );
      expect(sawn).toBeGreaterThan(RUNS);
    },
    LIMIT_MS,
  );
});
