/** Designs, cuts and draws a project, and writes what is asked for: its sheets, labels or rods as a PDF, or all as an archive. */

import regular from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?url";
import bold from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff?url";
import signs from "dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url";
import boldSigns from "dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url";
import { cutFacade } from "../../cutting/facade/cut-facade.ts";
import { designFile } from "../../design.ts";
import { archiveTo } from "../../output/archive.ts";
import { csvFiles } from "../../output/csv/csv-files.ts";
import { createDrawMemo } from "../../output/drawings/draw-memo.ts";
import { drawingPapers, type SheetSet, sheetSet } from "../../output/drawings/drawing-sheets.ts";
import { labelPages } from "../../output/drawings/labels.ts";
import { rodRolls, rodTiles } from "../../output/drawings/rod-strips.ts";
import { type PdfPage, streamPdf } from "../../output/pdf/pdf.ts";
import type { PdfFonts } from "../../output/pdf/text.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import { takeOff } from "../../takeoff/take-off.ts";
import type { PdfReply, PdfRequest } from "./pdf.ts";

async function fetchFonts(): Promise<PdfFonts> {
  const bytes = async (address: string): Promise<Uint8Array> => {
    const answer = await fetch(address);
    if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
    return new Uint8Array(await answer.arrayBuffer());
  };
  const [plain, strong, more, strongMore] = await Promise.all(
    [regular, bold, signs, boldSigns].map(bytes) as [
      Promise<Uint8Array>,
      Promise<Uint8Array>,
      Promise<Uint8Array>,
      Promise<Uint8Array>,
    ],
  );
  return { regular: plain, bold: strong, signs: more, boldSigns: strongMore };
}

const faces = createFaceMemo({ spare: 24, shareds: 2 });
const drawn = createDrawMemo();
let fonts: Promise<PdfFonts> | undefined;

/** What each kind of document is, in the order of the archive. */
const KINDS = ["drawings", "labels", "rods-roll", "rods-tiles"] as const;

type Pages = Pick<SheetSet, "count"> & { papers(): Iterable<PdfPage> };

async function written({ name, document, reader, what }: PdfRequest): Promise<PdfReply> {
  const read = designFile({ name, document }, { faces });
  if (read.kind === "refused") return undefined;
  const { design, readFindings } = read;
  const { plan, findings: cutting } = cutFacade(design.project, design.facade);
  const takeoff = takeOff(design.project, design.facade, plan);
  const findings = [...readFindings, ...design.findings, ...cutting];
  const facts = { design, findings, reader, plan, takeoff };
  fonts ??= fetchFonts().catch((error: unknown) => {
    fonts = undefined;
    throw error;
  });
  const options = { title: design.project.title, reader, fonts: await fonts };
  const held = design.facade.faces.length <= HELD_FACES;
  const all = (pages: readonly PdfPage[]): Pages => ({ count: pages.length, papers: () => pages });
  const made: Readonly<Record<(typeof KINDS)[number], () => Pages>> = {
    drawings: () => (held ? all(drawingPapers(facts, drawn)) : sheetSet(facts)),
    labels: () => all(labelPages(facts)),
    "rods-roll": () => all(rodRolls(design.facade)),
    "rods-tiles": () => all(rodTiles(design.facade, reader)),
  };
  const blob = growingBlob();
  if (what !== "archive") {
    const { count, papers } = made[what]();
    if (count === 0) return undefined;
    await streamPdf(papers(), { ...options, take: blob.add });
    return blob.whole();
  }
  const archive = archiveTo(blob.add);
  for (const kind of KINDS) {
    const { count, papers } = made[kind]();
    if (count > 0) await streamPdf(papers(), { ...options, take: archive.begin(`${kind}.pdf`) });
  }
  const text = (content: string): Uint8Array => new TextEncoder().encode(content);
  for (const one of csvFiles({ facade: design.facade, cutPlan: plan, takeoff, reader }))
    archive.begin(one.name)(text(one.text));
  archive.begin(name)(text(`${JSON.stringify(document, null, 2)}\n`));
  archive.end();
  return blob.whole();
}

/** Sheets of so many faces are kept, for the next time; of more they are drawn one after another, and let go. */
const HELD_FACES = 24;

/** Bytes at hand before they are given to the browser, which may keep them on its disk. */
const AT_HAND = 1 << 22;

function growingBlob() {
  let blob = new Blob();
  let chunks: Uint8Array<ArrayBuffer>[] = [];
  let bytes = 0;
  const whole = (): Blob => {
    blob = new Blob([blob, ...chunks]);
    chunks = [];
    bytes = 0;
    return blob;
  };
  return {
    add(chunk: Uint8Array): void {
      chunks.push(new Uint8Array(chunk));
      bytes += chunk.length;
      if (bytes >= AT_HAND) whole();
    },
    whole,
  };
}

self.addEventListener("message", ({ data }: MessageEvent<PdfRequest>) => {
  void written(data)
    .catch(() => undefined)
    .then((reply) => self.postMessage(reply));
});
