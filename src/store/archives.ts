/** A project as one file: revisions, journal, pictures and issued sets, in a ZIP archive that another machine takes in. */
import { strToU8, zipSync } from "fflate";
import type { Kysely } from "kysely";
import { type Archive, archiveShape, DESCRIPTION, readArchive } from "./archive-file.ts";
import { type IntakeAnswer, takeIn } from "./archive-intake.ts";
import type { NewEntry } from "./journal.ts";
import type { Tables } from "./tables.ts";
import type { Writing } from "./writing.ts";

export interface Archives {
  /** The archive's bytes; undefined where nothing is kept of such a project. */
  pack(project: string): Promise<Uint8Array | undefined>;
  /** @param isEntry whether something is an entry of the site journal: what an entry says is not known here */
  unpack(bytes: Uint8Array, isEntry: (entry: NewEntry) => boolean): Promise<IntakeAnswer>;
}

export function archivesIn(writing: Writing): Archives {
  return {
    // Within a write nobody adds between one table and the next.
    pack: (project) =>
      writing(async (within) => {
        const archive = await gathered(within, project);
        if (!archive) return undefined;
        const { contents, ...described } = archive;
        return zipSync({
          [DESCRIPTION]: strToU8(`${JSON.stringify(archiveShape.parse(described))}\n`),
          // Pictures do not become smaller: they are only stored.
          ...Object.fromEntries(
            contents.map(({ sha256, content }) => [`contents/${sha256}`, [content, { level: 0 }]]),
          ),
        });
      }),

    unpack: async (bytes, isEntry) => {
      const read = readArchive(bytes);
      if (!read.ok) return read;
      return takeIn(read.archive, { writing, isEntry });
    },
  };
}

/** A picture's name wherever it stands in a document or an entry. */
const NAMED = /"([0-9a-f]{64})"/g;

async function gathered(within: Kysely<Tables>, project: string): Promise<Archive | undefined> {
  const head = await within.selectFrom("projects").selectAll().where("id", "=", project).executeTakeFirst();
  const revisions = await within
    .selectFrom("revisions")
    .select(["number", "parent", "hash", "says", "time", "who", "document"])
    .where("project", "=", project)
    .orderBy("number")
    .execute();
  const journal = await within
    .selectFrom("journal")
    .select(["number", "device", "count", "entry", "who", "time"])
    .where("project", "=", project)
    .orderBy("number")
    .execute();
  const issued = await within
    .selectFrom("issued")
    .select(["number", "revision", "note", "who", "time", "hash"])
    .where("project", "=", project)
    .orderBy("number")
    .execute();
  if (!head && journal.length === 0 && issued.length === 0) return undefined;
  const files = await within
    .selectFrom("issued_files")
    .select(["number", "name", "bytes", "sha256"])
    .where("project", "=", project)
    .execute();
  const texts = [...revisions.map(({ document }) => document ?? ""), ...journal.map(({ entry }) => entry)];
  const named = new Set(texts.flatMap((text) => [...text.matchAll(NAMED)].map(([, name = ""]) => name)));
  const pictures = (await within.selectFrom("attachments").selectAll().orderBy("sha256").execute()).filter(
    ({ sha256 }) => named.has(sha256),
  );
  const wanted = new Set([...pictures, ...files].map(({ sha256 }) => sha256));
  const contents: { sha256: string; content: Uint8Array }[] = [];
  for (const sha256 of wanted) {
    const { content } = await within
      .selectFrom("contents")
      .select("content")
      .where("sha256", "=", sha256)
      .executeTakeFirstOrThrow();
    contents.push({ sha256, content });
  }
  const { name, title } = head ?? { name: "", title: "" };
  return { version: 1, id: project, name, title, revisions, journal, issued, files, pictures, contents };
}
