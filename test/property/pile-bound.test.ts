/**
 * The bounds of the pile against HiGHS, a general solver of integer programmes: it reads the same small piles through a model of its
 * own, piece by piece, and finds the least area left out and the least area of boards.
 */
import fc from "fast-check";
import loadHighs from "highs";
import { beforeAll, describe, expect, it } from "vitest";
import { cutPile, type PileRequest, type PileResult } from "../../src/cutting/index.ts";

type Highs = Awaited<ReturnType<typeof loadHighs>>;

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

const KERF = 3;
const STRAIGHTEN = 2;
const END_TRIM = 10;
const MM2_PER_M2 = 1e6;

const board = fc.record({
  lot: fc.constantFrom("A", "B"),
  length: fc.integer({ min: 900, max: 2600 }),
  width: fc.integer({ min: 90, max: 230 }),
  thickness: fc.constantFrom(19, 22, 25),
  wane: fc.option(fc.integer({ min: 3, max: 20 }), { nil: undefined }),
  defect: fc.option(
    fc.record({ at: fc.double({ min: 0.1, max: 0.8, noNaN: true }), long: fc.integer({ min: 20, max: 90 }) }),
    {
      nil: undefined,
    },
  ),
});
const piece = fc.record({
  want: fc.integer({ min: 0, max: 2 }),
  length: fc.integer({ min: 200, max: 1700 }),
});
const WANTS = [{ width: 70 }, { width: 95, minThickness: 20 }, { width: 95, lots: ["A"] }] as const;

const piles = fc
  .record({
    boards: fc.array(board, { minLength: 2, maxLength: 5 }),
    pieces: fc.array(piece, { minLength: 4, maxLength: 11 }),
  })
  .map(
    ({ boards, pieces }): PileRequest => ({
      kerf: KERF,
      straighten: STRAIGHTEN,
      endTrim: END_TRIM,
      budget: 60,
      boards: boards.map(({ lot, length, width, thickness, wane, defect }, at) => ({
        id: `b${at}`,
        lot,
        length,
        width,
        thickness,
        ...(wane === undefined ? {} : { wane: { edge: "left", width: wane } as const }),
        defects: defect
          ? [{ from: Math.round(defect.at * length), to: Math.round(defect.at * length) + defect.long }]
          : [],
      })),
      wanted: WANTS.map((want, at) => ({
        section: String(at),
        ...want,
        lots: "lots" in want ? [...want.lots] : ["A", "B"],
        pieces: pieces.flatMap((one, number) =>
          one.want === at ? [{ id: `p${number}`, length: one.length }] : [],
        ),
      })),
    }),
  );

/** Boards, strips by slot and width, pieces by slot and sound run; as many slots as the narrowest width gives. */
function modelOf({ boards, wanted }: PileRequest, isWanted: (id: string) => boolean) {
  const rows: string[] = [];
  const binaries: string[] = [];
  const placed = new Map<string, string[]>();
  const used: { name: string; area: number }[] = [];
  boards.forEach((one, b) => {
    used.push({ name: `u${b}`, area: (one.length * one.width) / MM2_PER_M2 });
    binaries.push(`u${b}`);
    const room = one.width - (one.wane?.width ?? 0) - 2 * STRAIGHTEN + KERF;
    const [defect] = one.defects;
    const runs = defect
      ? [defect.from - END_TRIM, one.length - END_TRIM - defect.to]
      : [one.length - 2 * END_TRIM];
    const across: string[] = [];
    for (let s = 0; s < Math.floor(room / (70 + KERF)); s++) {
      const kinds = wanted.flatMap((want, w) => {
        const suits =
          one.thickness >= (want.minThickness ?? 0) &&
          (want.lots === undefined || want.lots.includes(one.lot));
        return suits ? [{ want, w, name: `y${b}_${s}_${w}` }] : [];
      });
      if (kinds.length === 0) continue;
      binaries.push(...kinds.map(({ name }) => name));
      rows.push(`${kinds.map(({ name }) => name).join(" + ")} - u${b} <= 0`);
      across.push(...kinds.map(({ name, want }) => `${want.width + KERF} ${name}`));
      runs.forEach((run, r) => {
        const along: string[] = [];
        for (const { want, name } of kinds) {
          for (const { id, length } of want.pieces) {
            if (!isWanted(id) || length > run) continue;
            const own = `x${id}_${b}_${s}_${r}`;
            binaries.push(own);
            placed.set(id, [...(placed.get(id) ?? []), own]);
            rows.push(`${own} - ${name} <= 0`);
            along.push(`${length + KERF} ${own}`);
          }
        }
        if (along.length > 0) rows.push(`${along.join(" + ")} <= ${run + KERF}`);
      });
    }
    if (across.length > 0) rows.push(`${across.join(" + ")} <= ${room}`);
  });
  return { rows, binaries, placed, used };
}

function solve(objective: string, rows: readonly string[], binaries: readonly string[]): number {
  const text = ["Minimize", ` obj: ${objective}`, "Subject To", ...rows.map((row, i) => ` c${i}: ${row}`)];
  const { Status, ObjectiveValue } = highs.solve(
    [...text, "Binary", ` ${binaries.join(" ")}`, "End"].join("\n"),
    { mip_rel_gap: 0, mip_abs_gap: 0 },
  );
  expect(Status).toBe("Optimal");
  return ObjectiveValue;
}

function leastLeftOut(request: PileRequest): number {
  const { rows, binaries, placed } = modelOf(request, () => true);
  const pieces = request.wanted.flatMap(({ width, pieces }) =>
    pieces.map(({ id, length }) => ({ id, area: (width * length) / MM2_PER_M2 })),
  );
  const once = pieces.map(({ id }) => `${[...(placed.get(id) ?? []), `o${id}`].join(" + ")} = 1`);
  const out = pieces.map(({ id, area }) => `${area} o${id}`).join(" + ");
  return solve(out, [...rows, ...once], [...binaries, ...pieces.map(({ id }) => `o${id}`)]);
}

/** For the pieces that the plan places. */
function leastBoards(request: PileRequest, { lengths: { plan } }: PileResult): number {
  const ids = new Set(plan.bars.flatMap(({ pieces }) => pieces.map(({ demandId }) => demandId)));
  if (ids.size === 0) return 0;
  const { rows, binaries, placed, used } = modelOf(request, (id) => ids.has(id));
  const once = [...ids].map((id) => `${(placed.get(id) ?? []).join(" + ")} = 1`);
  return solve(used.map(({ name, area }) => `${area} ${name}`).join(" + "), [...rows, ...once], binaries);
}

describe("the bounds of the pile, against HiGHS", () => {
  it("are never above what is best, and what is called best is", () => {
    const tally = { best: 0, all: 0 };
    fc.assert(
      fc.property(piles, (request) => {
        const result = cutPile(request);
        const { leftOut, lengths } = result;
        const out = leastLeftOut(request);
        expect(leftOut.least).toBeLessThanOrEqual(out + 2e-6);
        expect(leftOut.area).toBeGreaterThanOrEqual(out - 2e-6);
        const boards = leastBoards(request, result);
        expect(lengths.bound.bound).toBeLessThanOrEqual(boards + 2e-6);
        expect(lengths.cost).toBeGreaterThanOrEqual(boards - 2e-6);
        if (lengths.bound.proven) {
          expect(leftOut.area).toBeCloseTo(out, 5);
          expect(lengths.cost).toBeCloseTo(boards, 5);
        }
        tally.all += 1;
        if (lengths.bound.proven) tally.best += 1;
      }),
      { numRuns: 40, seed: 1 },
    );
    // A bound that is never reached would be of no use.
    expect(tally.best).toBeGreaterThan(tally.all / 2);
  });

  it("reach what is best where areas of boards end below a millionth of a square metre, as widths of half a millimetre make them", () => {
    const sawn = { lot: "A", thickness: 19, defects: [] };
    const board = (id: string, length: number, width: number) => ({ ...sawn, id, length, width });
    // One strip of each of the first two, neither long enough for both pieces: both boards, by hand 0.1069545 + 0.1266825 m².
    const { lengths } = cutPile({
      kerf: 0,
      straighten: 0,
      budget: 40,
      boards: [board("a", 631, 169.5), board("b", 723.9, 175), board("narrow", 3453, 60.325)],
      wanted: [
        {
          section: "88",
          width: 88,
          pieces: [
            { id: "short", length: 327 },
            { id: "long", length: 397 },
          ],
        },
      ],
    });
    expect(lengths.bound).toMatchObject({ bound: 0.233637, proven: true });
  });
});
