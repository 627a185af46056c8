/** A whole issue as one ZIP archive: the documents that a folder gets, the project file that they were made from, and the list of it all. */
import { printProject } from "../../project/print.ts";
import { archiveTo } from "../archive.ts";
import { printJson } from "../json/print.ts";
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
  const open: Shelf["open"] = async (name) => {
    const at = documents.push({ name, bytes: 0, sha256: "" }) - 1;
    const file = archive.begin(name);
    const chunks: Uint8Array[] = [];
    return {
      async add(chunk) {
        chunks.push(new Uint8Array(chunk));
        file.add(chunk);
      },
      async close() {
        file.end();
        const bytes = joined(chunks);
        documents[at] = { name, bytes: bytes.length, sha256: await sumOf(bytes) };
      },
    };
  };
  const put: Shelf["put"] = async ({ name, content }) => {
    const document = await open(name);
    await document.add(typeof content === "string" ? utf8(content) : content);
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
  await put({ name: MANIFEST, content: printJson(manifestOf(head, [...documents])) });
  archive.end();
}

function joined(chunks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}
