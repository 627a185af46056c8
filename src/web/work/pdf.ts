/** Documents of a project, written by a worker of its own: it loads the writer and its fonts when it is first asked, and keeps what it drew. */
import type { Reader } from "../../text/say.ts";
import { latestOf } from "./latest.ts";

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
export type PdfReply = Blob | undefined;

const ask = latestOf<PdfRequest, PdfReply>(
  () => new Worker(new URL("./pdf.worker.ts", import.meta.url), { type: "module" }),
);

/** One at a time. What an edit left as it was is not drawn again the next time. */
export function writeDrawings(request: PdfRequest): Promise<PdfReply> {
  return ask(request);
}
