/**
 * Writes the documents of an issue whole or not at all: into a folder beside the target, which then takes its place. A
 * folder that an issue did not write, or that holds anything else, is never touched.
 */
import { createHash, randomUUID } from "node:crypto";
import { mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { message } from "../text/message.ts";
import { isRefusal, type Refusal } from "./answer.ts";
import { systemReason } from "./files.ts";
import type { Io } from "./io.ts";
import { printJson } from "./json/print.ts";
import type { IssueManifest } from "./shapes/small.ts";

export interface Document {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export const MANIFEST = "manifest.json";
const WRITTEN_BY = "outerleaf issue";

/** What a manifest says beside its list of documents. */
export type ManifestHead = Omit<IssueManifest, "schemaVersion" | "writtenBy" | "documents">;

export function sha256(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

/** @param folder as the user names it */
export async function writeFolder(
  { folder, documents, head }: { folder: string; documents: readonly Document[]; head: ManifestHead },
  io: Io,
): Promise<IssueManifest | Refusal> {
  const target = resolve(io.cwd, folder);
  const manifest: IssueManifest = {
    schemaVersion: 1,
    writtenBy: WRITTEN_BY,
    ...head,
    documents: documents.map(({ name, bytes }) => ({ name, bytes: bytes.length, sha256: sha256(bytes) })),
  };
  // A name of its own, so that two runs beside each other do not write into one.
  const beside = join(dirname(target), `.${basename(target)}-${randomUUID()}`);
  const asked = { stop: false };
  const release = io.onStop(() => {
    asked.stop = true;
  });
  try {
    const standing = await look(target, folder);
    if (isRefusal(standing)) return standing;
    await mkdir(beside, { recursive: true });
    const texts = [...documents, { name: MANIFEST, bytes: Buffer.from(printJson(manifest), "utf8") }];
    for (const { name, bytes } of texts) {
      if (asked.stop) return { refused: message("cli.refused.stopped", { folder }) };
      await writeFile(join(beside, name), bytes);
    }
    await takePlace({ beside, target, replaces: standing.there });
    return manifest;
  } catch (error) {
    return {
      refused: message("cli.refused.not-written", { file: folder, why: systemReason(error) }),
      hint: message("cli.hint.other-folder"),
    };
  } finally {
    release();
    await rm(beside, { recursive: true, force: true }).catch(() => undefined);
  }
}

/** Files that systems leave in folders. */
const OF_THE_SYSTEM = /^(?:\.|Thumbs\.db$|desktop\.ini$)/i;

/** Whether something stands at the target, and whether it may be replaced. */
async function look(target: string, folder: string): Promise<{ readonly there: boolean } | Refusal> {
  let names: string[];
  try {
    names = (await readdir(target)).filter((name) => !OF_THE_SYSTEM.test(name));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return { there: false };
    throw error;
  }
  if (names.length === 0) return { there: true };
  const own = await ownNames(join(target, MANIFEST));
  if (own === undefined) {
    return {
      refused: message("cli.refused.folder-foreign", { folder }),
      hint: message("cli.hint.other-folder"),
    };
  }
  const strange = names.filter((name) => !own.includes(name));
  if (strange.length === 0) return { there: true };
  return {
    refused: message("cli.refused.folder-strange", { folder, names: strange.slice(0, 6) }),
    hint: message("cli.hint.move-files"),
  };
}

/** The names in our manifest and its own; undefined where the file is none of ours. */
async function ownNames(path: string): Promise<string[] | undefined> {
  try {
    const found: unknown = JSON.parse(await readFile(path, "utf8"));
    const { writtenBy, documents } = found as Partial<IssueManifest>;
    if (writtenBy !== WRITTEN_BY || !Array.isArray(documents)) return undefined;
    return [MANIFEST, ...documents.map(({ name }) => name)];
  } catch {
    return undefined;
  }
}

async function takePlace({
  beside,
  target,
  replaces,
}: {
  beside: string;
  target: string;
  replaces: boolean;
}): Promise<void> {
  if (!replaces) {
    await rename(beside, target);
    return;
  }
  const before = `${beside}-before`;
  await rename(target, before);
  try {
    await rename(beside, target);
  } catch (error) {
    await rename(before, target);
    throw error;
  }
  await rm(before, { recursive: true, force: true });
}
