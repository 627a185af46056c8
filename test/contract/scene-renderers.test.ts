import { describe, expect, it } from "vitest";
import { writeDxf } from "../../src/output/dxf/dxf.ts";
import type { Theme } from "../../src/output/palettes.ts";
import { writePdf } from "../../src/output/pdf/pdf.ts";
import { renderSceneSvg } from "../../src/output/svg/scene-svg.ts";
import { renderSheetSvg } from "../../src/output/svg/sheet-svg.ts";
import { ENGLISH_MM } from "../../src/text/say.ts";
import { readDxfDrawing } from "../helpers/dxf-reader.ts";
import { fixtureScenes, fixtureSheet } from "../helpers/fixture-drawings.ts";
import { PDF_FONTS } from "../helpers/pdf-fonts.ts";
import { readPdfPage } from "../helpers/pdf-reader.ts";
import { sampleScene } from "../helpers/sample-scene.ts";
import { readSvg } from "../helpers/svg-reader.ts";
import { rendererContract } from "./scene-renderer-suite.ts";

const THEMES: readonly Theme[] = ["light", "dark", "print"];

for (const theme of THEMES) {
  rendererContract({
    name: `SVG, ${theme}`,
    render: (scene, reader) => renderSceneSvg(scene, { reader, theme }),
    read: (output) => readSvg(String(output)),
  });
}

rendererContract({
  name: "PDF",
  render: (drawing, reader) =>
    writePdf([{ drawing, label: "1" }], { title: "a drawing", reader, fonts: PDF_FONTS, compress: false }),
  read: (output) => readPdfPage(output as Uint8Array),
});

rendererContract({
  name: "DXF",
  render: (scene, reader) => writeDxf([scene], reader),
  read: (output) => readDxfDrawing(output as Uint8Array),
});

describe("SVG", () => {
  const svg = renderSceneSvg(sampleScene(), { reader: ENGLISH_MM, theme: "light" });

  it("carries marks and ids so that a page can find them, escaped", () => {
    expect(readSvg(svg).of).toEqual(new Set(['F<1> & "co"']));
  });

  it("styles every class that it uses", () => {
    const used = new Set(
      [...svg.matchAll(/ class="([^"]+)"/g)].flatMap((match) => match[1]?.split(" ") ?? []),
    );
    const styled = new Set([...svg.matchAll(/\.([a-z-]+)\{/g)].map((match) => match[1]));
    expect([...used].filter((name) => !styled.has(name) && !name.startsWith("drawing"))).toEqual([]);
  });

  it("gives each colour plain first, for readers without custom properties", () => {
    for (const rule of svg.match(/\{[^}]*var\([^}]*\}/g) ?? []) {
      expect(rule).toMatch(/(fill|stroke):(#[0-9a-f]{6});\1:var\(--drawing-[a-z-]+,\2\)/);
    }
    expect(svg).toContain("var(--drawing-board,#57504a)");
  });

  it("has a name, a title and a description", () => {
    expect(svg).toMatch(/role="img" lang="en" aria-label="rod"/);
    expect(svg).toContain("<title>rod</title>");
    expect(svg).toContain("<desc>Scale 1 : 10</desc>");
  });

  it("puts the whole of a view on its sheet, inside the frame", () => {
    const scene = fixtureScenes()["face-front"];
    if (!scene) throw new Error("no face-front");
    const sheet = readSvg(renderSheetSvg(fixtureSheet(scene), { reader: ENGLISH_MM, theme: "print" }));
    const view = readSvg(renderSceneSvg(scene, { reader: ENGLISH_MM, theme: "print" }));
    expect([sheet.width, sheet.height]).toEqual([420, 297]);
    const texts = sheet.texts.map(({ text }) => text);
    expect(texts.slice(0, view.texts.length)).toEqual(view.texts.map(({ text }) => text));
    expect(texts.join(" ")).toContain("Local codes and licensed practice rule.");
    for (const [x, y] of sheet.points) {
      expect(x).toBeGreaterThanOrEqual(15);
      expect(x).toBeLessThanOrEqual(415);
      expect(y).toBeGreaterThanOrEqual(5);
      expect(y).toBeLessThanOrEqual(292);
    }
  });
});
