/** Readings from a table: titles and units of every language, repeats, each bad row told with none taken, and what becomes of the survey. */
import { describe, expect, it } from "vitest";
import { readingsCsv } from "../../src/output/csv/readings.ts";
import { allBytes } from "../../src/output/pieces.ts";
import { writeWorkbook } from "../../src/output/xlsx/workbook.ts";
import { setPlace } from "../../src/project/editing/readings.ts";
import { READING_COLUMNS, type ReadingColumn } from "../../src/project/intake/readings/columns.ts";
import { readReadings } from "../../src/project/intake/readings/read-readings.ts";
import { takeReadings } from "../../src/project/intake/readings/take-readings.ts";
import { lacksUnit, mapColumns, type Reads } from "../../src/project/intake/table/columns.ts";
import { readCsv } from "../../src/project/intake/table/read-csv.ts";
import { readXlsx } from "../../src/project/intake/table/read-xlsx.ts";
import type { ReadTable } from "../../src/project/intake/table/table.ts";
import { tried } from "../../src/project/intake/taken.ts";
import { readDocument } from "../../src/project/read.ts";
import { readingsOf } from "../../src/site/survey/reading.ts";
import { ENGLISH_MM, type Reader, say } from "../../src/text/say.ts";
import { exampleSource } from "../helpers/editing.ts";

const outline: [number, number][] = [
  [0, -100],
  [7200, -100],
  [7200, 3000],
  [0, 3000],
];
const FACES = ["front", "west"].map((id) => ({ id, outline }));

function tableOf(read: ReadTable) {
  if (!read.ok) throw new Error("no table");
  return read.table;
}

function read(text: string, more: Partial<Reads<ReadingColumn>> = {}) {
  const table = tableOf(readCsv(text, "front.csv"));
  return readReadings(table, { mapping: mapColumns(table, READING_COLUMNS), faces: FACES, ...more });
}

const told = (text: string, more: Partial<Reads<ReadingColumn>> = {}): string[] => {
  const found = read(text, more);
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
      findings: [],
    });
  });

  it("may be in French, parted by semicolons, in metres or inches", () => {
    expect(read('Face;X (m);Y (po);Vers l’extérieur (mm)\nfront;1,83;"59";4\n')).toEqual({
      ok: true,
      readings: [{ face: "front", x: 1830, y: 59 * 25.4, outward: 4 }],
      findings: [],
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
      "front.csv has no column for: y from the datum, Outward. Its titles: face, x, height.",
    ]);
    expect(told("face,x,y,outward\n")).toEqual(["front.csv holds no reading."]);
  });
});

describe("columns and units that are said", () => {
  const csv = "wall,along,up,dev\nFRONT,1.83,1.5,0.012\n";
  it("read a table of any titles, in the unit where neither title nor figure gives one", () => {
    const mapping = { face: 0, x: 1, y: 2, outward: 3 };
    expect(read(csv, { mapping, unit: "m" })).toEqual({
      ok: true,
      readings: [{ face: "front", x: 1830, y: 1500, outward: 12 }],
      findings: [],
    });
    // A figure's own unit, and its title's, go before.
    expect(read("face,x (mm),y,outward\nfront,610,2,6 mm\n", { unit: "m" })).toMatchObject({
      readings: [{ face: "front", x: 610, y: 2000, outward: 6 }],
    });
  });

  it("ask for a unit only where a column of lengths gives none", () => {
    const lacks = (titles: string) => {
      const table = tableOf(readCsv(`${titles}\n`, "t.csv"));
      return lacksUnit(table, READING_COLUMNS, mapColumns(table, READING_COLUMNS));
    };
    expect(lacks("face,x (mm),y (in),outward (mm)")).toBe(false);
    expect(lacks("face,x (mm),y (in),outward")).toBe(true);
  });
});

describe("rows that cannot be", () => {
  it.each([
    [",0,0,1", "row 2, column “face”: the project has no face “”."],
    ["front,,0,1", "row 2, column “x”: “” is no length."],
    ["front,0,=1+2,1", "row 2, column “y”: “=1+2” is no length."],
    ["front,0,0,1e5", "row 2, column “outward”: “1e5” is no length."],
    ["front,0,0,NaN", "row 2, column “outward”: “NaN” is no length."],
    ["front,0,0,999999", "row 2, column “outward”: 999999 is further than any building reaches."],
    ["front,0,0,1.2.3", "row 2, column “outward”: “1.2.3” is no length."],
    // x and y changed about.
    [
      "front,1500,7200,3",
      "row 2, column “y”: 7200 lies off face front, which reaches from −100 mm to 3000 mm.",
    ],
    ["front,-200,0,3", "row 2, column “x”: -200 lies off face front, which reaches from 0 mm to 7200 mm."],
  ])("%s is told with what it should be, and nothing is taken", (row, says) => {
    expect(told(`face,x,y,outward\n${row}\nfront,0,0,3\n`)).toEqual([`front.csv, ${says}`]);
  });

  it("may lie a little beyond the face as it is drawn: walls are built longer than that", () => {
    expect(read("face,x,y,outward\nfront,7340,0,3\n").ok).toBe(true);
    expect(read("face,x,y,outward\nfront,7351,0,3\n").ok).toBe(false);
  });

  it("are passed over and told where a place waits for its reading, but not where nothing else was read", () => {
    const found = read("face,x,y,outward\nfront,0,0,3\nfront,1200,0,\nfront,2400,0,\n");
    expect(
      found.ok && [found.readings.length, found.findings.map(({ says }) => say(says, ENGLISH_MM))],
    ).toEqual([1, ["front.csv: 2 rows have no reading and are passed over (row 3, 4)."]]);
    expect(told("face,x,y,outward\nfront,0,0,\n")).toEqual(["front.csv holds no reading."]);
    // A place that waits is still looked at.
    expect(told("face,x,y,outward\nfrnot,0,0,\nfront,0,0,1\n")).toHaveLength(1);
  });
});

describe("the survey of a project", () => {
  const source = exampleSource("atelier-bouleau");
  const take = (csv: string, from = source) => {
    const table = tableOf(readCsv(csv, "t.csv"));
    const mapping = mapColumns(table, READING_COLUMNS);
    const found = readReadings(table, { mapping, faces: from.project.faces });
    if (!found.ok) throw new Error(found.findings.map(({ says }) => say(says, ENGLISH_MM)).join());
    const { change, tells, places } = takeReadings(from, found.readings, "t.csv");
    const taken = tried({ document: from.document, name: "demo" }, { change, tells, findings: [] });
    const again = taken.ok ? readDocument(taken.document, "demo") : undefined;
    if (!taken.ok || !again?.ok) throw new Error("not taken");
    return {
      operations: change.operations,
      told: tells.map((one) => say(one, ENGLISH_MM)),
      kinds: places.map(({ kind }) => kind),
      source: { project: again.project, document: taken.document },
    };
  };
  const survey = (of: typeof source, face: string) => of.project.survey?.find((one) => one.face === face);
  const READERS: readonly Reader[] = [ENGLISH_MM, { language: "fr", units: "feet-inch", denominator: 16 }];

  it.each(READERS)(
    "is the same after the table that it is written as, in CSV and XLSX ($language)",
    async (reader) => {
      const { text, records } = readingsCsv(source.project, reader);
      const [titles = [], ...rows] = [...records];
      const workbook = writeWorkbook([{ name: "readings", titles: titles.map(String), rows }], {
        title: "",
        paper: "A4",
      });
      for (const table of [readCsv(text, "t.csv"), await readXlsx(allBytes(workbook), "t.xlsx")].map(
        tableOf,
      )) {
        const mapping = mapColumns(table, READING_COLUMNS);
        const found = readReadings(table, { mapping, faces: source.project.faces });
        expect(found.ok && found.readings).toEqual(readingsOf(source.project));
        // Walls that were not read yet stand there with places to read: those wait.
        expect(found.findings.map(({ says }) => says.key)).toEqual(["intake.readings.unread"]);
        const { change, tells } = takeReadings(source, found.ok ? found.readings : [], "t.csv");
        expect(change.operations).toEqual([]);
        expect(tells.map(({ key }) => key)).toEqual(["intake.change.readings-same"]);
      }
    },
  );

  it("takes new readings, replaces those of the same place with their repeats, and keeps the others", () => {
    const row = (x: number, y: number, outward: number) => `front,${x},${y},${outward}`;
    const csv = [
      "face,x,y,outward",
      row(0, 0, 2),
      row(1830, 1500, 14),
      row(1830, 1500, 15),
      row(900, 700, 6),
    ];
    const taken = take(csv.join("\n"));
    expect(taken.kinds).toEqual(["same", "replaced", "new"]);
    expect(taken.told).toEqual([
      "front: 1 new reading.",
      "front: 1 reading is replaced.",
      "front: 1 reading is the same.",
      "front: 13 readings that the table does not name stay.",
    ]);
    const before = survey(source, "front");
    expect(survey(taken.source, "front")).toEqual({
      ...before,
      outward: before?.outward.map((line, j) => line.map((one, i) => (i === 1 && j === 1 ? 14 : one))),
      places: [{ x: 900, y: 700, outward: 6 }],
      again: [
        { x: 5490, y: 0, outward: 3 },
        { x: 1830, y: 1500, outward: 15 },
        { x: 7200, y: 3000, outward: -3 },
      ],
    });
    expect(readingsOf(taken.source.project)).toHaveLength(readingsOf(source.project).length + 1);
    // The same once more changes nothing; one typed over is the last that came.
    expect(take(csv.join("\n"), taken.source).operations).toEqual([]);
    const typed = setPlace(taken.source, { face: "front", at: 0 }, 7);
    expect(typed?.operations).toEqual([{ op: "replace", path: "/survey/0/places/0/outward", value: 7 }]);
    expect(setPlace(taken.source, { face: "front", at: 1 }, 7)).toBeUndefined();
  });

  it("makes a grid of a wall where every place of one was read, and keeps strewn readings as they lie", () => {
    const grid = "face,x,y,outward\nnorth,0,0,1\nnorth,2000,0,2\nnorth,0,1500,3\nnorth,2000,1500,4\n";
    const first = take(grid).source;
    expect(survey(first, "north")).toEqual({
      face: "north",
      x: [0, 2000],
      y: [0, 1500],
      outward: [
        [1, 2],
        [3, 4],
      ],
    });
    const strewn = take("face,x,y,outward\nnorth,0,0,1\nnorth,2000,1500,4\n").source;
    expect(survey(strewn, "north")).toEqual({
      face: "north",
      x: [],
      y: [],
      outward: [],
      places: [
        { x: 0, y: 0, outward: 1 },
        { x: 2000, y: 1500, outward: 4 },
      ],
    });
    // What is lacking comes later: it is a grid then, as if it had come at once.
    expect(survey(take(grid, strewn).source, "north")).toEqual(survey(first, "north"));
    expect(survey(strewn, "front")).toEqual(survey(source, "front"));
  });

  it("begins where nothing was read, and leaves what the file says beside alone", () => {
    const { survey: _, ...bare } = source.document as Record<string, unknown>;
    const read = readDocument(bare, "bare");
    if (!read.ok) throw new Error("not read");
    const begun = take("face,x,y,outward\nfront,0,0,1\n", { project: read.project, document: bare });
    expect(begun.operations.map(({ path }) => path)).toEqual(["/survey", "/survey/-"]);
    const noted = structuredClone(source.document) as { survey: Record<string, unknown>[] };
    Object.assign(noted.survey[0]!, { note: "by laser", x: ["0", "1830", "3660", "5490", "23'-7 15/32\""] });
    Object.assign((noted.survey[0]!.again as object[])[1]!, { note: "in the rain" });
    const again = readDocument(noted, "noted");
    if (!again.ok) throw new Error(again.findings.map(({ says }) => say(says, ENGLISH_MM)).join());
    const kept = take("face,x,y,outward\nfront,900,0,1\n", { project: again.project, document: noted });
    expect((kept.source.document as typeof noted).survey[0]).toMatchObject({
      note: "by laser",
      x: ["0", "1830", "3660", "5490", "23'-7 15/32\""],
      again: expect.arrayContaining([{ x: 5490, y: 0, outward: 3, note: "in the rain" }]),
    });
  });
});
