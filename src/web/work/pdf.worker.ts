/** Designs, cuts and draws a project, and writes what is asked for: its sheets, labels or rods as a PDF, or all as an archive. */

import regular from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?url";
import bold from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff?url";
import signs from "dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url";
import boldSigns from "dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url";
import { cutFacade } from "../../cutting/facade/cut-facade.ts";
import { designFile } from "../../design.ts";
import { type ArchivedFile, zipOf } from "../../output/archive.ts";
import { csvFiles } from "../../output/csv/csv-files.ts";
import { drawingPapers } from "../../output/drawings/drawing-sheets.ts";
import { labelPages } from "../../output/drawings/labels.ts";
import { rodRolls, rodTiles } from "../../output/drawings/rod-strips.ts";
import { type PdfPage, writePdf } from "../../output/pdf/pdf.ts";
import type { PdfFonts } from "../../output/pdf/text.ts";
import { takeOff } from "../../takeoff/take-off.ts";
import type { PdfReply, PdfRequest, WrittenKind } from "./pdf.ts";

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

/** What each kind of document is, in the order of the archive. */
async function filesOf(
  { name, document, reader, what }: PdfRequest,
  kinds: readonly Exclude<WrittenKind, "archive">[],
): Promise<ArchivedFile[] | undefined> {
  const made = designFile({ name, document });
  if (made.kind === "refused") return undefined;
  const { design, readFindings } = made;
  const { plan, findings: cutting } = cutFacade(design.project, design.facade);
  const takeoff = takeOff(design.project, design.facade, plan);
  const findings = [...readFindings, ...design.findings, ...cutting];
  const facts = { design, findings, reader, plan, takeoff };
  const fonts = await fetchFonts();
  const pages: Readonly<Record<(typeof kinds)[number], () => readonly PdfPage[]>> = {
    drawings: () => drawingPapers(facts),
    labels: () => labelPages(facts),
    "rods-roll": () => rodRolls(design.facade),
    "rods-tiles": () => rodTiles(design.facade, reader),
  };
  const files: ArchivedFile[] = [];
  for (const kind of kinds) {
    const own = pages[kind]();
    if (own.length === 0) continue;
    const bytes = await writePdf(own, { title: design.project.title, reader, fonts });
    files.push({ name: `${kind}.pdf`, bytes });
  }
  if (what !== "archive") return files;
  const text = (content: string): Uint8Array => new TextEncoder().encode(content);
  return [
    ...files,
    ...csvFiles({ facade: design.facade, cutPlan: plan, takeoff, reader }).map((one) => ({
      name: one.name,
      bytes: text(one.text),
    })),
    { name, bytes: text(`${JSON.stringify(document, null, 2)}\n`) },
  ];
}

async function written(request: PdfRequest): Promise<PdfReply> {
  if (request.what !== "archive") {
    const [file] = (await filesOf(request, [request.what])) ?? [];
    return file && new Uint8Array(file.bytes);
  }
  const files = await filesOf(request, ["drawings", "labels", "rods-roll", "rods-tiles"]);
  return files && zipOf(files);
}

self.addEventListener("message", ({ data }: MessageEvent<PdfRequest>) => {
  void written(data)
    .catch(() => undefined)
    .then((reply) => self.postMessage(reply));
});
