/** The CSV files of all example buildings: they read back by the RFC's grammar to the values that they were made from. */
import { describe, expect, it } from "vitest";
import { csvFiles } from "../../src/output/csv/csv-files.ts";
import { cutSheetScene } from "../../src/scene/views/cutting/cut-sheet.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { ENGLISH_MM, type Reader } from "../../src/text/say.ts";
import { cutLengthMm } from "../../src/units/rounding.ts";
import { readCsv, readTable } from "./csv-reader.ts";
import { example, exampleNames } from "./cut-facade-examples.ts";

const NAMES = [
  "piece-schedule.csv",
  "batten-schedule.csv",
  "fixings.csv",
  "cut-list-sheets.csv",
  "cut-order-sheets.csv",
  "cut-list-lengths.csv",
  "rip-list.csv",
  "order.csv",
];

const BOX = ["x", "y", "width", "height"] as const;
type Box = Readonly<Record<(typeof BOX)[number], number>>;

function filesOf(name: string, reader: Reader): Map<string, string> {
  const { project, facade, cut } = example(name);
  const cutPlan = cut.plan;
  const takeoff = takeOff(project, facade, cutPlan);
  return new Map(csvFiles({ facade, cutPlan, takeoff, reader }).map((file) => [file.name, file.text]));
}

describe.each(exampleNames)("%s", (name) => {
  const { project, facade, cut, reader } = example(name);
  const { plan } = cut;
  const takeoff = takeOff(project, facade, plan);
  const english = filesOf(name, ENGLISH_MM);
  const table = (file: string) => readTable(english.get(file) ?? "");

  it("are these files, readable, without a byte order mark, in every reader's units and language", () => {
    for (const language of ["en", "fr"] as const) {
      for (const units of ["mm", "feet-inch"] as const) {
        const files = filesOf(name, { language, units, denominator: 16 });
        expect([...files.keys()]).toEqual(NAMES);
        for (const text of files.values()) {
          expect(text).not.toMatch(/^\uFEFF|NaN|undefined|\[schedule/);
          const [titles, ...records] = readCsv(text);
          for (const record of records) expect(record.length).toBe(titles?.length);
        }
      }
    }
  });

  it("hold every cladding piece with its size and weight", () => {
    const rows = table("piece-schedule.csv");
    expect(rows.map((row) => row.Mark)).toEqual(takeoff.pieces.map(({ mark }) => mark));
    rows.forEach((row, i) => {
      const piece = takeoff.pieces[i];
      expect(Number(row["Length (mm)"])).toBe(cutLengthMm(piece?.length ?? 0, { step: 0.5 }));
      expect(Number(row["Mass (kg)"])).toBeCloseTo(piece?.massKg ?? 0, 6);
    });
  });

  it("hold every screw of the facade once", () => {
    const rows = table("fixings.csv");
    const fixings = facade.faces.flatMap((face) =>
      face.pieces.flatMap((piece) => piece.fixings.map((fixing) => ({ mark: piece.mark, fixing }))),
    );
    expect(rows.length).toBe(fixings.length);
    expect(rows.length).toBe(takeoff.screws.reduce((sum, { count }) => sum + count, 0));
    rows.forEach((row, i) => {
      const at = fixings[i];
      expect([row.Piece, row.Screw, row.Into]).toEqual([at?.mark, at?.fixing.screw, at?.fixing.into]);
      expect(Math.abs(Number(row["x from the left end (mm)"]) - (at?.fixing.x ?? 0))).toBeLessThanOrEqual(
        0.25,
      );
      expect(Math.abs(Number(row["y from the datum (mm)"]) - (at?.fixing.y ?? 0))).toBeLessThanOrEqual(0.25);
      expect(Number(row["Hole (mm)"])).toBeGreaterThanOrEqual((at?.fixing.hole ?? 0) - 1e-6);
    });
  });

  it("hold every placed piece in a cut list, and nothing else", () => {
    const marks = [...table("cut-list-sheets.csv"), ...table("cut-list-lengths.csv")]
      .filter((row) => row.What === "piece")
      .map((row) => row.Piece);
    const missing = new Set([
      ...(plan?.unplaced ?? []).map(({ mark }) => mark),
      ...(plan?.boards.toFind ?? []).flatMap(({ pieces }) => pieces.map(({ mark }) => mark)),
    ]);
    const sawn = facade.faces
      .flatMap((face) => face.pieces)
      .filter(({ kind }) =>
        ["sheet", "board", "batten", "counter-batten", "rail", "post", "backing", "return"].includes(kind),
      )
      .map(({ mark }) => mark)
      .filter((mark) => !missing.has(mark));
    expect(marks.sort()).toEqual(sawn.sort());
  });

  it("tell the cuts of every sheet by the numbers that are drawn on it, each through a part that is there by then", () => {
    const rows = table("cut-order-sheets.csv");
    const sheets = (plan?.sheets ?? []).flatMap(({ request, result }) =>
      result.plan.sheets.map((sheet) => ({
        sheet,
        stock: request.stock.find(({ id }) => id === sheet.stockId),
        kerf: request.kerf,
      })),
    );
    let read = 0;
    sheets.forEach(({ sheet, stock, kerf }, at) => {
      if (!stock) throw new Error("a sheet is of a stock");
      const own = rows.filter((row) => row.Sheet === String(at + 1));
      read += own.length;
      const { items } = cutSheetScene(sheet, { stock, scale: 1 / 28 });
      const drawn = items.filter((item) => item.kind === "line" && item.line === "control");
      const numbers = items.flatMap((item) =>
        item.kind === "text" && typeof item.text === "string" && /^\d+$/.test(item.text) ? [item.text] : [],
      );
      expect(own.map((row) => row.Cut)).toEqual(numbers);
      // Sawn again from the list alone: every part by what it is called, as a box in the sheet's frame.
      const parts = new Map([["whole sheet", sheet.tree as Box]]);
      own.forEach((row, i) => {
        const part = parts.get(row.Part ?? "");
        if (!part) throw new Error(`cut ${row.Cut} goes through ${row.Part}, which is not there`);
        const along = row.Way === "along the height";
        const line = drawn[i];
        if (line?.kind !== "line") throw new Error("a cut is drawn as a line");
        const drawnAt = along ? line.from[0] : line.from[1];
        expect(Math.abs(Number(row["At (mm)"]) - drawnAt)).toBeLessThanOrEqual(0.25);
        expect(Number(row["Length of cut (mm)"])).toBeCloseTo(
          Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]),
          5,
        );
        const off = drawnAt - (along ? part.x : part.y);
        expect(Number(row["Off the edge (mm)"])).toBe(cutLengthMm(off, { step: 0.5 }));
        const { x, y, width, height } = part;
        const [low, high] = along
          ? [
              { x, y, width: off, height },
              { x: x + off + kerf, y, width: width - off - kerf, height },
            ]
          : [
              { x, y, width, height: off },
              { x, y: y + off + kerf, width, height: height - off - kerf },
            ];
        parts.set(`${along ? "left of" : "below"} cut ${row.Cut}`, low);
        parts.set(`${along ? "right of" : "above"} cut ${row.Cut}`, high);
        parts.delete(row.Part ?? "");
      });
      // What is left after the last cut holds every piece as a part of its own.
      const left = [...parts.values()];
      for (const piece of sheet.placements) {
        const same = left.filter((one) => BOX.every((side) => Math.abs(one[side] - piece[side]) < 1e-3));
        expect(same).toHaveLength(1);
      }
    });
    expect(read).toBe(rows.length);
  });

  it("number as many sheets and bars as the order needs", () => {
    const sheets = new Set(table("cut-list-sheets.csv").map((row) => row.Sheet)).size;
    const bars = new Set(
      table("cut-list-lengths.csv")
        .filter((row) => row.Use !== "pile")
        .map((row) => row.Bar),
    ).size;
    const needed = (unit: string): number =>
      table("order.csv")
        .filter((row) => row.Unit === unit)
        .reduce((sum, row) => sum + Number(row.Needed), 0);
    expect(needed("sheet")).toBe(sheets);
    expect(needed("length")).toBe(bars);
  });

  it("end the order with the sum of its amounts, and say where a price is not given", () => {
    const rows = table("order.csv");
    const { currency } = project.stock;
    const lines = rows.slice(0, -1);
    const amount = `Amount (${currency})`;
    const sum = lines.reduce((total, row) => total + Math.round(100 * Number(row[amount])), 0) / 100;
    expect(Number(rows.at(-1)?.[amount])).toBeCloseTo(sum, 6);
    for (const row of lines) {
      expect(row.Note).toBe(row[amount] === "" ? "price not given" : "");
      if (row[amount] !== "") {
        const exact = Number(row["To order"]) * Number(row[`Unit price (${currency})`]);
        expect(Math.abs(Number(row[amount]) - exact)).toBeLessThanOrEqual(0.005 + 1e-6);
      }
    }
  });

  it("are the same bytes each time", () => {
    expect([...filesOf(name, reader)]).toEqual([...filesOf(name, reader)]);
  });
});
