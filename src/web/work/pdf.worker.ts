/** Designs, cuts and draws a project, and writes what is asked for: its sheets, labels or rods as a PDF, or all as an archive. */

import regular from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?url";
import bold from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff?url";
import signs from "dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url";
import boldSigns from "dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url";
import { cutFacade } from "../../cutting/facade/cut-facade.ts";
import { designFile, withStepChoices } from "../../design.ts";
import { byWeight } from "../../findings/finding.ts";
import { createDrawMemo } from "../../output/drawings/draw-memo.ts";
import { drawingPapers, type SheetSet, sheetSet } from "../../output/drawings/drawing-sheets.ts";
import { labelPages } from "../../output/drawings/labels.ts";
import { rodRolls, rodTiles } from "../../output/drawings/rod-strips.ts";
import { type ArchivedFacts, archiveIssue } from "../../output/issue/archive-issue.ts";
import { HELD_FACES, type IssueTools } from "../../output/issue/write-issue.ts";
import { type PdfPage, streamPdf } from "../../output/pdf/pdf.ts";
import type { PdfFonts } from "../../output/pdf/text.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import { takeOff } from "../../takeoff/take-off.ts";
import { nameOf } from "./hash.ts";
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

async function written(request: PdfRequest): Promise<PdfReply> {
  const { name, document, reader, what } = request;
  const read = designFile({ name, document }, { faces });
  if (read.kind === "refused") return undefined;
  const design = withStepChoices(read.design);
  const { plan, findings: cutFindings } = cutFacade(design.project, design.facade);
  const takeoff = takeOff(design.project, design.facade, plan);
  const findings = [...read.readFindings, ...design.findings, ...cutFindings].sort(byWeight);
  const facts = { design, findings, reader, plan, takeoff };
  fonts ??= fetchFonts().catch((error: unknown) => {
    fonts = undefined;
    throw error;
  });
  const tools = { fonts: await fonts, memo: drawn };
  if (what === "archive") return issued({ ...facts, cutFindings, file: { name, document } }, tools);
  const all = (pages: readonly PdfPage[]): Pages => ({ count: pages.length, papers: () => pages });
  const held = design.facade.faces.length <= HELD_FACES;
  const made: Readonly<Record<typeof what, () => Pages>> = {
    drawings: () => (held ? all(drawingPapers(facts, drawn)) : sheetSet(facts)),
    labels: () => {
      const { count, pages } = labelPages(facts);
      return { count, papers: pages };
    },
    "rods-roll": () => all(rodRolls(design.facade)),
    "rods-tiles": () => all(rodTiles(design.facade, reader)),
  };
  const { count, papers } = made[what]();
  if (count === 0) return undefined;
  const blob = growingBlob();
  await streamPdf(papers(), { title: design.project.title, reader, fonts: tools.fonts, take: blob.add });
  return blob.whole();
}

type Pages = Pick<SheetSet, "count"> & { papers(): Iterable<PdfPage> };

/** The whole issue, and the project file that it was made from. */
async function issued(facts: ArchivedFacts, tools: IssueTools): Promise<Blob> {
  const blob = growingBlob();
  const version = import.meta.env.OUTERLEAF_VERSION as string;
  await archiveIssue(facts, { ...tools, version, take: blob.add, sumOf: nameOf });
  return blob.whole();
}

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
