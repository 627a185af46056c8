/** Links of a set's PDF, read back by poppler (https://poppler.freedesktop.org). */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { DrawingPaper } from "../../src/output/drawings/drawing-sheets.ts";
import { writePdf } from "../../src/output/pdf/pdf.ts";
import type { Reader } from "../../src/text/say.ts";
import { PDF_FONTS } from "./pdf-fonts.ts";

export const hasPoppler = spawnSync("pdftohtml", ["-v"]).status === 0;

/** By page from 1, each text with the page that it leads to. */
export async function linksOf(
  papers: readonly DrawingPaper[],
  reader: Reader,
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
