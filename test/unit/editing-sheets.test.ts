/** What is issued and on what paper, typed into the project file. Follows from RFC 6902 and the file's own schema; no outside source. */
import { expect, it } from "vitest";
import { labelPages, usualLabelsOn } from "../../src/output/drawings/labels.ts";
import { applyPatch } from "../../src/project/edit.ts";
import type { Change, Source } from "../../src/project/editing/change.ts";
import {
  leaveSheetOut,
  setLabelMeasure,
  setLabelSheet,
  setSheetPaper,
} from "../../src/project/editing/sheets.ts";
import { pastPaper } from "../../src/project/label-sheet.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { example } from "../contract/cut-facade-examples.ts";

const { project: demo, facade, cut, reader } = example("atelier-bouleau");

/** The sheets of the file after changes, one after another, as it is read and as it is written. */
function after(sheets: unknown, ...changes: ((source: Source) => Change)[]) {
  const { sheets: _, ...rest } = demo;
  let document: unknown = sheets === undefined ? rest : { ...rest, sheets };
  for (const change of changes) {
    const before = readDocument(document, "demo");
    if (!before.ok) throw new Error(JSON.stringify(before.findings));
    const patched = applyPatch(document, change({ project: before.project, document }).operations);
    if (!patched.ok) throw new Error("the change does not fit");
    document = patched.document;
  }
  const read = readDocument(document, "demo");
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return {
    read: read.project.sheets,
    written: (document as Project).sheets,
    codes: read.findings.map(({ code }) => code),
  };
}

const out = (name: string) => (source: Source) => leaveSheetOut(source, name, true);
const back = (name: string) => (source: Source) => leaveSheetOut(source, name, false);

it("a sheet is left out once and taken in again, whatever else the file says of sheets", () => {
  expect(after(undefined, out("rips")).read).toEqual({ leaveOut: ["rips"] });
  expect(after({ paper: "A2" }, out("rips"), out("order"), out("rips")).read).toEqual({
    paper: "A2",
    leaveOut: ["rips", "order"],
  });
  expect(after({ leaveOut: ["rips", "order"] }, back("rips")).read).toEqual({ leaveOut: ["order"] });
  expect(after({ leaveOut: ["rips"], paper: "A2" }, back("rips")).written).toEqual({ paper: "A2" });
  expect(after({ paper: "A2" }, back("rips")).written).toEqual({ paper: "A2" });
});

it("paper is written, and taken out of the file where the usual one is asked for", () => {
  expect(after(undefined, (source) => setSheetPaper(source, "A1")).read).toEqual({ paper: "A1" });
  expect(after({ paper: "A1" }, (source) => setSheetPaper(source, undefined)).written).toEqual({});
  const letter = usualLabelsOn("letter");
  expect(after(undefined, (source) => setLabelSheet(source, letter)).read).toEqual({ labels: letter });
  expect(after({ labels: letter }, (source) => setLabelSheet(source, undefined)).written).toEqual({});
});

it("the first measure writes the sheet of labels whole, the next its own alone, as it was written", () => {
  const usual = usualLabelsOn("A4");
  const first = after(undefined, (source) => setLabelMeasure(source, usual, "width", 90));
  expect(first.read).toEqual({ labels: { ...usual, width: 90 } });
  const inches = { ...usualLabelsOn("letter"), width: '4"' };
  const next = after({ labels: inches }, (source) => setLabelMeasure(source, usual, "width", 88.9));
  expect(next.written).toEqual({ labels: { ...inches, width: '3 1/2"' } });
  expect(next.read?.labels?.width).toBe(88.9);
});

it("labels past their paper deserve attention, to the hundredth and no sooner", () => {
  for (const paper of ["A4", "letter"] as const)
    expect(pastPaper(usualLabelsOn(paper))).toEqual({ right: 0, below: 0 });
  // ISO 216: A4 is 210 × 297. Three columns of 70 fill it, eight rows of 37 and 1 over; by hand.
  const full = {
    ...usualLabelsOn("A4"),
    columns: 3,
    rows: 8,
    width: 70,
    height: 37,
    left: 0,
    top: 1,
    gapX: 0,
  };
  expect(pastPaper(full)).toEqual({ right: 0, below: 0 });
  expect(after({ labels: full }).codes).not.toContain("F038");
  expect(pastPaper({ ...full, left: 0.125, rows: 9 })).toEqual({ right: 0.125, below: 37 });
  expect(
    after({ labels: { ...full, left: 0.125, rows: 9 } }).codes.filter((code) => code === "F038"),
  ).toHaveLength(2);
});

it("labels are printed as many to a sheet as the file says", () => {
  const takeoff = takeOff(demo, facade, cut.plan);
  const labels = { ...usualLabelsOn("A4"), columns: 3, rows: 8, width: 66, height: 34 };
  const pages = labelPages({
    design: { project: { ...demo, sheets: { labels } }, facade, demands: [] as never },
    findings: [],
    reader,
    takeoff,
  });
  const marks = [...takeoff.pieces, ...takeoff.battens].length;
  expect(pages.count).toBe(Math.ceil(marks / 24));
  expect([...pages.pages()]).toHaveLength(pages.count);
});
