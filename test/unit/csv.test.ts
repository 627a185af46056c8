/** Cells: what a spreadsheet might run, numbers, and lengths in the reader's units. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Column, column, csvFile, lengthColumns } from "../../src/output/csv/table.ts";
import { csvText } from "../../src/output/csv/write.ts";
import type { Reader } from "../../src/text/say.ts";

const MM: Reader = { language: "en", units: "mm", denominator: 16 };
const FEET: Reader = { language: "en", units: "feet-inch", denominator: 16 };

describe("text that a spreadsheet would run", () => {
  it.each(["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx"])("%j gets an apostrophe", (text) => {
    expect(csvText([[text]]).replaceAll('"', "")).toBe(`'${text}\r\n`);
  });

  it("is guarded inside quotes too", () => {
    expect(csvText([["=A1,B1"]])).toBe('"\'=A1,B1"\r\n');
  });

  it("a minus of a number is none", () => {
    expect(csvText([[-18.5, "F-B101a", "3-0.5"]])).toBe("-18.5,F-B101a,3-0.5\r\n");
  });

  it("never leads a text field", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), (text) => {
        expect(csvText([[text]])).not.toMatch(/^"?[=+\-@\t\r]/);
      }),
    );
  });
});

describe("numbers", () => {
  it.each([
    [0, "0"],
    [-0, "0"],
    [10, "10"],
    [100.5, "100.5"],
    [1e-7, "0"],
    [-1e-7, "0"],
    [123456789.123, "123456789.123"],
    [0.1 + 0.2, "0.3"],
  ])("%d is written %s", (value, text) => {
    expect(csvText([[value, "x"]])).toBe(`${text},x\r\n`);
  });
});

function recordOf(columns: readonly Column<number>[], mm: number, reader: Reader): string {
  return csvFile("x.csv", { columns, rows: [mm], reader }).text;
}

describe("lengths", () => {
  const same = (mm: number): number => mm;

  it("stand with their unit in the title, in millimetres alone where these are read", () => {
    expect(recordOf([lengthColumns(MM)("length", "cut", same)], 2992.343125, MM)).toBe(
      "Length (mm)\r\n2992\r\n",
    );
  });

  it("have feet and inches beside them where these are read, rounded from the exact length", () => {
    // 911.225 mm is 35 7/8 in exactly; 911.0, as the saw list has it in millimetres, is not.
    expect(recordOf([lengthColumns(FEET)("length", "cut", same)], 911.225, FEET)).toBe(
      'Length (mm),Length (ft-in)\r\n911,"2\'-11 7/8"""\r\n',
    );
  });

  it("take the language of the reader in their titles, and a point all the same", () => {
    const reader: Reader = { ...MM, language: "fr" };
    expect(recordOf([lengthColumns(reader)("width", "cut", same)], 100.9, reader)).toBe(
      "Largeur (mm)\r\n100.5\r\n",
    );
  });

  it.each([
    // Cut lengths down, places to the nearest, holes up (units/rounding.ts); half and tenth millimetres.
    ["cut", 99.99, "99.5"],
    ["cut", 100, "100"],
    ["rip", 88.9, "88.9"],
    ["rip", 44.045, "44"],
    ["place", 99.74, "99.5"],
    ["place", 99.75, "100"],
    ["place", -18.5, "-18.5"],
    ["hole", 4.95, "5"],
    ["hole", 5, "5"],
    ["size", 1.5875, "1.5875"],
    ["size", 0.396875, "0.396875"],
  ] as const)("%s of %d mm is %s", (rounding, mm, text) => {
    expect(recordOf([lengthColumns(MM)("length", rounding, same)], mm, MM)).toBe(
      `Length (mm)\r\n${text}\r\n`,
    );
  });

  it("leave an empty field where there is none", () => {
    const none = lengthColumns(FEET)("length", "cut", (): number | undefined => undefined);
    expect(recordOf([none, column("mark", () => "M")], 1, FEET)).toBe(
      "Length (mm),Length (ft-in),Mark\r\n,,M\r\n",
    );
  });
});
