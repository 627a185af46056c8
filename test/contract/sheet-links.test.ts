/**
 * Links between sheets, read from the PDF's annotations by poppler (https://poppler.freedesktop.org): from the marks of an elevation to
 * its sections and back. ISO 128-3 asks for strokes, arrows and a mark at every cut; the sheet's number in the circle is common practice.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { type DrawingPaper, drawingPapers } from "../../src/output/drawings/drawing-sheets.ts";
import { writePdf } from "../../src/output/pdf/pdf.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { Item } from "../../src/scene/model.ts";
import { PDF_FONTS } from "../helpers/pdf-fonts.ts";
import { example } from "./cut-facade-examples.ts";

const hasPoppler = spawnSync("pdftohtml", ["-v"]).status === 0;
const { project: demo, reader } = example("atelier-bouleau");
const made = design(demo);

function papersOf(sheets: Project["sheets"]): DrawingPaper[] {
  const project = { ...demo, sheets };
  const only = ["set-out", "sections", "plan-sections", "key-plan"] as const;
  return drawingPapers({ design: { ...made, project }, findings: [], reader, only });
}

/** By page from 1, each text with the page that it leads to. */
async function linksOf(
  papers: readonly DrawingPaper[],
): Promise<Map<number, { text: string; to?: number }[]>> {
  const folder = mkdtempSync(join(tmpdir(), "outerleaf-links-"));
  try {
    const file = join(folder, "set.pdf");
    writeFileSync(file, await writePdf(papers, { title: "links", reader, fonts: PDF_FONTS }));
    const xml = spawnSync("pdftohtml", ["-xml", "-i", "-stdout", file], {
      encoding: "utf8",
      maxBuffer: 1 << 28,
    }).stdout;
    return new Map(
      xml.split(/<page /).flatMap((page) => {
        const number = /^number="(\d+)"/.exec(page)?.[1];
        if (number === undefined) return [];
        const texts = [...page.matchAll(/<text [^>]*>(.*?)<\/text>/g)].map(([, inner = ""]) => {
          const to = /href="[^"#]*#(\d+)"/.exec(inner)?.[1];
          const text = inner.replace(/<[^>]*>/g, "").trim();
          return { text, ...(to !== undefined && { to: Number(to) }) };
        });
        return [[Number(number), texts] as const];
      }),
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const MARK = /^[A-Z0-9]+-[A-Z]\d?$/;

describe.skipIf(!hasPoppler)("links of the demo's sheets", () => {
  it("lead from each mark on an elevation to the sheet of its section, and from there back", async () => {
    const papers = papersOf(demo.sheets);
    const pages = await linksOf(papers);
    let followed = 0;
    for (const [at, { kind }] of papers.entries()) {
      if (kind !== "set-out") continue;
      const page = pages.get(at + 1) ?? [];
      page.forEach(({ text, to }, i) => {
        if (!MARK.test(text) || to === undefined) return;
        followed += 1;
        expect(papers[to - 1]?.kind).toMatch(/sections$/);
        // Under the mark its sheet's number, which is that of the page that it leads to.
        expect(page[i + 1]).toEqual({ text: String(to), to });
        const back = pages
          .get(to)
          ?.find((one) => one.text.includes(`Section ${text}, cut on sheet ${at + 1}`));
        expect(back, `back from ${text} on page ${to}`).toEqual({ text: back?.text, to: at + 1 });
      });
    }
    const upright = made.facade.faces.filter(({ frame }) => frame.level === undefined);
    expect(followed).toBeGreaterThan(upright.flatMap(({ zones }) => zones).length);
  }, 120_000);

  it("lead nowhere where the sheet is left out, and say that it has none", async () => {
    const left = papersOf({ ...demo.sheets, leaveOut: ["section-front-boards", "face-west"] });
    const pages = await linksOf(left);
    const front = pages.get(left.findIndex(({ name }) => name === "face-front") + 1) ?? [];
    const mark = front.findIndex(({ text }) => text === "F-A");
    expect(front.slice(mark, mark + 2)).toEqual([{ text: "F-A" }, { text: "–" }]);
    expect(front.find(({ text }) => text === "F-B")?.to).toBeGreaterThan(0);
    const west = pages.get(left.findIndex(({ name }) => name.startsWith("section-west")) + 1) ?? [];
    expect(west.filter(({ text }) => text.startsWith("Section W-A"))).toEqual([
      { text: "Section W-A, cut on sheet –" },
    ]);
  }, 120_000);
});

it("no sheet of the demo leads to one that is not in its set", () => {
  for (const sheets of [
    demo.sheets,
    { ...demo.sheets, leaveOut: ["section-front-boards", "plan-sections"] },
  ]) {
    const papers = papersOf(sheets);
    const names = new Set(papers.map(({ name }) => name));
    const items = papers.flatMap(({ drawing }): readonly Item[] =>
      "viewports" in drawing ? drawing.viewports.flatMap(({ scene }) => scene.items) : drawing.items,
    );
    const links = items.flatMap((item) =>
      item.kind === "text" && item.link !== undefined ? [item.link] : [],
    );
    expect(links.length).toBeGreaterThan(20);
    expect(links.filter((link) => !names.has(link))).toEqual([]);
  }
});
