/** All drawings of a project as one PDF, written by a worker of its own: it loads the writer and its fonts, and is then let go. */
import type { Reader } from "../../text/say.ts";
import { askOnce } from "./once.ts";

export interface PdfRequest {
  readonly name: string;
  readonly document: unknown;
  readonly reader: Reader;
}

/** Undefined where the program failed. */
export type PdfReply = Uint8Array<ArrayBuffer> | undefined;

export function writeDrawings(request: PdfRequest): Promise<PdfReply> {
  const worker = new Worker(new URL("./pdf.worker.ts", import.meta.url), { type: "module" });
  return askOnce<PdfRequest, PdfReply>(worker, request).answer;
}
