/** Printed labels as an independent reader finds them (Poppler's pdftotext), each with what its own place on the paper says. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { design } from "../../src/design.ts";
import { labelPages, usualLabels } from "../../src/output/drawings/labels.ts";
import { writePdf } from "../../src/output/pdf/pdf.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { PieceLine } from "../../src/takeoff/model.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { PDF_FONTS } from "./pdf-fonts.ts";
import { readPdfPages } from "./pdf-reader.ts";

export const hasPdftotext = spawnSync("pdftotext", ["-v"]).status === 0;

export interface ReadLabel {
  /** Its words, as they stand on the label. */
  readonly text: string;
  /** Points of its paths (mm, from the label's upper left corner). */
  readonly points: readonly (readonly [number, number])[];
}

export interface ReadLabels {
  /** In the order of the sheets. */
  readonly labels: readonly ReadLabel[];
  /** The pieces of the cladding, as the take-off has them. */
  readonly lines: readonly PieceLine[];
}

const POINT = 72 / 25.4;

/** Prints the labels of a project and reads them back, each from its own place on the paper. */
export async function readLabels(project: Project): Promise<ReadLabels> {
  const made = design(project);
  const { plan } = cutFacade(project, made.facade);
  const takeoff = takeOff(project, made.facade, plan);
  const { language, units, denominator } = project.display;
  const reader = { language, units, denominator };
  const facts = { design: made, findings: made.findings, reader, plan, takeoff };
  const pages = [...labelPages(facts).pages()];
  const sheet = project.sheets?.labels ?? usualLabels(reader);
  const bytes = await writePdf(pages, { title: project.title, reader, fonts: PDF_FONTS, compress: false });
  const folder = mkdtempSync(join(tmpdir(), "outerleaf-labels-"));
  try {
    const file = join(folder, "labels.pdf");
    writeFileSync(file, bytes);
    const labels = readPdfPages(bytes).flatMap(({ points }, page) =>
      Array.from({ length: sheet.columns * sheet.rows }, (_, i): ReadLabel => {
        const left = sheet.left + (i % sheet.columns) * (sheet.width + sheet.gapX);
        const top = sheet.top + Math.floor(i / sheet.columns) * (sheet.height + sheet.gapY);
        const box = { x: left, y: top, W: sheet.width, H: sheet.height };
        const crop = Object.entries(box).flatMap(([key, mm]) => [`-${key}`, String(Math.round(mm * POINT))]);
        const only = ["-f", String(page + 1), "-l", String(page + 1)];
        const { stdout } = spawnSync("pdftotext", ["-layout", ...only, ...crop, file, "-"], {
          encoding: "utf8",
        });
        return {
          text: stdout.replace(/\s+/g, " ").trim(),
          points: points
            .map(([x, y]) => [x - left, y - top] as const)
            .filter(([x, y]) => x >= 0 && y >= 0 && x <= sheet.width && y <= sheet.height),
        };
      }),
    );
    return { labels: labels.filter(({ text }) => text !== ""), lines: takeoff.pieces };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
