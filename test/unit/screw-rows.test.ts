/** Rows of screws across sheets: straight where they can be, within the data sheet's distances always (common practice). */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { design } from "../../src/design.ts";
import { sliceVertical } from "../../src/geometry/polygon.ts";
import { rectOutline } from "../../src/geometry/rect.ts";
import { readDocument, readProject } from "../../src/project/read.ts";
import type { SheetCladding } from "../../src/project/schema/project.ts";
import type { DraftPiece } from "../../src/setout/draft.ts";
import { setOut } from "../../src/setout/set-out.ts";
import { rowLevels, rowsWithin } from "../../src/setout/sheets/screw-rows.ts";

const cladding = {
  dataSheet: { edgeDistance: [25, 70], fixingSpacing: [200, 600] },
} as unknown as SheetCladding;

const sheet = (from: number, to: number): DraftPiece =>
  ({ outline: rectOutline({ x: [0, 1000], y: [from, to] }) }) as unknown as DraftPiece;

describe("rows of screws", () => {
  it("run on level over an opening and beside it", () => {
    const levels = rowLevels([sheet(0, 3000), sheet(0, 3000), sheet(2100, 3000)], cladding);
    expect(levels).toEqual([50, 630, 1210, 1790, 2370, 2950]);
    expect(rowsWithin([2100, 3000], cladding, levels)).toEqual([2150, 2370, 2950]);
  });

  it("stay level under a rake, where the last row alone follows the slope", () => {
    const levels = rowLevels([sheet(0, 2400)], cladding);
    const [short, long] = [rowsWithin([0, 2200], cladding, levels), rowsWithin([0, 2300], cladding, levels)];
    expect(short.slice(0, -1)).toEqual(long.slice(0, -1));
    expect([short.at(-1), long.at(-1)]).toEqual([2150, 2250]);
  });

  it("keep the data sheet's spacing and edge distances, with one row more than needed at the most", () => {
    const stretch = fc.tuple(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 60, max: 3200 }));
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 1, maxLength: 6 }), stretch, (others, [from, length]) => {
        const levels = rowLevels(
          others.map(([low, high]) => sheet(low, low + high)),
          cladding,
        );
        const rows = rowsWithin([from, from + length], cladding, levels);
        const even = rowsWithin([from, from + length], cladding, []);
        const gaps = rows.slice(1).map((row, i) => row - (rows[i] as number));
        expect(Math.max(0, ...gaps)).toBeLessThanOrEqual(600 + 1e-9);
        // Two rows close together only where the sheet is too low for the least spacing.
        if (length >= 300)
          expect(Math.min(...gaps)).toBeGreaterThanOrEqual(Math.min(200, length - 100) - 1e-9);
        expect(Math.min(...rows) - from).toBeGreaterThanOrEqual(25);
        expect(from + length - Math.max(...rows)).toBeGreaterThanOrEqual(25);
        expect(rows.length).toBeLessThanOrEqual(even.length + 1);
      }),
      { numRuns: 2000 },
    );
  });

  it("are fewer than the heights that each sheet would choose alone, on the demo's raked wall", () => {
    const read = readProject(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"), "demo");
    if (!read.ok) throw new Error("the demo cannot be read");
    const east = design(read.project).facade.faces.find(({ id }) => id === "east");
    const sheets = east?.pieces.filter(({ kind }) => kind === "sheet") ?? [];
    const columns = sheets.flatMap(({ outline, fixings }) => {
      const xs = [...new Set(fixings.map(({ x }) => x))];
      return xs.flatMap((x) =>
        sliceVertical(outline, x).map((stretch) => ({
          stretch,
          rows: fixings.filter((one) => one.x === x).map(({ y }) => y),
        })),
      );
    });
    const inner = (rows: readonly number[]): number[] => [...rows].sort((a, b) => a - b).slice(1, -1);
    const laid = new Set(columns.flatMap(({ rows }) => inner(rows)));
    const alone = new Set(columns.flatMap(({ stretch }) => inner(rowsWithin(stretch, cladding, []))));
    expect(columns.length).toBeGreaterThan(15);
    expect(laid.size).toBeLessThan(alone.size / 2);
  });
});

describe("screws in the wind's edge zones, their width and spacing given", () => {
  // biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
  const demo = (edgeZone?: any) => {
    const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
    for (const one of document.claddings) {
      if (one.kind === "sheets" && edgeZone) one.dataSheet.edgeZone = edgeZone;
    }
    return readDocument(document, "edge zones");
  };
  const laid = (edgeZone?: unknown) => {
    const read = demo(edgeZone);
    if (!read.ok) throw new Error("the demo cannot be read");
    const { project } = read;
    return { project, facade: setOut(project, demandsOf(project)) };
  };
  const widest = (rows: readonly number[]): number => {
    const sorted = [...rows].sort((a, b) => a - b);
    return Math.max(0, ...sorted.slice(1).map((row, i) => row - (sorted[i] as number)));
  };

  it("stand no farther apart than the zone's spacing on every sheet that reaches into one, and as ever elsewhere", () => {
    const [plain, closer] = [laid(), laid({ width: 1000, fixingSpacing: [150, 300] })];
    let [inside, outside] = [0, 0];
    for (const face of closer.facade.faces.filter(({ frame }) => frame.level === undefined)) {
      const was = plain.facade.faces.find(({ id }) => id === face.id);
      const region = face.zones.flatMap((zone) => zone.region.map(([x]) => x));
      // The demo's walls meet at outside corners; what lines its recess meets them at inside ones.
      if (!["west", "front", "east", "north"].includes(face.id)) continue;
      const [left, right] = [Math.min(...region), Math.max(...region)];
      for (const piece of face.pieces.filter(({ kind }) => kind === "sheet")) {
        const xs = piece.outline.map(([x]) => x);
        const reaches = Math.min(...xs) < left + 1000 || Math.max(...xs) > right - 1000;
        const before = was?.pieces.find(({ mark }) => mark === piece.mark);
        if (!reaches) {
          outside += 1;
          expect(piece.fixings).toEqual(before?.fixings);
          continue;
        }
        inside += 1;
        for (const x of new Set(piece.fixings.map((one) => one.x))) {
          const rows = piece.fixings.filter((one) => one.x === x).map(({ y }) => y);
          const free = sliceVertical(piece.outline, x);
          for (const [from, to] of free) {
            expect(widest(rows.filter((y) => y > from && y < to)), piece.mark).toBeLessThanOrEqual(
              300 + 1e-6,
            );
          }
        }
      }
    }
    expect(inside).toBeGreaterThan(5);
    expect(outside).toBeGreaterThan(2);
  });

  it("keep the rows that run across the wall, and stand between them", () => {
    const rows = rowsWithin([0, 3000], cladding, []);
    const closer = { dataSheet: { ...cladding.dataSheet, fixingSpacing: [150, 300] } } as SheetCladding;
    expect(rowsWithin([0, 3000], closer, rows)).toEqual(expect.arrayContaining(rows));
  });

  it("are refused where the spacing's ends are swapped", () => {
    const read = demo({ width: 1000, fixingSpacing: [300, 150] });
    expect(read.ok ? [] : read.findings.map(({ code, where }) => [code, where.path])).toEqual([
      ["F016", expect.stringMatching(/dataSheet\/edgeZone\/fixingSpacing$/)],
    ]);
  });
});
