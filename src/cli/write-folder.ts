/**
 * Writes the documents of an issue whole or not at all: into a folder beside the target, which then takes its place. A
 * folder that an issue did not write, or that holds anything else, is never touched.
 */
import { createHash, randomUUID } from "node:crypto";
import {
  type FileHandle,
  mkdir,
  open as openFile,
  readdir,
  readFile,
  rename,
  rm,
  writeFile,
} from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import {
  MANIFEST,
  type Manifest,
  type ManifestDocument,
  type ManifestHead,
  manifestOf,
  WRITTEN_BY,
} from "../output/issue/manifest.ts";
import type { Document, OpenDocument, Shelf } from "../output/issue/shelf.ts";
import { printJson } from "../output/json/print.ts";
import { gathered } from "../output/pieces.ts";
import { message } from "../text/message.ts";
import { isRefusal, type Refusal } from "./answer.ts";
import { systemReason } from "./files.ts";
import type { Io } from "./io.ts";
import { type Standing, standingIn } from "./standing.ts";

/** The user asked to stop: nothing that was written stays. */
class Stopped extends Error {}

/**
 * @param folder as the user names it
 * @param write makes the documents; they are listed in the order in which they were begun
 */
export async function writeFolder(
  { folder, head, write }: { folder: string; head: ManifestHead; write: (shelf: Shelf) => Promise<void> },
  io: Io,
): Promise<Manifest | Refusal> {
  const target = resolve(io.cwd, folder);
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
    const program = await io.program();
    const before = await standingIn({ target, beside, program });
    const { shelf, listed, closeAll } = shelfIn(beside, { asked, before });
    await write(shelf).finally(closeAll);
    await before.keep();
    const manifest = manifestOf(head, listed());
    await writeFile(join(beside, MANIFEST), printJson(manifest));
    await takePlace({ beside, target, replaces: standing.there });
    return manifest;
  } catch (error) {
    if (error instanceof Stopped) return { refused: message("cli.refused.stopped", { folder }) };
    // What is not the system's is a mistake of ours, and told as one.
    if (!(error as NodeJS.ErrnoException).code) throw error;
    return {
      refused: message("cli.refused.not-written", { file: folder, why: systemReason(error) }),
      hint: message("cli.hint.other-folder"),
    };
  } finally {
    release();
    await rm(beside, { recursive: true, force: true }).catch(() => undefined);
  }
}

function shelfIn(
  folder: string,
  { asked, before }: { readonly asked: { readonly stop: boolean }; readonly before: Standing },
): { readonly shelf: Shelf; listed(): ManifestDocument[]; closeAll(): Promise<void> } {
  const documents: { name: string; bytes: number; sha256: string }[] = [];
  const files = new Set<FileHandle>();
  const open = async (name: string): Promise<OpenDocument> => {
    const own = { name, bytes: 0, sha256: "" };
    documents.push(own);
    const sum = createHash("sha256");
    const file = await openFile(join(folder, name), "w");
    files.add(file);
    return {
      async add(chunk) {
        if (asked.stop) throw new Stopped();
        own.bytes += chunk.length;
        sum.update(chunk);
        await file.writeFile(chunk);
      },
      async close() {
        own.sha256 = sum.digest("hex");
        files.delete(file);
        await file.close();
      },
    };
  };
  const put = async ({ name, pieces }: Document): Promise<void> => {
    const document = await open(name);
    for (const piece of gathered(pieces)) {
      await document.add(typeof piece === "string" ? Buffer.from(piece, "utf8") : piece);
    }
    await document.close();
  };
  const standing = async (names: readonly string[], from: Iterable<string>): Promise<boolean> => {
    const sum = createHash("sha256");
    for (const part of from) sum.update(part);
    if (asked.stop) throw new Stopped();
    const taken = await before.take(names, sum.digest("hex"));
    documents.push(...(taken ?? []).map((one) => ({ ...one })));
    return taken !== undefined;
  };
  const closeAll = async (): Promise<void> => {
    for (const file of files) await file.close();
  };
  return { shelf: { put, open, standing }, listed: () => documents, closeAll };
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
    const { writtenBy, documents } = found as Partial<Manifest>;
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
