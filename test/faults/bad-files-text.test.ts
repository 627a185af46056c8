import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readProject } from "../../src/project/read.ts";
import { type BadFile, expectTold, FILE } from "./bad-files-harness.ts";

const demoText = readFileSync(
  new URL("../../examples/atelier-bouleau.outerleaf.json", import.meta.url),
  "utf8",
);
const small = (rest: string): string => `{\n  "schemaVersion": 1,\n  ${rest}\n}`;
const raw = (text: string): { text: string } => ({ text });

const BAD: readonly BadFile[] = [
  {
    kind: "empty",
    by: raw(""),
    code: "F001",
    path: "",
    value: "line 1, column 1",
    valueFr: "ligne 1, colonne 1",
    mend: "outerleaf new",
  },
  {
    kind: "white space alone",
    by: raw(" \n\t\n"),
    code: "F001",
    path: "",
    value: "line 3, column 1",
    valueFr: "ligne 3, colonne 1",
    mend: "outerleaf new",
  },
  {
    kind: "binary",
    by: raw("\u0089PNG\r\n\u001a\n\0\0\0\rIHDR"),
    code: "F022",
    path: "",
    value: "UTF-8",
    mend: "Save it as text",
  },
  {
    kind: "letters of another encoding",
    by: raw(small('"title": "\uFFFDcurie"')),
    code: "F022",
    path: "",
    value: "UTF-8",
    mend: "Save it as text",
  },
  {
    kind: "cut off",
    by: raw(demoText.slice(0, demoText.indexOf('"claddings"') + 40)),
    code: "F001",
    path: "/claddings/0/id",
    value: "line ",
    valueFr: "ligne ",
    mend: "Part of the file is missing",
  },
  {
    kind: "not JSON at all",
    by: raw("front face: 7200 x 3010"),
    code: "F001",
    path: "",
    value: "front face",
    mend: "Write a number, text",
  },
  {
    kind: "a word without quotes",
    by: raw(small('"title": Atelier')),
    code: "F001",
    path: "/title",
    value: "Atelier",
    mend: "text in double quotes",
  },
  {
    kind: "NaN",
    by: raw(small('"azimuthDeg": NaN')),
    code: "F001",
    path: "/azimuthDeg",
    value: "NaN",
    mend: "0.5, 12, 1e-5",
  },
  {
    kind: "Infinity",
    by: raw(small('"azimuthDeg": -Infinity')),
    code: "F001",
    path: "/azimuthDeg",
    value: "-Infinity",
    mend: "Write it plainly",
  },
  {
    kind: "a number that starts with a point",
    by: raw(small('"share": [1, .5]')),
    code: "F001",
    path: "/share/1",
    value: ".5",
    mend: "Write it plainly",
  },
  {
    kind: "a number that starts with a zero",
    by: raw(small('"share": 007')),
    code: "F001",
    path: "/share",
    value: "007",
    mend: "Write it plainly",
  },
  {
    kind: "a comma too many",
    by: raw(small('"faces": [1, 2, ],\n  "a": 1')),
    code: "F001",
    path: "/faces",
    value: "line 3, column 17",
    valueFr: "ligne 3, colonne 17",
    mend: "Take the comma out",
  },
  {
    kind: "a comma missing",
    by: raw(small('"title": "a"\n  "about": "b"')),
    code: "F001",
    path: "",
    value: 'line 4, column 3: a comma is missing before "about"',
    valueFr: "ligne 4, colonne 3",
    mend: "Put a comma",
  },
  {
    kind: "a colon missing",
    by: raw(small('"title" "a"')),
    code: "F001",
    path: "/title",
    value: '"a"',
    mend: "key",
  },
  {
    kind: "a key without quotes",
    by: raw(small("title: 1")),
    code: "F001",
    path: "",
    value: "title: 1",
    mend: "Put the key in double quotes",
  },
  {
    kind: "single quotes",
    by: raw(small("'title': 'a'")),
    code: "F001",
    path: "",
    value: "'title'",
    mend: "straight double quote",
  },
  {
    kind: "curly quotes",
    by: raw(small('"title": “a”')),
    code: "F001",
    path: "/title",
    value: "“a”",
    mend: "straight double quote",
  },
  {
    kind: "a comment",
    by: raw(small('// the wall\n  "title": "a"')),
    code: "F001",
    path: "",
    value: "// the wall",
    mend: '"note"',
  },
  {
    kind: "text over two lines",
    by: raw(small('"title": "a\nb"')),
    code: "F001",
    path: "/title",
    value: "line 3, column 12",
    valueFr: "ligne 3, colonne 12",
    mend: "\\n",
  },
  {
    kind: "a stray backslash",
    by: raw(small('"title": "C:\\walls"')),
    code: "F001",
    path: "/title",
    value: "\\walls",
    mend: "as two",
  },
  {
    kind: "two projects in one file",
    by: raw(`${small('"a": 1')}\n${small('"a": 1')}`),
    code: "F001",
    path: "",
    value: "line 5, column 1",
    valueFr: "ligne 5, colonne 1",
    mend: "one project",
  },
  {
    kind: "a bracket closed wrongly",
    by: raw(small('"faces": [1, 2}')),
    code: "F001",
    path: "/faces",
    value: "}",
    mend: "comma",
  },
  {
    kind: "a key written twice",
    by: raw(small('"title": "a",\n  "about": "b",\n  "title": "c"')),
    code: "F028",
    path: "/title",
    value: "/title",
    mend: "Keep the one",
  },
  {
    kind: "nested ten thousand deep",
    by: raw("[".repeat(10_000) + "]".repeat(10_000)),
    code: "F001",
    path: "/0".repeat(100),
    value: "column 101",
    valueFr: "colonne 101",
    mend: "needless brackets",
  },
  {
    kind: "groups nested ten thousand deep",
    by: raw('{"a":'.repeat(10_000)),
    code: "F001",
    path: "/a".repeat(100),
    value: "column 501",
    valueFr: "colonne 501",
    mend: "needless brackets",
  },
  {
    kind: "a list at the top",
    by: raw("[1, 2]"),
    code: "F002",
    path: "",
    value: "[1, 2]",
    mend: "outerleaf new",
  },
  { kind: "a number at the top", by: raw("42"), code: "F002", path: "", value: "42", mend: "outerleaf new" },
  { kind: "null at the top", by: raw("null"), code: "F002", path: "", value: "null", mend: "outerleaf new" },
  {
    kind: "JSON of something else",
    by: raw('{"name": "door-list", "count": 3}'),
    code: "F002",
    path: "",
    value: '"name", "count"',
    mend: "outerleaf new",
  },
  {
    kind: "an empty group",
    by: raw("{}"),
    code: "F002",
    path: "",
    value: "nothing",
    valueFr: "rien",
    mend: "outerleaf new",
  },
];

describe("files that are no project at all", () => {
  it.each(BAD)("$kind", (bad) => expectTold(bad));

  it("a byte order mark is read past: some editors write one, and it changes nothing", () => {
    expect(readProject(`\uFEFF${demoText}`, FILE)).toEqual(readProject(demoText, FILE));
  });

  it("Windows line ends are read like any others", () => {
    expect(readProject(demoText.replaceAll("\n", "\r\n"), FILE).ok).toBe(true);
  });

  it("every doubled key is told at once, up to fifty", () => {
    const doubled = Array.from({ length: 60 }, (_, i) => `"k${i}": 1, "k${i}": 2`).join(", ");
    const { findings } = readProject(`{ "schemaVersion": 1, ${doubled} }`, FILE);
    expect(findings).toHaveLength(50);
    expect(new Set(findings.map(({ code }) => code))).toEqual(new Set(["F028"]));
    expect(findings.slice(0, 2).map(({ where }) => where.path)).toEqual(["/k0", "/k1"]);
  });

  it("no cut of the demo's text makes the reader throw", () => {
    for (let end = 0; end < demoText.length; end += 397) {
      const result = readProject(demoText.slice(0, end), FILE);
      expect(result.ok).toBe(false);
      expect(result.findings).toHaveLength(1);
    }
  });
});
