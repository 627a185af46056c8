/** A pile from a table: what is written reads back the same, what is wrong is told by row, column, value and mend, and nothing is half taken. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { pileCsv } from "../../src/output/csv/pile.ts";
import { allBytes } from "../../src/output/pieces.ts";
import { writeWorkbook } from "../../src/output/xlsx/workbook.ts";
import { PILE_COLUMNS } from "../../src/project/intake/pile/columns.ts";
import { readPile } from "../../src/project/intake/pile/read-pile.ts";
import { replacePile } from "../../src/project/intake/pile/replace-pile.ts";
import { mapColumns } from "../../src/project/intake/table/columns.ts";
import { readCsv } from "../../src/project/intake/table/read-csv.ts";
import { readXlsx } from "../../src/project/intake/table/read-xlsx.ts";
import type { ReadTable } from "../../src/project/intake/table/table.ts";
import { tried } from "../../src/project/intake/taken.ts";
import { readDocument, readProject } from "../../src/project/read.ts";
import { ENGLISH_MM, type Reader, say } from "../../src/text/say.ts";
import { bench } from "../helpers/cli.ts";

const text = readFileSync(new URL("../../examples/atelier-bouleau.outerleaf.json", import.meta.url), "utf8");
const read = readProject(text, "demo");
if (!read.ok) throw new Error("the demo is not read");
const { project, document } = read;
const lots = (project.pile?.lots ?? []).map(({ id }) => id);
const READERS: readonly Reader[] = [ENGLISH_MM, { language: "fr", units: "feet-inch", denominator: 16 }];

function pileOf(result: ReadTable) {
  if (!result.ok) throw new Error("no table");
  return readPile(result.table, { mapping: mapColumns(result.table, PILE_COLUMNS), lots });
}

function told(csv: string): string[] {
  const result = pileOf(readCsv(csv, "pile.csv"));
  return result.ok
    ? []
    : result.findings.map(
        ({ says, hint }) => `${say(says, ENGLISH_MM)} ${hint ? say(hint, ENGLISH_MM) : ""}`,
      );
}

describe("the pile that we write", () => {
  it("keeps what boards were sorted as, and refuses a grade that is a story", () => {
    const { pile } = project;
    if (!pile) throw new Error("no pile");
    const [one, ...others] = pile.boards;
    if (!one) throw new Error("no board");
    const sorted = { ...project, pile: { ...pile, boards: [{ ...one, grade: "dark" }, ...others] } };
    const read = pileOf(readCsv(pileCsv(sorted, ENGLISH_MM).text, "pile.csv"));
    expect(read.ok && read.pile.boards.map(({ grade }) => grade)).toEqual([
      "dark",
      ...others.map(() => undefined),
    ]);
    expect(told(`board,lot,length,width,thickness,grade\nA1,A,2000,100,20,${"dark ".repeat(9)}`)).toEqual([
      expect.stringMatching(/row 2, column “grade”.*too long.*40 characters/),
    ]);
  });

  it.each(READERS)("reads back as the pile that it is, in CSV and XLSX ($language)", async (reader) => {
    const {
      text: csv,
      records: [titles = [], ...rows],
    } = pileCsv(project, reader);
    const xlsx = writeWorkbook([{ name: "pile", titles: titles.map(String), rows }], {
      title: "",
      paper: "A4",
    });
    for (const table of [readCsv(csv, "pile.csv"), await readXlsx(allBytes(xlsx), "pile.xlsx")]) {
      const pile = pileOf(table);
      if (!pile.ok) throw new Error(pile.findings.map(({ says }) => say(says, ENGLISH_MM)).join());
      const { change, tells } = replacePile({ project, document }, pile.pile, "pile.csv");
      const taken = tried({ document, name: "demo" }, { change, tells, findings: [] });
      if (!taken.ok) throw new Error("not taken");
      const again = readDocument(taken.document, "demo");
      expect(again.ok && again.project.pile).toEqual(project.pile);
      expect(tells.map(({ key }) => key)).toEqual(["intake.change.pile"]);
    }
  });
});

describe("a table of someone else's", () => {
  it("is parted by semicolons or tabs, in any order, with units in the titles or at the figures", () => {
    const csv =
      'Largeur (po);Planche;Lot;Longueur de la planche (cm);Épaisseur\r\n"5 1/2";X1;A;243,5;24\r\n;;;;\r\n6;X2;A;"8\'-0""";"1 in"\r\n';
    const pile = pileOf(readCsv(csv, "pile.csv"));
    expect(
      pile.ok && pile.pile.boards.map(({ id, length, width, thickness }) => [id, length, width, thickness]),
    ).toEqual([
      ["X1", 2435, 139.7, 24],
      ["X2", 2438.4, 152.4, 25.4],
    ]);
  });

  it("brings lots of its own where it says their species", () => {
    const pile = pileOf(
      readCsv(
        "board,lot,length,width,thickness,species,lot from\nX1,Z,2400,140,24,white-spruce,barn\n",
        "p.csv",
      ),
    );
    expect(pile.ok && pile.pile.lots).toEqual([{ id: "Z", species: "white-spruce", from: "barn" }]);
  });
});

const HEAD = "board,lot,length,width,thickness,defects,wane\n";

describe("a bad row is told by row, column, value and mend", () => {
  it.each([
    ["X1,A,abc,140,24", ["row 3", "length", "“abc” is no length", "8'-0"]],
    ["X1,A,,140,24", ["row 3", "length", "nothing stands there"]],
    ["1X,A,2400,140,24", ["row 3", "board", "“1X” is no name"]],
    ["OK,A,2400,140,24", ["row 3", "board", "row 2 already"]],
    ["X1,Q,2400,140,24", ["row 3", "lot", "“Q” is not known"]],
    ["X1,A,-5,140,24", ["row 3", "length", "more than nothing"]],
    ["X1,A,2400,140,24,rot", ["row 3", "defects", "“rot”"]],
    ["X1,A,2400,140,24,rot 2300-2500", ["row 3", "defects", "runs off the board"]],
    ["X1,A,2400,140,24,,left 140", ["row 3", "wane", "no wane"]],
  ])("%s", (row, words) => {
    const [first, ...more] = told(`${HEAD}OK,A,2400,140,24\n${row}\n`);
    expect(more).toEqual([]);
    for (const word of words) expect(first).toContain(word);
  });

  it("all of them at once, and a table without its columns or boards", () => {
    expect(told(`${HEAD}1,A,x,140,24\n2,A,y,140,24\n`)).toHaveLength(4);
    expect(told("a,b\n1,2\n")[0]).toContain("no column for: Board, Lot, Board length");
    expect(told(HEAD)[0]).toContain("no boards");
    expect(readCsv('a,"b\n', "p.csv").ok).toBe(false);
    expect(readCsv("\n\n", "p.csv").ok).toBe(false);
  });

  it("a workbook that is none", async () => {
    expect((await readXlsx(new Uint8Array([1, 2, 3]), "p.xlsx")).ok).toBe(false);
  });
});

describe("outerleaf take-in pile", () => {
  const desk = bench();
  afterAll(() => desk.clear());
  const DEMO = "atelier-bouleau.outerleaf.json";
  const put = (name: string, csv: string) => writeFileSync(join(desk.folder, name), csv);

  it("maps titles that are said, tells what changes, and writes the project", async () => {
    put("pile.csv", "Nr,lot,Länge,width,thickness\nA01,A,2400,148,24\nN1,A,3000,150,24\n");
    const missing = await desk.run("take-in", "pile.csv", "--into", DEMO, "--language", "en");
    expect(missing.err).toContain("no column for: Board, Board length");
    const done = await desk.run(
      "take-in",
      "pile.csv",
      "--into",
      DEMO,
      "--columns",
      "board=Nr,length=Länge",
      "--to",
      "new.json",
      "--language",
      "en",
    );
    expect(done.err).toBe("");
    expect(done.out).toContain("1 new board: N1.");
    expect(done.out).toContain("1 board with other figures: A01.");
    expect(done.out).toContain("117 boards go");
    expect(JSON.parse(desk.read("new.json")).pile.boards.map(({ id }: { id: string }) => id)).toEqual([
      "A01",
      "N1",
    ]);
    expect((await desk.run("take-in", "pile.csv", "--into", DEMO, "--columns", "size=Nr")).exit).toBe(2);
    expect((await desk.run("take-in", "pile.csv")).exit).toBe(2);
  });

  it("takes nothing of a table with one bad row", async () => {
    put("bad.csv", `${HEAD}X1,A,2400,140,24\nX2,A,?,140,24\n`);
    const { exit, err } = await desk.run(
      "take-in",
      "bad.csv",
      "--into",
      DEMO,
      "--to",
      "bad.json",
      "--language",
      "en",
    );
    expect(exit).toBe(2);
    expect(err).toContain("bad.csv, row 3, column “length”");
    expect(desk.names()).not.toContain("bad.json");
  });
});
