/** Files for other programs, each made when it is asked for by name. */
import type { CutPlan } from "../cutting/facade/plan.ts";
import type { Finding } from "../findings/finding.ts";
import type { Takeoff } from "../takeoff/model.ts";
import type { Reader } from "../text/say.ts";
import { zipped } from "./archive.ts";
import { csvFiles } from "./csv/csv-files.ts";
import { pileCsv } from "./csv/pile.ts";
import { csvPieces } from "./csv/write.ts";
import type { DrawingPaper } from "./drawings/facts.ts";
import { dxfFiles, type NamedBytes } from "./dxf/dxf-files.ts";
import { writeGlb } from "./gltf/glb.ts";
import { writeIfc } from "./ifc/ifc.ts";
import { cutListed } from "./json/cut.ts";
import { findingsListed } from "./json/finding.ts";
import { jsonPieces } from "./json/print.ts";
import { type SetOutFacts, setOutListed } from "./json/set-out.ts";
import { takeoffListed } from "./json/takeoff.ts";
import { allBytes, mapped } from "./pieces.ts";
import { schedulesXlsx } from "./xlsx/schedules.ts";

/** `sheet`: the drawing of that name alone. */
export type ExchangeWish =
  | {
      readonly kind:
        | "workbook"
        | "model"
        | "scene"
        | "drawings"
        | "tables"
        | "set-out-json"
        | "findings-json"
        | "cut-json"
        | "takeoff-json";
    }
  | { readonly kind: "sheet"; readonly name: string };

export interface ExchangeFacts {
  readonly design: SetOutFacts;
  /** Of reading, setting-out, proof and cutting. */
  readonly findings: readonly Finding[];
  /** Of cutting alone. */
  readonly cutFindings: readonly Finding[];
  readonly plan: CutPlan | undefined;
  readonly takeoff: Takeoff;
  readonly papers: readonly DrawingPaper[];
  readonly reader: Reader;
}

/** Undefined where a sheet of that name is none that is drawn to scale. */
export function exchangeFile(wish: ExchangeWish, facts: ExchangeFacts): NamedBytes | undefined {
  const { design, findings, cutFindings, plan, takeoff, papers, reader } = facts;
  const { project, facade } = design;
  const tables = { facade, cutPlan: plan, takeoff, reader };
  switch (wish.kind) {
    case "workbook":
      return { name: "schedules.xlsx", bytes: allBytes(schedulesXlsx(tables, project.title)) };
    case "model":
      return { name: "facade.ifc", bytes: writeIfc({ project, facade }) };
    case "scene": {
      const options = { title: project.title, sheathing: project.structure.sheathingThickness };
      return { name: "build-up.glb", bytes: writeGlb(facade, options) };
    }
    case "drawings":
      return {
        name: "drawings-dxf.zip",
        bytes: allBytes(
          zipped(mapped(dxfFiles(papers, reader), ({ name, bytes }) => ({ name, pieces: [bytes] }))),
        ),
      };
    case "tables": {
      const files = [...csvFiles(tables), pileCsv(project, reader)];
      return {
        name: "tables-csv.zip",
        bytes: allBytes(zipped(mapped(files, ({ name, records }) => ({ name, pieces: csvPieces(records) })))),
      };
    }
    case "set-out-json":
      return json("set-out.json", setOutListed(design, reader));
    case "findings-json":
      return json("findings.json", findingsListed(findings, { reader, waivers: project.waivers }));
    case "cut-json":
      return json("cut.json", cutListed({ project, plan, findings: cutFindings }, reader));
    case "takeoff-json":
      return json("takeoff.json", takeoffListed({ project, takeoff, findings: cutFindings }, reader));
    case "sheet":
      return dxfFiles(
        papers.filter(({ name }) => name === wish.name),
        reader,
      )[0];
  }
}

function json(name: string, document: object): NamedBytes {
  return { name, bytes: allBytes(jsonPieces(document)) };
}
