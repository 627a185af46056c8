/** The site journal of each project: entries are added, and nothing else. What they say is not looked at here. */
import type { Kysely, Selectable } from "kysely";
import type { JournalTable, Tables } from "./tables.ts";
import type { Writing } from "./writing.ts";

/** As many entries are given at once. */
export const LARGEST_PAGE = 1000;

export interface NewEntry {
  /** The device's own name and the number of what it told: `device-count`. */
  readonly id: string;
}

export interface KeptEntry<Entry extends NewEntry = NewEntry> {
  /** 1, 2, 3 … in each project: the order in which entries came. */
  readonly number: number;
  /** The name of who sent it; empty for whoever sat at this machine. */
  readonly who: string;
  /** When it came: ISO 8601, UTC. */
  readonly time: string;
  readonly entry: Entry;
}

export interface AppendAnswer {
  readonly id: string;
  readonly number: number;
  /** `fresh` is false where the same entry was there already. `other`: another entry has this id, and this one was not kept. */
  readonly kind: "fresh" | "kept" | "other";
}

export interface JournalPage {
  /** By number, the first in front. */
  readonly entries: readonly KeptEntry[];
  /** The number of the latest entry of all; 0 where there is none. */
  readonly latest: number;
}

/** What a journal came to, as whoever folded it wrote it down. */
export interface KeptFold {
  /** Of the latest entry that it was made of. */
  readonly number: number;
  readonly content: Uint8Array;
}

export interface Journal {
  /** Adds entries in their order, all at once; what is answered is on the disk. */
  append(
    project: string,
    entries: readonly NewEntry[],
    by: { readonly who: string; readonly time: string },
  ): Promise<readonly AppendAnswer[]>;
  /** Entries after a number, at most `limit`. */
  after(project: string, range: { readonly after: number; readonly limit: number }): Promise<JournalPage>;
  /** The last entries before a number, at most `limit`; before none, the latest of all. */
  before(project: string, range: { readonly before?: number; readonly limit: number }): Promise<JournalPage>;
  /** What was put by last; undefined where nothing was, by another version, or of entries that are not this journal's. */
  fold(project: string, version: number): Promise<KeptFold | undefined>;
  /** Puts by what the entries up to a number came to, in place of what was; nothing where there is no such entry. */
  keepFold(project: string, version: number, fold: KeptFold): Promise<void>;
}

export function journalIn(tables: Kysely<Tables>, writing: Writing): Journal {
  const latestOf = async (within: Kysely<Tables>, project: string): Promise<number> => {
    const row = await within
      .selectFrom("journal")
      .select(({ fn }) => fn.max("number").as("latest"))
      .where("project", "=", project)
      .executeTakeFirst();
    return row?.latest ?? 0;
  };
  const rowsOf = (project: string) => tables.selectFrom("journal").selectAll().where("project", "=", project);

  return {
    append: (project, entries, { who, time }) =>
      writing(async (within) => {
        const answers: AppendAnswer[] = [];
        let latest = await latestOf(within, project);
        for (const entry of entries) {
          const { device, count } = partsOf(entry);
          const text = JSON.stringify(entry);
          const held = await within
            .selectFrom("journal")
            .select(["number", "entry"])
            .where("project", "=", project)
            .where("device", "=", device)
            .where("count", "=", count)
            .executeTakeFirst();
          if (held) {
            const kind = held.entry === text ? "kept" : "other";
            answers.push({ id: entry.id, number: held.number, kind });
            continue;
          }
          latest += 1;
          const row = { project, number: latest, device, count, entry: text, who, time };
          await within.insertInto("journal").values(row).execute();
          answers.push({ id: entry.id, number: latest, kind: "fresh" });
        }
        return answers;
      }),

    after: async (project, { after, limit }) => {
      const rows = await rowsOf(project)
        .where("number", ">", after)
        .orderBy("number")
        .limit(Math.min(limit, LARGEST_PAGE))
        .execute();
      return { entries: rows.map(keptOf), latest: await latestOf(tables, project) };
    },

    before: async (project, { before, limit }) => {
      const latest = await latestOf(tables, project);
      const rows = await rowsOf(project)
        .where("number", "<", before ?? latest + 1)
        .orderBy("number", "desc")
        .limit(Math.min(limit, LARGEST_PAGE))
        .execute();
      return { entries: rows.reverse().map(keptOf), latest };
    },

    fold: (project, version) =>
      tables
        .selectFrom("folds")
        .innerJoin("journal", (join) =>
          join
            .onRef("journal.project", "=", "folds.project")
            .onRef("journal.number", "=", "folds.number")
            .onRef("journal.device", "=", "folds.device")
            .onRef("journal.count", "=", "folds.count"),
        )
        .select(["folds.number", "folds.content"])
        .where("folds.project", "=", project)
        .where("folds.version", "=", version)
        .executeTakeFirst(),

    keepFold: (project, version, { number, content }) =>
      writing(async (within) => {
        const last = await within
          .selectFrom("journal")
          .select(["device", "count"])
          .where("project", "=", project)
          .where("number", "=", number)
          .executeTakeFirst();
        if (!last) return;
        const fold = { version, number, ...last, content };
        await within
          .insertInto("folds")
          .values({ project, ...fold })
          .onConflict((same) => same.column("project").doUpdateSet(fold))
          .execute();
      }),
  };
}

function partsOf({ id }: NewEntry): { readonly device: string; readonly count: number } {
  const hyphen = id.lastIndexOf("-");
  return { device: id.slice(0, hyphen), count: Number(id.slice(hyphen + 1)) };
}

function keptOf({ number, who, time, entry }: Selectable<JournalTable>): KeptEntry {
  return { number, who, time, entry: JSON.parse(entry) as NewEntry };
}
