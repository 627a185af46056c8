/**
 * What is printed beside the sheets: storey rods at full size, read back from the PDF in millimetres; labels, whose codes are read by
 * ZBar (https://zbar.sourceforge.net), which shares no code with what makes them; and the archive.
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { manifestShape } from "../../src/cli/shapes/small.ts";
import { design } from "../../src/design.ts";
import { rectsOverlap } from "../../src/geometry/rect.ts";
import { archiveTo } from "../../src/output/archive.ts";
import { labelPages, labelsOf, usualLabels } from "../../src/output/drawings/labels.ts";
import { rodRolls, rodTiles } from "../../src/output/drawings/rod-strips.ts";
import { archiveIssue } from "../../src/output/issue/archive-issue.ts";
import { type PdfPage, writePdf } from "../../src/output/pdf/pdf.ts";
import { shapeBounds } from "../../src/scene/bounds.ts";
import { drawList } from "../../src/scene/draw-list.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { PDF_FONTS } from "../helpers/pdf-fonts.ts";
import { readPdfPages } from "../helpers/pdf-reader.ts";
import { example } from "./cut-facade-examples.ts";
import type { ReadBack } from "./scene-renderer-suite.ts";

const { project, cut, reader } = example("atelier-bouleau");
const made = design(project);
const takeoff = takeOff(project, made.facade, cut.plan);
const facts = { design: made, findings: made.findings, reader, plan: cut.plan, takeoff };
const pdf = (pages: readonly PdfPage[], compress: boolean): Promise<Uint8Array> =>
  writePdf(pages, { title: project.title, reader, fonts: PDF_FONTS, compress });

const rod = made.facade.rods[0];
if (!rod) throw new Error("the demo has no rod");
const edges = rod.segments.flatMap(({ courses }) => courses.flatMap(({ from, to }) => [from, to]));

/** Heights at which points of the page lie, from its foot, mm. */
const heightsOf = ({ points, height }: ReadBack): number[] => points.map(([, down]) => height - down);
const has = (all: readonly number[], wanted: number): boolean =>
  all.some((one) => Math.abs(one - wanted) < 0.01);

describe("a storey rod on a roll", () => {
  let page: ReadBack = { width: 0, height: 0, marks: 0, points: [], texts: [] };
  beforeAll(async () => {
    const [first] = readPdfPages(await pdf(rodRolls(made.facade), false));
    if (first) page = first;
  }, 60_000);

  it("has every edge of every course where the wall has it, to a hundredth of a millimetre", () => {
    const heights = heightsOf(page);
    const lowest = Math.min(...edges);
    // The lowest edge is told by the text beside it only: found as the height to which all others fit.
    const foot = heights.find((at) => edges.every((edge) => has(heights, at + edge - lowest)));
    expect(edges.length).toBeGreaterThan(40);
    expect(foot).toBeDefined();
  });

  it("has a line of 100 mm to verify the print by", () => {
    const xs = page.points.map(([x]) => x);
    expect(xs.some((x) => has(xs, x + 100))).toBe(true);
  });
});

describe("a storey rod in tiles", () => {
  it("shows every stretch of the rod once, at full size, on A4", async () => {
    const pages = rodTiles(made.facade, reader);
    const read = readPdfPages(await pdf(pages, false));
    for (const { width, height } of read) expect([Math.round(width), Math.round(height)]).toEqual([210, 297]);
    // 12 mm from the foot the tile begins; each holds 220 mm of the rod, from 10 mm under its lowest edge.
    const low = Math.min(...edges) - 10;
    for (const edge of edges) {
      const tile = Math.floor((edge - low) / 220);
      const on = read[Math.floor(tile / 2)];
      expect(on && has(heightsOf(on), 12 + edge - low - tile * 220)).toBe(true);
    }
  }, 60_000);
});

describe("labels", () => {
  const sheet = usualLabels(reader);
  const pages = [...labelPages(facts).pages()];

  it("are one a piece, each within its own place, with no text over another", () => {
    const labels = [...labelsOf(facts).some()];
    expect(labels.length).toBe(takeoff.pieces.length + takeoff.battens.length);
    expect(new Set(labels.map(({ code }) => code)).size).toBe(labels.length);
    for (const { drawing } of pages) {
      const boxes = drawList(drawing, reader).flatMap((mark) =>
        mark.shape === "text" ? [{ mark, box: shapeBounds(mark, 1) }] : [],
      );
      boxes.forEach(({ mark, box }, i) => {
        const column = Math.floor((box.x[0] - sheet.left) / (sheet.width + sheet.gapX));
        const left = sheet.left + column * (sheet.width + sheet.gapX);
        expect(box.x[1], `${mark.text} of ${mark.of}`).toBeLessThanOrEqual(left + sheet.width);
        for (const other of boxes.slice(i + 1, i + 12))
          expect(rectsOverlap(box, other.box), `${mark.text} / ${other.mark.text}`).toBe(false);
      });
    }
  });

  const hasZbar =
    spawnSync("zbarimg", ["--version"]).status === 0 && spawnSync("pdftoppm", ["-v"]).status === 0;

  it.skipIf(!hasZbar)(
    "have codes that an independent reader reads, mark and state",
    async () => {
      const folder = mkdtempSync(join(tmpdir(), "outerleaf-labels-"));
      try {
        const file = join(folder, "labels.pdf");
        writeFileSync(file, await pdf(pages.slice(0, 1), true));
        const own = [...labelsOf(facts).some(0, sheet.columns * sheet.rows)];
        // Each label by itself, as it is held before a reader: 200 dots an inch.
        const dots = (mm: number): string => String(Math.round((mm * 200) / 25.4));
        const read = own.map((_, i) => {
          const [row, column] = [Math.floor(i / sheet.columns), i % sheet.columns];
          const corner = [
            "-x",
            dots(sheet.left + column * (sheet.width + sheet.gapX)),
            "-y",
            dots(sheet.top + row * (sheet.height + sheet.gapY)),
            "-W",
            dots(sheet.width),
            "-H",
            dots(sheet.height),
          ];
          spawnSync("pdftoppm", ["-r", "200", ...corner, "-png", "-singlefile", file, join(folder, "label")]);
          const args = ["-q", "--raw", join(folder, "label.png")];
          return spawnSync("zbarimg", args, { encoding: "utf8" }).stdout.trim();
        });
        expect(read).toEqual(own.map(({ code }) => code));
      } finally {
        rmSync(folder, { recursive: true });
      }
    },
    60_000,
  );
});

describe("the archive", () => {
  const files = ["a.pdf", "b/é.csv"].map((name, i) => ({ name, bytes: new Uint8Array([i, 2, 3]) }));

  it("holds every file as it is, whichever is ended first, and is the same to the byte when it is made again", () => {
    const zipped = (): Buffer => {
      const chunks: Uint8Array[] = [];
      const archive = archiveTo((chunk) => chunks.push(chunk));
      const begun = files.map(({ name, bytes }) => ({ file: archive.begin(name), bytes }));
      for (const { file, bytes } of [...begun].reverse()) {
        file.add(bytes.slice(0, 1));
        file.add(bytes.slice(1));
        file.end();
      }
      archive.end();
      return Buffer.concat(chunks);
    };
    expect(zipped()).toEqual(zipped());
    expect(unzipSync(zipped())).toEqual(Object.fromEntries(files.map(({ name, bytes }) => [name, bytes])));
  });
});

describe("an issue as one archive", () => {
  it("holds every document of an issue and the project file, each as long as its list says and with its sum (FIPS 180-4)", async () => {
    const { project: porch } = example("porch");
    const own = design(porch);
    const sumOf = async (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");
    const chunks: Uint8Array[] = [];
    await archiveIssue(
      {
        design: own,
        findings: own.findings,
        cutFindings: [],
        plan: undefined,
        takeoff: takeOff(porch, own.facade, undefined),
        reader,
        file: { name: "porch.json", document: porch },
      },
      { fonts: PDF_FONTS, version: "1", sumOf, take: (chunk) => void chunks.push(chunk) },
    );
    const files = unzipSync(Buffer.concat(chunks));
    const manifest = manifestShape.parse(JSON.parse(Buffer.from(files["manifest.json"] ?? []).toString()));
    const names = manifest.documents.map(({ name }) => name);
    expect([...names, "manifest.json"].sort()).toEqual(Object.keys(files).sort());
    expect(names).toEqual(expect.arrayContaining(["drawings.pdf", "facade.ifc", "cover.svg", "porch.json"]));
    for (const { name, bytes, sha256 } of manifest.documents) {
      const held = files[name] ?? new Uint8Array();
      expect({ name, bytes: held.length, sha256: await sumOf(held) }).toEqual({ name, bytes, sha256 });
    }
  }, 60_000);
});
