/** A whole issue as one ZIP archive: the documents that a folder gets, the project file that they were made from, and the list of it all. */
import { printProject } from "../../project/print.ts";
import { archiveTo } from "../archive.ts";
import { printJson } from "../json/print.ts";
import { bytesOf, gathered, joined } from "../pieces.ts";
import { utf8 } from "../utf8.ts";
import { MANIFEST, type ManifestDocument, manifestOf } from "./manifest.ts";
import type { Shelf } from "./shelf.ts";
import { type IssueFacts, type IssueTools, writeIssue } from "./write-issue.ts";

export type ArchivedFacts = IssueFacts & Required<Pick<IssueFacts, "file">>;

export interface ArchiveTools extends IssueTools {
  /** Of the program. */
  readonly version: string;
  /** Takes the archive piece by piece. */
  readonly take: (chunk: Uint8Array) => void;
  /** SHA-256 in hexadecimal. */
  readonly sumOf: (bytes: Uint8Array<ArrayBuffer>) => Promise<string>;
}

/** @throws Error where a font cannot be read */
export async function archiveIssue(
  facts: ArchivedFacts,
  { version, take, sumOf, ...tools }: ArchiveTools,
): Promise<void> {
  const archive = archiveTo(take);
  const documents: ManifestDocument[] = [];
  // A file of an archive is begun when it is whole: those after one that is still open would be held until it ends.
  const open: Shelf["open"] = async (name) => {
    const at = documents.push({ name, bytes: 0, sha256: "" }) - 1;
    const chunks: Uint8Array[] = [];
    return {
      async add(chunk) {
        chunks.push(new Uint8Array(chunk));
      },
      async close() {
        const bytes = joined(chunks);
        const file = archive.begin(name);
        file.add(bytes);
        file.end();
        documents[at] = { name, bytes: bytes.length, sha256: await sumOf(bytes) };
      },
    };
  };
  const put: Shelf["put"] = async ({ name, pieces }) => {
    const document = await open(name);
    for (const piece of gathered(pieces)) await document.add(bytesOf(piece));
    await document.close();
  };
  await writeIssue(facts, { put, open }, tools);
  const { reader, file, design } = facts;
  const { title, revision = "" } = design.project;
  const head = {
    version,
    project: title,
    revision,
    language: reader.language,
    units: reader.units,
    input: {
      name: file?.name ?? "",
      sha256: await sumOf(new Uint8Array(utf8(printProject(file?.document)))),
    },
  };
  await put({ name: MANIFEST, pieces: [printJson(manifestOf(head, [...documents]))] });
  archive.end();
}
