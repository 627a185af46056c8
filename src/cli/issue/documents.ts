/** Every document of an issue. No time stands in any of them: the same project gives the same bytes. */
import { basename } from "node:path";
import { bookHtml } from "../../output/book/book-html.ts";
import { csvFiles } from "../../output/csv/csv-files.ts";
import { pileCsv } from "../../output/csv/pile.ts";
import { drawingPapers, drawingSheet } from "../../output/drawings/drawing-sheets.ts";
import { labelPages } from "../../output/drawings/labels.ts";
import { rodRolls, rodTiles } from "../../output/drawings/rod-strips.ts";
import { dxfFiles } from "../../output/dxf/dxf-files.ts";
import { writeGlb } from "../../output/gltf/glb.ts";
import { writeIfc } from "../../output/ifc/ifc.ts";
import { type PdfPage, writePdf } from "../../output/pdf/pdf.ts";
import { schedulesXlsx } from "../../output/xlsx/schedules.ts";
import { waiverOf } from "../../project/waivers.ts";
import { makeBook } from "../../scene/book/make-book.ts";
import { message } from "../../text/message.ts";
import type { Refusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { cutJson } from "../json/cut.ts";
import { findingJson } from "../json/finding.ts";
import { printJson } from "../json/print.ts";
import { setOutJson } from "../json/set-out.ts";
import { takeoffJson } from "../json/takeoff.ts";
import { readPdfFonts } from "../pdf-fonts.ts";
import type { IssueManifest } from "../shapes/small.ts";
import { VERSION } from "../version.ts";
import { type Document, sha256, writeFolder } from "../write-folder.ts";
import { findingsReport } from "./report.ts";
import type { Worked } from "./work.ts";

/** Makes the documents and writes them into the folder, all or none. */
export async function issue(job: Job, worked: Worked, folder: string): Promise<IssueManifest | Refusal> {
  const { opened } = worked;
  job.progress(message("cli.doing.draw"));
  const documents = await documentsOf(job, worked);
  job.progress(message("cli.doing.write"));
  const { project, reader, file, edit } = opened;
  return writeFolder(
    {
      folder,
      documents,
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

async function documentsOf(
  job: Job,
  { opened, design, plan, takeoff, findings, cutFindings }: Worked,
): Promise<Document[]> {
  const { project, reader } = opened;
  const options = { reader, waivers: project.waivers };
  const json = (name: string, value: unknown): Document => text(name, printJson(value));
  const tables = { facade: design.facade, cutPlan: plan, takeoff, reader };
  const book = makeBook({ project, findings, waiverOf: (one) => waiverOf(one, project.waivers) });
  const papers = drawingPapers({ design, findings, reader, plan, takeoff });
  const fonts = await readPdfFonts();
  const tell = (of: number) => (number: number) => job.progress(message("cli.doing.sheet", { number, of }));
  const pdf = async (name: string, pages: readonly PdfPage[]): Promise<Document[]> =>
    pages.length === 0
      ? []
      : [
          {
            name,
            bytes: await writePdf(pages, {
              title: project.title,
              reader,
              fonts,
              progress: tell(pages.length),
            }),
          },
        ];
  const facts = { design, findings, reader, plan, takeoff };
  return [
    ...(opened.recorded ? [json(basename(opened.file.name), opened.document)] : []),
    ...(await pdf("drawings.pdf", papers)),
    ...(await pdf("labels.pdf", labelPages(facts))),
    ...(await pdf("storey-rods-roll.pdf", rodRolls(design.facade))),
    ...(await pdf("storey-rods-tiles.pdf", rodTiles(design.facade, reader))),
    ...papers.map((paper) => text(`${paper.name}.svg`, drawingSheet(paper, reader).svg)),
    ...dxfFiles(papers, reader).map((file) => bytes(file.name, file.bytes)),
    text("calculation-book.html", bookHtml(book, reader)),
    text("findings.txt", findingsReport({ project, findings }, reader)),
    json("findings.json", { schemaVersion: 1, findings: findings.map((one) => findingJson(one, options)) }),
    json("set-out.json", setOutJson(design, reader)),
    json("cut.json", cutJson({ project, plan, findings: cutFindings }, reader)),
    json("takeoff.json", takeoffJson({ project, takeoff, findings: cutFindings }, reader)),
    ...csvFiles(tables).map((file) => text(file.name, file.text)),
    text("pile.csv", pileCsv(project, reader).text),
    bytes("facade.ifc", writeIfc({ project, facade: design.facade })),
    bytes(
      "build-up.glb",
      writeGlb(design.facade, { title: project.title, sheathing: project.structure.sheathingThickness }),
    ),
    bytes("schedules.xlsx", schedulesXlsx(tables, project.title)),
  ];
}

function bytes(name: string, content: Uint8Array): Document {
  return { name, bytes: Buffer.from(content) };
}

function text(name: string, content: string): Document {
  return { name, bytes: Buffer.from(content, "utf8") };
}
