/** What a project's archive holds, and reading one that came from elsewhere: nothing in it is believed. */
import { strFromU8, unzipSync } from "fflate";
import * as z from "zod";
import { parseJson } from "../project/json.ts";
import { type Message, message } from "../text/message.ts";
import { pictureType } from "./picture-type.ts";
import { hashOf } from "./revision.ts";

/** The entry of the archive that says what the others are. */
export const DESCRIPTION = "project.json";

/** Bytes of everything unpacked: some hundred photos of every face. */
const LARGEST_ARCHIVE = 2 * 1024 * 1024 * 1024;

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const number = z.int().positive();
const time = z.iso.datetime();
const who = z.string().max(100);

export const archiveShape = z.strictObject({
  version: z.literal(1),
  id: z.string().regex(/^[0-9a-f]{24}$/),
  name: z.string().max(255),
  title: z.string().max(1000),
  revisions: z.array(
    z.strictObject({
      number,
      parent: number.nullable(),
      hash: sha256,
      says: z.string(),
      time,
      who,
      document: z.string().nullable(),
    }),
  ),
  journal: z.array(
    z.strictObject({
      number,
      device: z.string().regex(/^[0-9a-f]{16,32}$/),
      count: number,
      entry: z.string(),
      who,
      time,
    }),
  ),
  issued: z.array(
    z.strictObject({
      number,
      revision: z.string().max(20),
      note: z.string().max(500),
      who,
      time,
      hash: sha256,
    }),
  ),
  files: z.array(
    z.strictObject({
      number,
      name: z.string().regex(/^[^/\\]{1,200}$/),
      bytes: z.int().nonnegative(),
      sha256,
    }),
  ),
  pictures: z.array(z.strictObject({ sha256, type: z.string(), bytes: z.int().positive(), time })),
});

export type Archive = z.output<typeof archiveShape> & {
  readonly contents: readonly { readonly sha256: string; readonly content: Uint8Array }[];
};

export type ReadArchive =
  | { readonly ok: true; readonly archive: Archive }
  | { readonly ok: false; readonly says: Message };

/** Reads an archive whole and checks every hash, number and reference in it. */
export function readArchive(bytes: Uint8Array): ReadArchive {
  const refused = (part: string): ReadArchive => ({
    ok: false,
    says: message("store.archive-part", { part }),
  });
  let unpacked: Record<string, Uint8Array>;
  try {
    let sum = 0;
    unpacked = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        sum += originalSize;
        return sum <= LARGEST_ARCHIVE && (name === DESCRIPTION || /^contents\/[0-9a-f]{64}$/.test(name));
      },
    });
    if (sum > LARGEST_ARCHIVE) {
      const most = String(LARGEST_ARCHIVE / 1024 ** 3);
      return { ok: false, says: message("store.archive-large", { most }) };
    }
  } catch {
    return { ok: false, says: message("store.no-archive") };
  }
  const described = unpacked[DESCRIPTION];
  if (!described) return refused(DESCRIPTION);
  const parsed = parseJson(strFromU8(described));
  const read = parsed.ok ? archiveShape.safeParse(parsed.value) : undefined;
  if (!read?.success) {
    const path = read?.error.issues[0]?.path.join("/");
    return refused(path ? `${DESCRIPTION}: ${path}` : DESCRIPTION);
  }
  const contents = Object.entries(unpacked)
    .filter(([name]) => name !== DESCRIPTION)
    .map(([name, content]) => ({ sha256: name.slice("contents/".length), content }));
  const archive: Archive = { ...read.data, contents };
  const wrong = firstWrong(archive);
  return wrong === undefined ? { ok: true, archive } : refused(wrong);
}

/** The name of the first part that is not what it claims to be. */
function firstWrong({ revisions, journal, issued, files, pictures, contents }: Archive): string | undefined {
  const held = new Map(contents.map(({ sha256: name, content }) => [name, content]));
  for (const [name, content] of held) if (hashOf(content) !== name) return `contents/${name}`;
  for (const { number: own, parent, hash, says, document } of revisions) {
    const part = `revisions/${own}`;
    if (document !== null && hashOf(document) !== hash) return part;
    if (parent !== (own === 1 ? null : own - 1) || !isJson(says) || !isJson(document ?? "0")) return part;
  }
  for (const list of [revisions, journal, issued]) {
    const at = list.findIndex((one, index) => one.number !== index + 1);
    if (at >= 0) return `number ${list[at]?.number}`;
  }
  for (const { device, count, entry } of journal) {
    const parsed = parseJson(entry);
    const id = parsed.ok ? (parsed.value as { id?: unknown } | null)?.id : undefined;
    if (id !== `${device}-${count}`) return `journal/${device}-${count}`;
  }
  for (const { number: own, name, bytes, sha256: hash } of files) {
    const content = held.get(hash);
    if (content?.byteLength !== bytes || own > issued.length) return `issued/${own}/${name}`;
  }
  for (const { sha256: hash, type, bytes } of pictures) {
    const content = held.get(hash);
    if (content?.byteLength !== bytes || pictureType(content) !== type) return `contents/${hash}`;
  }
  return undefined;
}

function isJson(text: string): boolean {
  return parseJson(text).ok;
}
