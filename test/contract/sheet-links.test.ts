/**
 * Links between sheets, read from the PDF's annotations by poppler (https://poppler.freedesktop.org): from the marks of an elevation to
 * its sections, from a section to its details, and back. ISO 128-3 asks for strokes, arrows and a mark at every cut; the sheet's number in the circle is common practice.
 */
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { type DrawingPaper, drawingPapers } from "../../src/output/drawings/drawing-sheets.ts";
import { levelCuts, nextOf } from "../../src/output/drawings/section-places.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { Item } from "../../src/scene/model.ts";
import { hasPoppler, linksOf } from "../helpers/pdf-links.ts";
import { example } from "./cut-facade-examples.ts";

const { project: demo, reader } = example("atelier-bouleau");
const made = design(demo);

function papersOf(sheets: Project["sheets"]): DrawingPaper[] {
  const project = { ...demo, sheets };
  const only = ["set-out", "sections", "plan-sections", "key-plan"] as const;
  return drawingPapers({ design: { ...made, project }, findings: [], reader, only });
}

const DETAIL = /^[A-Z0-9]+-[A-Z]\d?\.\d$/;
const MARK = /^[A-Z0-9]+-[A-Z]\d?$/;

describe.skipIf(!hasPoppler)("links of the demo's sheets", () => {
  it("lead from each mark on an elevation to the sheet of its section, and from there back", async () => {
    const papers = papersOf(demo.sheets);
    const pages = await linksOf(papers, reader);
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

  it("lead from each framed place of a section to the sheet of its detail, and from there back", async () => {
    const papers = papersOf(demo.sheets);
    const pages = await linksOf(papers, reader);
    const followed: string[] = [];
    for (const [at, { kind }] of papers.entries()) {
      if (kind !== "sections") continue;
      const page = pages.get(at + 1) ?? [];
      page.forEach(({ text, to }, i) => {
        if (!DETAIL.test(text) || to === undefined) return;
        followed.push(text);
        expect(papers[to - 1]?.kind).toBe("sections");
        expect(page[i + 1]).toEqual({ text: String(to), to });
        expect(pages.get(to)).toContainEqual({
          text: `Detail ${text}, framed on sheet ${at + 1}`,
          to: at + 1,
        });
      });
    }
    // Each of the details that are drawn is framed, once.
    const drawn = [...pages.values()]
      .flat()
      .flatMap(({ text }) => /^Detail (\S+\.\d),/.exec(text)?.[1] ?? []);
    expect(drawn.length).toBeGreaterThan(10);
    expect(followed.sort()).toEqual(drawn.sort());
  }, 120_000);

  it("lead from each ring of the key plan to the sheet of its detail, and from there back", async () => {
    const papers = papersOf(demo.sheets);
    const pages = await linksOf(papers, reader);
    const plan = papers.findIndex(({ name }) => name === "key-plan") + 1;
    const page = pages.get(plan) ?? [];
    const marks = page.flatMap(({ text, to }, i) =>
      MARK.test(text) ? [{ text, to, next: page[i + 1] }] : [],
    );
    for (const { text, to = 0, next } of marks) {
      expect(papers[to - 1]?.kind).toBe("plan-sections");
      expect(next).toEqual({ text: String(to), to });
      expect(pages.get(to)).toContainEqual({ text: `Detail ${text}, framed on sheet ${plan}`, to: plan });
    }
    const level = made.facade.faces.flatMap((face) =>
      levelCuts(face, nextOf(face, { faces: made.facade.faces, corners: demo.corners })),
    );
    expect(marks.map(({ text }) => text).sort()).toEqual(level.map(({ mark }) => mark).sort());
  }, 120_000);

  it("lead from a soffit to its section", async () => {
    const papers = papersOf(demo.sheets);
    const pages = await linksOf(papers, reader);
    const soffits = made.facade.faces.filter(({ frame }) => frame.level !== undefined);
    expect(soffits.length).toBeGreaterThan(0);
    for (const { id, code } of soffits) {
      const at = papers.findIndex(({ name }) => name === `face-${id}`) + 1;
      const to = pages.get(at)?.find(({ text }) => text === `${code}-A`)?.to ?? 0;
      expect(pages.get(to)).toContainEqual({ text: `Section ${code}-A, cut on sheet ${at}`, to: at });
    }
  }, 120_000);

  it("lead nowhere where the sheet is left out, and say that it has none", async () => {
    const left = papersOf({ ...demo.sheets, leaveOut: ["section-front-boards", "face-west"] });
    const pages = await linksOf(left, reader);
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
