/** Every document of an issue. No time stands in any of them: the same project gives the same bytes. */
import { basename } from "node:path";
import { bookHtml } from "../../output/book/book-html.ts";
import { csvFiles } from "../../output/csv/csv-files.ts";
import { pileCsv } from "../../output/csv/pile.ts";
import { type DrawingPaper, drawingSheet, sheetSet } from "../../output/drawings/drawing-sheets.ts";
import { labelPages } from "../../output/drawings/labels.ts";
import { rodRolls, rodTiles } from "../../output/drawings/rod-strips.ts";
import { dxfFiles } from "../../output/dxf/dxf-files.ts";
import { writeGlb } from "../../output/gltf/glb.ts";
import { writeIfc } from "../../output/ifc/ifc.ts";
import { cutJson } from "../../output/json/cut.ts";
import { findingsJson } from "../../output/json/finding.ts";
import { printJson } from "../../output/json/print.ts";
import { setOutJson } from "../../output/json/set-out.ts";
import { takeoffJson } from "../../output/json/takeoff.ts";
import { type PdfPage, streamPdf } from "../../output/pdf/pdf.ts";
import { schedulesXlsx } from "../../output/xlsx/schedules.ts";
import { waiverOf } from "../../project/waivers.ts";
import { makeBook } from "../../scene/book/make-book.ts";
import { message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import type { Refusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { readPdfFonts } from "../pdf-fonts.ts";
import type { IssueManifest } from "../shapes/small.ts";
import { VERSION } from "../version.ts";
import { type Document, type Shelf, sha256, writeFolder } from "../write-folder.ts";
import { findingsReport } from "./report.ts";
import type { Worked } from "./work.ts";

/** Makes the documents and writes them into the folder, all or none. */
export async function issue(job: Job, worked: Worked, folder: string): Promise<IssueManifest | Refusal> {
  const { opened } = worked;
  job.progress(message("cli.doing.draw"));
  const { project, reader, file, edit } = opened;
  return writeFolder(
    {
      folder,
      write: (shelf) => writeDocuments(job, worked, shelf),
      head: {
        version: VERSION,
        project: project.title,
        revision: project.revision ?? "",
        language: reader.language,
        units: reader.units,
        input: { name: basename(file.name), sha256: sha256(file.bytes) },
        ...(edit && { edit: { name: basename(edit.name), sha256: sha256(edit.bytes) } }),
      },
    },
    job.io,
  );
}

async function writeDocuments(job: Job, worked: Worked, shelf: Shelf): Promise<void> {
  const { opened, design, plan, takeoff, findings } = worked;
  const { project, reader } = opened;
  const fonts = await readPdfFonts();
  const facts = { design, findings, reader, plan, takeoff };
  const pdf = async (
    name: string,
    pages: Iterable<PdfPage> | AsyncIterable<PdfPage>,
    of: number,
  ): Promise<void> => {
    if (of === 0) return;
    const document = await shelf.open(name);
    await streamPdf(pages, {
      title: project.title,
      reader,
      fonts,
      take: (chunk) => document.add(chunk),
      progress: (number) => job.progress(message("cli.doing.sheet", { number, of })),
    });
    await document.close();
  };
  const set = sheetSet(facts, { keep: design.facade.faces.length <= HELD_FACES });
  await pdf("drawings.pdf", besidePdf(set.papers(), reader, shelf), set.count);
  for (const [name, pages] of [
    ["labels.pdf", labelPages(facts)],
    ["storey-rods-roll.pdf", rodRolls(design.facade)],
    ["storey-rods-tiles.pdf", rodTiles(design.facade, reader)],
  ] as const)
    await pdf(name, pages, pages.length);
  job.progress(message("cli.doing.write"));
  for (const document of otherDocuments(worked)) await shelf.put(document);
}

/** Sheets of so many faces are held together, and drawn once; of more they are drawn again when they are written. */
const HELD_FACES = 24;

/** Each sheet for the PDF, once its own files are written. */
async function* besidePdf(
  papers: Iterable<DrawingPaper>,
  reader: Reader,
  shelf: Shelf,
): AsyncGenerator<PdfPage> {
  for (const paper of papers) {
    await shelf.put(text(`${paper.name}.svg`, drawingSheet(paper, reader).svg));
    for (const file of dxfFiles([paper], reader)) await shelf.put(bytes(file.name, file.bytes));
    yield paper;
  }
}

/** All but the drawings, each made when the one before is written. */
function* otherDocuments({
  opened,
  design,
  plan,
  takeoff,
  findings,
  cutFindings,
}: Worked): Generator<Document> {
  const { project, reader } = opened;
  const options = { reader, waivers: project.waivers };
  const json = (name: string, value: unknown): Document => text(name, printJson(value));
  const tables = { facade: design.facade, cutPlan: plan, takeoff, reader };
  const book = makeBook({ project, findings, waiverOf: (one) => waiverOf(one, project.waivers) });
  if (opened.recorded) yield json(basename(opened.file.name), opened.document);
  yield text("calculation-book.html", bookHtml(book, reader));
  yield text("findings.txt", findingsReport({ project, findings }, reader));
  yield json("findings.json", findingsJson(findings, options));
  yield json("set-out.json", setOutJson(design, reader));
  yield json("cut.json", cutJson({ project, plan, findings: cutFindings }, reader));
  yield json("takeoff.json", takeoffJson({ project, takeoff, findings: cutFindings }, reader));
  for (const file of csvFiles(tables)) yield text(file.name, file.text);
  yield text("pile.csv", pileCsv(project, reader).text);
  yield bytes("facade.ifc", writeIfc({ project, facade: design.facade }));
  const { title, structure } = project;
  yield bytes("build-up.glb", writeGlb(design.facade, { title, sheathing: structure.sheathingThickness }));
  yield bytes("schedules.xlsx", schedulesXlsx(tables, title));
}

function bytes(name: string, content: Uint8Array): Document {
  return { name, bytes: Buffer.from(content) };
}

function text(name: string, content: string): Document {
  return { name, bytes: Buffer.from(content, "utf8") };
}
