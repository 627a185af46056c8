/**
 * What stands in a folder from the issue before, and what each document there was drawn from: beside it lies a sum over that, and
 * over the program that drew it. A document is taken over where both are the same and the file is still what the manifest says.
 */
import { copyFile, link, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import * as z from "zod";
import { MANIFEST, type ManifestDocument } from "../output/issue/manifest.ts";
import { printJson } from "../output/json/print.ts";
import { manifestShape } from "./shapes/small.ts";
import { sha256 } from "./sums.ts";

/** Hidden: it is no document of the issue. */
const RECORD = ".drawn-from.json";

const recordShape = z.object({ program: z.string(), sums: z.record(z.string(), z.string()) });

export interface Standing {
  /** Puts documents that stand from the same into the new folder; undefined where they have to be drawn. */
  take(names: readonly string[], sum: string): Promise<readonly ManifestDocument[] | undefined>;
  /** Writes what the documents of the new folder were drawn from. */
  keep(): Promise<void>;
}

/** @param program a sum over the program; what another drew is drawn again, and nothing is kept where it is not known */
export async function standingIn({
  target,
  beside,
  program,
}: {
  target: string;
  beside: string;
  program: string | undefined;
}): Promise<Standing> {
  const before = program === undefined ? undefined : await recordIn(target, program);
  const sums: Record<string, string> = {};
  return {
    async take(names, sum) {
      const [first = ""] = names;
      sums[first] = sum;
      if (before?.sums[first] !== sum) return undefined;
      const found = names.map((name) => before.documents.get(name));
      const documents = found.filter((one) => one !== undefined);
      if (documents.length < names.length) return undefined;
      for (const { name, sha256: own } of documents) {
        const bytes = await readFile(join(target, name)).catch(() => undefined);
        if (!bytes || sha256(bytes) !== own) return undefined;
      }
      for (const { name } of documents) await takeOver(join(target, name), join(beside, name));
      return documents;
    },
    async keep() {
      if (program !== undefined) await writeFile(join(beside, RECORD), printJson({ program, sums }));
    },
  };
}

/** The very file, where the system can give one two names. */
async function takeOver(from: string, to: string): Promise<void> {
  await link(from, to).catch(() => copyFile(from, to));
}

interface Before {
  readonly sums: Readonly<Record<string, string>>;
  readonly documents: ReadonlyMap<string, ManifestDocument>;
}

/** Undefined where there is none, it cannot be read, or another program drew it. */
async function recordIn(folder: string, program: string): Promise<Before | undefined> {
  try {
    const json = async (name: string): Promise<unknown> =>
      JSON.parse(await readFile(join(folder, name), "utf8"));
    const record = recordShape.safeParse(await json(RECORD));
    const manifest = manifestShape.safeParse(await json(MANIFEST));
    if (!record.success || !manifest.success || record.data.program !== program) return undefined;
    return {
      sums: record.data.sums,
      documents: new Map(manifest.data.documents.map((one) => [one.name, one])),
    };
  } catch {
    return undefined;
  }
}
