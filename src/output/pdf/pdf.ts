/** Drawings as one PDF: vectors at full size, real text, a bookmark and a page label each. Same drawings, same bytes. */
import PDFDocument from "pdfkit";
import { drawList } from "../../scene/draw-list.ts";
import type { Scene } from "../../scene/model.ts";
import type { Sheet } from "../../scene/sheet.ts";
import { type Reader, say } from "../../text/say.ts";
import { joined } from "../pieces.ts";
import { paint } from "./painter.ts";
import { type PdfFonts, type TextWriter, textWriter } from "./text.ts";

export interface PdfPage {
  /** What links of other pages lead to it by. */
  readonly name?: string;
  /** On paper with its frame, or a scene alone, the page as large as its bounds. */
  readonly drawing: Sheet | Scene;
  /** What readers of the file call the page by. */
  readonly label: string;
}

export interface PdfOptions {
  readonly title: string;
  readonly reader: Reader;
  readonly fonts: PdfFonts;
  /** Told after each page, how many are drawn. */
  readonly progress?: (done: number) => void;
  /** False leaves the pages' contents as they are written, for readers in tests. */
  readonly compress?: boolean;
}

const POINTS_PER_MM = 72 / 25.4;

/**
 * The whole file at once.
 * @throws Error where a font cannot be read
 */
export async function writePdf(pages: Iterable<PdfPage>, options: PdfOptions): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  await streamPdf(pages, { ...options, take: (chunk) => void chunks.push(chunk) });
  return joined(chunks);
}

/** Pages whose text the fonts' layouts are kept for: marks of a large facade are all unlike, and would be kept for ever. */
const PAGES_KEPT = 64;

/**
 * Hands the file out piece by piece, each page when it is drawn; the next is asked for when that was taken.
 * @throws Error where a font cannot be read
 */
export async function streamPdf(
  pages: Iterable<PdfPage> | AsyncIterable<PdfPage>,
  {
    title,
    reader,
    fonts,
    progress,
    take,
    compress = true,
  }: PdfOptions & { readonly take: (chunk: Uint8Array) => Promise<void> | void },
): Promise<void> {
  // The file's id is made from this time, which is then left out: the same drawings give the same bytes.
  const timeless = { CreationDate: { getTime: () => 0 } };
  let ready: Uint8Array[] = [];
  // As a stream it would hand its pieces out only when nothing else is waited for: a whole set would be held.
  class HandedOut extends PDFDocument {
    override push(chunk: Uint8Array | null): boolean {
      if (chunk) ready.push(chunk);
      return true;
    }
  }
  const document = new HandedOut({
    autoFirstPage: false,
    compress,
    font: null,
    info: { Title: title, Creator: "Outerleaf", Producer: "Outerleaf", ...timeless },
    lang: reader.language,
    displayTitle: true,
    pdfVersion: "1.7",
  });
  delete document.info.CreationDate;
  document.endMetadata = () => undefined;
  const hand = async (): Promise<void> => {
    const chunks = ready;
    ready = [];
    for (const chunk of chunks) await take(chunk);
  };
  const texts = textWriter(document, fonts);
  const labels: string[] = [];
  for await (const page of pages) {
    const { page: before } = document;
    draw(page, { document, texts, reader });
    // It is written, and from here on only its number is asked for; the writer would keep all of it to the end.
    if (before) before.dictionary.data = {};
    labels.push(page.label);
    if (labels.length % PAGES_KEPT === 0) texts.forget();
    await hand();
    progress?.(labels.length);
  }
  label(document, labels);
  document.end();
  await hand();
}

function draw(
  { drawing, name }: PdfPage,
  { document, texts, reader }: { document: PDFDocument; texts: TextWriter; reader: Reader },
): void {
  const onPaper = "viewports" in drawing;
  const { x, y } = onPaper ? drawing.frame.bounds : drawing.bounds;
  const scale = onPaper ? 1 : drawing.scale;
  const [width, height] = [(x[1] - x[0]) * scale, (y[1] - y[0]) * scale];
  document.addPage({ size: [width * POINTS_PER_MM, height * POINTS_PER_MM], margin: 0 });
  if (name !== undefined) document.addNamedDestination(name, "Fit");
  document.outline.addItem(say(drawing.title, reader));
  document.save().scale(POINTS_PER_MM).lineJoin("round");
  const views = onPaper
    ? [...drawing.viewports, { scene: drawing.frame, at: [0, 0] as const }]
    : [{ scene: drawing, at: [0, 0] as const }];
  for (const { scene, at } of views) {
    const placement = {
      scale: scene.scale,
      from: [scene.bounds.x[0], scene.bounds.y[0]] as const,
      to: [at[0], height - at[1]] as const,
    };
    paint(drawList(scene, reader), { document, texts, placement });
  }
  document.restore();
}

/**
 * Page labels (ISO 32000-1, 12.4.2): each page is a range of its own with its label as prefix, an object of String since the
 * writer takes a plain one for a name.
 */
function label(document: PDFDocument, labels: readonly string[]): void {
  const ranges = labels.flatMap((label, at) => [at, { P: Object(label) as unknown }]);
  document._root.data.PageLabels = { Nums: ranges };
}
