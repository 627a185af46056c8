/** Puts a project's archive into the database: what is there already is recognised, and what would contradict it is refused. */
import type { Kysely } from "kysely";
import { type Message, message } from "../text/message.ts";
import type { Archive } from "./archive-file.ts";
import { putContent } from "./attachments.ts";
import type { NewEntry } from "./journal.ts";
import type { Tables } from "./tables.ts";
import type { Writing } from "./writing.ts";

/** What an archive added to the database. */
export interface TakenIn {
  readonly id: string;
  readonly title: string;
  readonly revisions: number;
  readonly entries: number;
  readonly pictures: number;
  readonly issued: number;
}

export type IntakeAnswer =
  | { readonly ok: true; readonly taken: TakenIn }
  /** Nothing was written. */
  | { readonly ok: false; readonly says: Message };

/** Thrown to take a begun write back; `part` contradicts what is there. */
class Contradiction extends Error {
  readonly part: string;
  constructor(part: string) {
    super(part);
    this.part = part;
  }
}

export async function takeIn(
  archive: Archive,
  { writing, isEntry }: { writing: Writing; isEntry: (entry: NewEntry) => boolean },
): Promise<IntakeAnswer> {
  const bad = archive.journal.find(({ entry }) => !isEntry(JSON.parse(entry) as NewEntry));
  if (bad) {
    return {
      ok: false,
      says: message("store.archive-part", { part: `journal/${bad.device}-${bad.count}` }),
    };
  }
  try {
    const taken = await writing(async (within): Promise<TakenIn> => {
      for (const content of archive.contents) await putContent(within, content);
      return {
        id: archive.id,
        title: archive.title,
        revisions: await addRevisions(within, archive),
        entries: await addEntries(within, archive),
        pictures: await addPictures(within, archive),
        issued: await addIssued(within, archive),
      };
    });
    return { ok: true, taken };
  } catch (error) {
    if (!(error instanceof Contradiction)) throw error;
    return { ok: false, says: message("store.archive-other", { title: archive.title, part: error.part }) };
  }
}

/** One history goes on from the other, or they are the same; of two that parted neither may hide the other. */
async function addRevisions(
  within: Kysely<Tables>,
  { id, name, title, revisions }: Archive,
): Promise<number> {
  const held = await within
    .selectFrom("revisions")
    .select(["number", "hash"])
    .where("project", "=", id)
    .orderBy("number")
    .execute();
  for (const { number, hash } of held) {
    const same = revisions[number - 1];
    if (same && same.hash !== hash) throw new Contradiction(`revisions/${number}`);
  }
  const fresh = revisions.slice(held.length);
  if (fresh.length === 0) return 0;
  await within
    .insertInto("projects")
    .values({ id, name, title })
    .onConflict((same) => same.column("id").doUpdateSet({ name, title }))
    .execute();
  for (const revision of fresh) {
    await within
      .insertInto("revisions")
      .values({ project: id, ...revision })
      .execute();
  }
  return fresh.length;
}

/** Entries know their own ids: those that are there are passed over, the others come after what is there. */
async function addEntries(within: Kysely<Tables>, { id: project, journal }: Archive): Promise<number> {
  const held = await within
    .selectFrom("journal")
    .select(["device", "count", "entry"])
    .where("project", "=", project)
    .execute();
  const known = new Map(held.map(({ device, count, entry }) => [`${device}-${count}`, entry]));
  let latest = held.length;
  let added = 0;
  for (const entry of journal) {
    const id = `${entry.device}-${entry.count}`;
    const same = known.get(id);
    if (same === entry.entry) continue;
    if (same !== undefined) throw new Contradiction(`journal/${id}`);
    known.set(id, entry.entry);
    latest += 1;
    added += 1;
    await within
      .insertInto("journal")
      .values({ ...entry, project, number: latest })
      .execute();
  }
  return added;
}

async function addPictures(within: Kysely<Tables>, { pictures }: Archive): Promise<number> {
  let added = 0;
  for (const picture of pictures) {
    const { numInsertedOrUpdatedRows } = await within
      .insertInto("attachments")
      .values(picture)
      .onConflict((same) => same.column("sha256").doNothing())
      .executeTakeFirstOrThrow();
    added += Number(numInsertedOrUpdatedRows);
  }
  return added;
}

async function addIssued(within: Kysely<Tables>, { id: project, issued, files }: Archive): Promise<number> {
  const held = await within
    .selectFrom("issued")
    .select(["number", "revision", "hash"])
    .where("project", "=", project)
    .orderBy("number")
    .execute();
  for (const { number, revision, hash } of held) {
    const same = issued[number - 1];
    if (same && (same.revision !== revision || same.hash !== hash)) {
      throw new Contradiction(`issued/${number}`);
    }
  }
  const fresh = issued.slice(held.length);
  for (const set of fresh) {
    await within
      .insertInto("issued")
      .values({ project, ...set })
      .execute();
    for (const file of files.filter(({ number }) => number === set.number)) {
      await within
        .insertInto("issued_files")
        .values({ project, ...file })
        .execute();
    }
  }
  return fresh.length;
}
