/** Documents of a project, written by a worker of its own: it loads the writer and its fonts, and is then let go. */
import type { Reader } from "../../text/say.ts";
import { askOnce } from "./once.ts";

/** The whole set, labels, storey rods on a roll or in tiles, or all of it in one archive. */
export const WRITTEN = ["drawings", "labels", "rods-roll", "rods-tiles", "archive"] as const;

export type WrittenKind = (typeof WRITTEN)[number];

export interface PdfRequest {
  readonly name: string;
  readonly document: unknown;
  readonly reader: Reader;
  readonly what: WrittenKind;
}

/** Undefined where the program failed. */
export type PdfReply = Uint8Array<ArrayBuffer> | undefined;

export function writeDrawings(request: PdfRequest): Promise<PdfReply> {
  const worker = new Worker(new URL("./pdf.worker.ts", import.meta.url), { type: "module" });
  return askOnce<PdfRequest, PdfReply>(worker, request).answer;
}
