/** Designs, cuts and draws a project, and writes its drawings as one PDF. */

import regular from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?url";
import bold from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff?url";
import signs from "dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url";
import boldSigns from "dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url";
import { cutFacade } from "../../cutting/facade/cut-facade.ts";
import { designFile } from "../../design.ts";
import { drawingPapers } from "../../output/drawings/drawing-sheets.ts";
import { writePdf } from "../../output/pdf/pdf.ts";
import type { PdfFonts } from "../../output/pdf/text.ts";
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

async function written({ name, document, reader }: PdfRequest): Promise<PdfReply> {
  const made = designFile({ name, document });
  if (made.kind === "refused") return undefined;
  const { design, readFindings } = made;
  const { plan, findings } = cutFacade(design.project, design.facade);
  const papers = drawingPapers({
    design,
    findings: [...readFindings, ...design.findings, ...findings],
    reader,
    plan,
    takeoff: takeOff(design.project, design.facade, plan),
  });
  const bytes = await writePdf(papers, { title: design.project.title, reader, fonts: await fetchFonts() });
  return new Uint8Array(bytes);
}

self.addEventListener("message", ({ data }: MessageEvent<PdfRequest>) => {
  void written(data)
    .catch(() => undefined)
    .then((reply) => self.postMessage(reply));
});
