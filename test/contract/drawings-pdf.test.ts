/** The demo's drawings in one PDF, as poppler reads it (https://poppler.freedesktop.org), which shares no code with the writer. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { type DrawingPaper, drawingPapers } from "../../src/output/drawings/drawing-sheets.ts";
import { writePdf } from "../../src/output/pdf/pdf.ts";
import { drawList } from "../../src/scene/draw-list.ts";
import { PDF_FONTS } from "../helpers/pdf-fonts.ts";
import { example } from "./cut-facade-examples.ts";

const poppler = (program: string, ...args: readonly string[]): string =>
  spawnSync(program, args, { encoding: "utf8" }).stdout ?? "";
const hasPoppler = spawnSync("pdftotext", ["-v"]).status === 0;

describe.skipIf(!hasPoppler)("the drawings as a PDF", () => {
  const { project, reader } = example("atelier-bouleau");
  const folder = mkdtempSync(join(tmpdir(), "outerleaf-pdf-"));
  const file = join(folder, "drawings.pdf");
  const papers: DrawingPaper[] = [];
  const write = (): Promise<Uint8Array> =>
    writePdf(papers, { title: project.title, reader, fonts: PDF_FONTS });
  beforeAll(async () => {
    const made = design(project);
    papers.push(...drawingPapers({ design: made, findings: made.findings, reader }));
    writeFileSync(file, await write());
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it("has a page for each drawing, as large as its paper", () => {
    const info = poppler("pdfinfo", "-l", String(papers.length), file);
    expect(info).toMatch(new RegExp(`^Pages: +${papers.length}$`, "m"));
    expect(info).toMatch(/^Title: +Atelier Bouleau$/m);
    const sizes = [...info.matchAll(/^Page +\d+ size: +([\d.]+) x ([\d.]+)/gm)].map(([, width, height]) =>
      [width, height].map((points) => Math.round((Number(points) * 25.4) / 72)),
    );
    expect(sizes).toEqual(
      papers.map(({ drawing }) =>
        "viewports" in drawing
          ? [drawing.size.width, drawing.size.height]
          : [drawing.bounds.x, drawing.bounds.y].map(([from, to]) => Math.round((to - from) * drawing.scale)),
      ),
    );
  });

  it("gathers views on what a small firm prints on, and takes larger paper for one view alone", () => {
    const several = papers.flatMap(({ name, drawing }) =>
      "viewports" in drawing && drawing.viewports.length > 1 ? [{ name, paper: drawing.size.name }] : [],
    );
    expect(several.length).toBeGreaterThan(2);
    for (const { name, paper } of several)
      expect({ name, paper }).toEqual({ name, paper: expect.stringMatching(/^A[34]$/) });
  });

  it("says every word of every drawing, in order, as text", () => {
    const bare = (text: string): string => text.replace(/\s+/g, "");
    papers.forEach(({ drawing }, at) => {
      const page = String(at + 1);
      const scenes =
        "viewports" in drawing ? [...drawing.viewports.map(({ scene }) => scene), drawing.frame] : [drawing];
      const said = scenes
        .flatMap((scene) => drawList(scene, reader))
        .flatMap((mark) => (mark.shape === "text" ? [mark.text] : []));
      expect(bare(poppler("pdftotext", "-raw", "-f", page, "-l", page, file, "-"))).toBe(bare(said.join("")));
    });
  });

  it("embeds every font, of which text can be searched and copied", () => {
    const fonts = poppler("pdffonts", file).trim().split("\n").slice(2);
    expect(fonts.length).toBeGreaterThan(1);
    for (const font of fonts) expect(font).toMatch(/ yes yes yes +\d+ +\d+$/);
  });

  it("is the same to the byte when it is written again, and tells no time", async () => {
    const [one, other] = [await write(), await write()];
    expect(one).toEqual(other);
    expect(Buffer.from(one).toString("latin1")).not.toMatch(/CreationDate|ModDate|CreateDate/);
  });
});
