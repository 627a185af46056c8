/** The whole sheet set of an example, drawn for one reader, and its pages as they are read back from the PDF. */
import { design } from "../../src/design.ts";
import { type DrawingPaper, drawingPapers } from "../../src/output/drawings/drawing-sheets.ts";
import { writePdf } from "../../src/output/pdf/pdf.ts";
import type { Scene } from "../../src/scene/model.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import type { Reader } from "../../src/text/say.ts";
import { example } from "../contract/cut-facade-examples.ts";
import type { ReadBack } from "../contract/scene-renderer-suite.ts";
import { PDF_FONTS } from "./pdf-fonts.ts";
import { readPdfPages } from "./pdf-reader.ts";

export interface PrintedSheets {
  readonly papers: readonly DrawingPaper[];
  readonly pages: readonly ReadBack[];
  readonly reader: Reader;
}

function sheetsOf(name: string, reader?: Reader): { papers: DrawingPaper[]; reader: Reader } {
  const { project, cut, reader: own } = example(name);
  const made = design(project);
  const asked = reader ?? own;
  const findings = [...made.findings, ...cut.findings];
  const takeoff = takeOff(project, made.facade, cut.plan);
  return {
    papers: drawingPapers({ design: made, findings, reader: asked, plan: cut.plan, takeoff }),
    reader: asked,
  };
}

export async function printedSheets(name: string, asked?: Reader): Promise<PrintedSheets> {
  const { papers, reader } = sheetsOf(name, asked);
  const bytes = await writePdf(papers, { title: name, reader, fonts: PDF_FONTS, compress: false });
  return { papers, pages: readPdfPages(bytes), reader };
}

/** A scene where it stands on its page, millimetres from the page's lower left corner. */
export interface StandingScene {
  readonly scene: Scene;
  place(point: readonly [number, number]): [x: number, y: number];
}

export function standingScenes({ drawing }: DrawingPaper): StandingScene[] {
  const views =
    "viewports" in drawing
      ? [...drawing.viewports, { scene: drawing.frame, at: [0, 0] as const }]
      : [{ scene: drawing, at: [0, 0] as const }];
  return views.map(({ scene, at }) => ({
    scene,
    place: ([x, y]) => [
      at[0] + (x - scene.bounds.x[0]) * scene.scale,
      at[1] + (y - scene.bounds.y[0]) * scene.scale,
    ],
  }));
}
