/** Readings from a table: titles and units of every language, repeats, and each bad row told with none taken. */
import { describe, expect, it } from "vitest";
import { readReadings } from "../../src/project/intake/readings/read-readings.ts";
import { readCsv } from "../../src/project/intake/table/read-csv.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";

const FACES = ["front", "west"];

function read(text: string) {
  const table = readCsv(text, "front.csv");
  if (!table.ok) throw new Error("no table");
  return readReadings(table.table, FACES);
}

const told = (text: string): string[] => {
  const found = read(text);
  return found.ok ? [] : found.findings.map(({ says }) => say(says, ENGLISH_MM));
};

describe("a table of readings", () => {
  it("has a row a reading, a place read twice standing twice", () => {
    expect(
      read("face,x (mm),y (mm),outward (mm)\r\nfront,0,1500,6\r\nfront,0,1500,7.5\r\nwest,610,0,-3\r\n"),
    ).toEqual({
      ok: true,
      readings: [
        { face: "front", x: 0, y: 1500, outward: 6 },
        { face: "front", x: 0, y: 1500, outward: 7.5 },
        { face: "west", x: 610, y: 0, outward: -3 },
      ],
    });
  });

  it("may be in French, parted by semicolons, in metres or inches", () => {
    expect(read('Face;X (m);Y (po);Vers l’extérieur (mm)\nfront;1,83;"59";4\n')).toEqual({
      ok: true,
      readings: [{ face: "front", x: 1830, y: 59 * 25.4, outward: 4 }],
    });
  });

  it("tells each row that fails, by row, column and value, and takes none", () => {
    expect(told("face,x,y,outward\nfront,0,0,two\nfrnot,0,0,1\nfront,0,0,3\n")).toEqual([
      "front.csv, row 2, column “outward”: “two” is no length.",
      "front.csv, row 3, column “face”: the project has no face “frnot”.",
    ]);
  });

  it("tells what columns it lacks, and that it is empty", () => {
    expect(told("face,x,height\nfront,0,0\n")).toEqual([
      "front.csv lacks a column for y, outward; its titles are face, x, height.",
    ]);
    expect(told("face,x,y,outward\n")).toEqual(["front.csv holds no reading."]);
  });
});
