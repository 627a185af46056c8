/**
 * Every document of an issue, in the order in which they are read, handed to a shelf one by one. No time stands in any of them:
 * the same project gives the same bytes, in a folder and in an archive alike.
 */
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Finding } from "../../findings/finding.ts";
import { waiverOf } from "../../project/waivers.ts";
import { makeBook } from "../../scene/book/make-book.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import type { Reader } from "../../text/say.ts";
import { bookHtml } from "../book/book-html.ts";
import { csvFiles } from "../csv/csv-files.ts";
import { pileCsv } from "../csv/pile.ts";
import { csvPieces } from "../csv/write.ts";
import type { DrawMemo } from "../drawings/draw-memo.ts";
import { type DrawingPaper, drawingSheet, sheetSet } from "../drawings/drawing-sheets.ts";
import { labelPages } from "../drawings/labels.ts";
import { rodRolls, rodTiles } from "../drawings/rod-strips.ts";
import { dxfFiles, isToScale } from "../dxf/dxf-files.ts";
import { glbPieces } from "../gltf/glb.ts";
import { ifcPieces } from "../ifc/ifc.ts";
import { cutListed } from "../json/cut.ts";
import { findingsListed } from "../json/finding.ts";
import { jsonPieces, printJson } from "../json/print.ts";
import { type SetOutFacts, setOutListed } from "../json/set-out.ts";
import { takeoffListed } from "../json/takeoff.ts";
import { type PdfPage, streamPdf } from "../pdf/pdf.ts";
import type { PdfFonts } from "../pdf/text.ts";
import { schedulesXlsx } from "../xlsx/schedules.ts";
import { findingsReport } from "./report.ts";
import type { Document, Shelf } from "./shelf.ts";

export interface IssueFacts {
  readonly design: SetOutFacts;
  /** Of reading, setting-out, proof and cutting, the heaviest first. */
  readonly findings: readonly Finding[];
  /** Of cutting alone. */
  readonly cutFindings: readonly Finding[];
  readonly plan: CutPlan | undefined;
  readonly takeoff: Takeoff;
  readonly reader: Reader;
  /** The project file, where it goes out with what was made of it. */
  readonly file?: { readonly name: string; readonly document: unknown } | undefined;
}

export interface IssueTools {
  readonly fonts: PdfFonts;
  /** Keeps what is drawn for the next issue; where absent sheets of large facades are let go one by one. */
  readonly memo?: DrawMemo | undefined;
  /** Told after each page of a PDF. */
  readonly sheetDone?: (number: number, of: number) => void;
  /** Told when the drawings are written and the rest begins. */
  readonly drawingsDone?: () => void;
}

/** Sheets of so many faces are held together, and drawn once; of more they are drawn again when they are written. */
export const HELD_FACES = 24;

/** @throws Error where a font cannot be read, and what the shelf throws */
export async function writeIssue(
  facts: IssueFacts,
  shelf: Shelf,
  { fonts, memo, sheetDone, drawingsDone }: IssueTools,
): Promise<void> {
  const { design, reader } = facts;
  const pdf = async (
    name: string,
    pages: Iterable<PdfPage> | AsyncIterable<PdfPage>,
    of: number,
    from?: Iterable<string>,
  ): Promise<void> => {
    if (of === 0) return;
    if (from && (await shelf.standing?.([name], from))) return;
    const document = await shelf.open(name);
    await streamPdf(pages, {
      title: design.project.title,
      reader,
      fonts,
      take: (chunk) => document.add(chunk),
      progress: (number) => sheetDone?.(number, of),
    });
    await document.close();
  };
  const held = design.facade.faces.length <= HELD_FACES;
  const set = sheetSet(facts, { keep: held, ...(held && memo && { memo }) });
  const beside = besidePdf(set.papers(), reader, shelf);
  // Only sheets that are held can be looked through before they are drawn.
  await pdf("drawings.pdf", beside, set.count, held ? madeFrom(set.papers(), reader) : undefined);
  // Where the drawings stand their sheets have still to be put.
  for await (const _ of beside);
  const labels = labelPages(facts);
  const labelled = oneAfterAnother([JSON.stringify(reader)], labels.drawnFrom());
  await pdf("labels.pdf", labels.pages(), labels.count, labelled);
  for (const [name, pages] of [
    ["storey-rods-roll.pdf", rodRolls(design.facade)],
    ["storey-rods-tiles.pdf", rodTiles(design.facade, reader)],
  ] as const)
    await pdf(name, pages, pages.length, madeFrom(pages, reader));
  drawingsDone?.();
  for (const document of otherDocuments(facts)) await shelf.put(document);
}

/** Each sheet for the PDF, once its own files are written. */
async function* besidePdf(
  papers: Iterable<DrawingPaper>,
  reader: Reader,
  shelf: Shelf,
): AsyncGenerator<PdfPage> {
  for (const paper of papers) {
    const svg = `${paper.name}.svg`;
    const names = isToScale(paper) ? [svg, `${paper.name}.dxf`] : [svg];
    if (!(await shelf.standing?.(names, madeFrom([paper], reader)))) {
      await shelf.put({ name: svg, pieces: [drawingSheet(paper, reader).svg] });
      for (const { name, bytes } of dxfFiles([paper], reader)) await shelf.put({ name, pieces: [bytes] });
    }
    yield paper;
  }
}

function* oneAfterAnother<One>(...all: readonly Iterable<One>[]): Generator<One> {
  for (const one of all) yield* one;
}

/** All that a renderer is given, page by page. */
function* madeFrom(pages: Iterable<PdfPage>, reader: Reader): Generator<string> {
  yield JSON.stringify(reader);
  for (const page of pages) yield JSON.stringify(page);
}

/** All but the drawings, each made when the one before is written. */
function* otherDocuments(facts: IssueFacts): Generator<Document> {
  const { design, plan, takeoff, findings, cutFindings, reader, file } = facts;
  const { project, facade } = design;
  const options = { reader, waivers: project.waivers };
  const json = (name: string, document: object): Document => ({ name, pieces: jsonPieces(document) });
  const tables = { facade, cutPlan: plan, takeoff, reader };
  const book = makeBook({ project, findings, waiverOf: (one) => waiverOf(one, project.waivers) });
  if (file) yield { name: file.name, pieces: [printJson(file.document)] };
  yield { name: "calculation-book.html", pieces: bookHtml(book, reader) };
  yield { name: "findings.txt", pieces: findingsReport({ project, findings }, reader) };
  yield json("findings.json", findingsListed(findings, options));
  yield json("set-out.json", setOutListed(design, reader));
  yield json("cut.json", cutListed({ project, plan, findings: cutFindings }, reader));
  yield json("takeoff.json", takeoffListed({ project, takeoff, findings: cutFindings }, reader));
  for (const { name, records } of [...csvFiles(tables), pileCsv(project, reader)]) {
    yield { name, pieces: csvPieces(records) };
  }
  yield { name: "facade.ifc", pieces: ifcPieces({ project, facade }) };
  const { title, structure } = project;
  const sheathing = structure.sheathingThickness;
  yield { name: "build-up.glb", pieces: glbPieces(facade, { title, sheathing }) };
  yield { name: "schedules.xlsx", pieces: schedulesXlsx(tables, title) };
}
