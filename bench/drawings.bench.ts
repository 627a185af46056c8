/**
 * How long the whole set of the demo's sheets takes to draw and to write, a sheet, beside a bare PDF of as many empty pages by the
 * same writer; what an edit draws again,
 * and how drawing grows with the faces. Ratios of one run.
 */

import { readPdfFonts } from "../src/cli/pdf-fonts.ts";
import { cutFacade } from "../src/cutting/facade/cut-facade.ts";
import { design } from "../src/design.ts";
import { createDrawMemo } from "../src/output/drawings/draw-memo.ts";
import { drawingPapers, drawingSheet, drawingSheets } from "../src/output/drawings/drawing-sheets.ts";
import type { DrawingFacts } from "../src/output/drawings/facts.ts";
import { writePdf } from "../src/output/pdf/pdf.ts";
import type { Project } from "../src/project/schema/project.ts";
import { createFaceMemo, type FaceMemo } from "../src/setout/memo.ts";
import { takeOff } from "../src/takeoff/take-off.ts";
import { ENGLISH_MM } from "../src/text/say.ts";
import { exampleDocument, manyFaces, readAs } from "./buildings.ts";

const RUNS = 5;

async function median(work: () => unknown, runs = RUNS): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[runs >> 1] ?? 0;
}

function factsOf(project: Project, cut: boolean, faces?: FaceMemo): DrawingFacts {
  const made = design(project, faces && { faces });
  const plan = cut ? cutFacade(project, made.facade).plan : undefined;
  const takeoff = takeOff(project, made.facade, plan);
  return { design: made, findings: made.findings, reader: ENGLISH_MM, plan, takeoff };
}

const round = (value: number): number => Math.round(value * 100) / 100;

const fonts = await readPdfFonts();
const facts = factsOf(readAs(exampleDocument("atelier-bouleau"), "demo"), true);
const papers = drawingPapers(facts);
const options = { title: "demo", reader: ENGLISH_MM, fonts };
const empty = papers.map(({ label }) => ({
  label,
  drawing: {
    id: label,
    title: { key: "drawing.rod", values: {} },
    scale: 1,
    bounds: { x: [0, 420], y: [0, 297] } as const,
    items: [],
  },
}));
const draw = await median(() => drawingPapers(facts));
const write = await median(() => writePdf(papers, options));
const svg = await median(() => papers.map((paper) => drawingSheet(paper, ENGLISH_MM)));
const bare = await median(() => writePdf(empty, options));
console.table([
  {
    sheets: papers.length,
    drawMsASheet: round(draw / papers.length),
    pdfMsASheet: round(write / papers.length),
    svgMsASheet: round(svg / papers.length),
    emptyPageMs: round(bare / papers.length),
    pdfOverEmpty: round(write / bare),
  },
]);

/** The demo with the west window moved, its other faces the very ones of before, as on the page: drawn with what was kept, and without. */
const faces = createFaceMemo({ spare: 24, shareds: 2 });
const [asItWas, edited] = [0, 20].map((by) => {
  const document = exampleDocument("atelier-bouleau");
  const [window] = document.faces.find(({ id }) => id === "west")?.openings ?? [];
  if (window) window.x = [Number(window.x[0]) + by, Number(window.x[1]) + by];
  return factsOf(readAs(document, "demo"), true, faces);
}) as [DrawingFacts, DrawingFacts];
const memos = Array.from({ length: RUNS }, () => {
  const memo = createDrawMemo();
  drawingSheets(asItWas, memo);
  return memo;
});
const whole = await median(() => drawingSheets(edited));
const before = new Set(drawingSheets(asItWas, memos[0]));
const again = drawingSheets(edited, memos[0]).filter((sheet) => !before.has(sheet)).length;
const left = memos.slice(1);
const after = await median(() => drawingSheets(edited, left.pop()), left.length);
console.table([
  {
    afterAnEdit: `${again} of ${papers.length} sheets drawn again`,
    wholeMs: round(whole),
    afterMs: round(after),
    afterOverWhole: round(after / whole),
  },
]);

const growth = [10, 40, 160].map((count) => ({ count, facts: factsOf(manyFaces(count), false) }));
const rows: { faces: number; sheets: number; msASheet: number }[] = [];
for (const { count, facts: own } of growth) {
  const start = performance.now();
  const sheets = drawingPapers({ ...own, only: ["set-out", "battens", "fixings", "schedules"] });
  const ms = performance.now() - start;
  rows.push({ faces: count, sheets: sheets.length, msASheet: round(ms / sheets.length) });
}
console.table(rows.map((row) => ({ ...row, ofTheFirst: round(row.msASheet / (rows[0]?.msASheet ?? 1)) })));
