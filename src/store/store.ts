/** Projects and their revisions in the database. It has no clock: times are given. */
import type { Database } from "better-sqlite3";
import { Kysely, type Selectable, SqliteDialect } from "kysely";
import { readDocument } from "../project/read.ts";
import type { Message } from "../text/message.ts";
import { type Archives, archivesIn } from "./archives.ts";
import { type Attachments, attachmentsIn } from "./attachments.ts";
import { copyInto } from "./database-file.ts";
import { type Issued, issuedIn } from "./issued.ts";
import { type Journal, journalIn } from "./journal.ts";
import { type People, peopleIn } from "./people.ts";
import {
  hashOf,
  type KeptProject,
  type NewRevision,
  type PutAnswer,
  type Revision,
  type RevisionInfo,
  tagOf,
} from "./revision.ts";
import { type Sessions, sessionsIn } from "./sessions.ts";
import type { RevisionTable, Tables } from "./tables.ts";
import { thinOut } from "./thin-out.ts";
import { writingIn } from "./writing.ts";

export interface Store {
  /** Every project, the one written last in front. */
  list(): Promise<readonly KeptProject[]>;
  project(id: string): Promise<KeptProject | undefined>;
  /** The revisions that can be read, the latest in front. */
  revisions(id: string): Promise<readonly RevisionInfo[]>;
  /** Undefined where there is none of this number, or its document was thinned out. */
  revision(id: string, number: number): Promise<Revision | undefined>;
  /** Whether a document of this hash is or was one of the project's revisions. */
  knows(id: string, hash: string): Promise<boolean>;
  /** Writes a revision, unless another one came between; what is answered as kept is on the disk. */
  put(id: string, revision: NewRevision): Promise<PutAnswer>;
  /** Takes a project away with all its revisions, where `name` is its own. What was told of the site and issued stays. */
  remove(id: string, name: string): Promise<"removed" | "missing" | "other-name">;
  readonly attachments: Attachments;
  readonly journal: Journal;
  readonly issued: Issued;
  readonly people: People;
  readonly sessions: Sessions;
  readonly archives: Archives;
  /** Writes all of it into a new file, while others go on writing. */
  backUp(file: string): void;
  close(): void;
}

const INFO = ["number", "parent", "hash", "says", "time", "who"] as const;

export function createStore(database: Database): Store {
  const tables = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });

  const writing = writingIn(database, tables);
  const sessions = sessionsIn(tables);

  return {
    async list() {
      const rows = await keptProjects(tables).execute();
      return rows.map(projectOf).sort((a, b) => (a.latest.time < b.latest.time ? 1 : -1));
    },

    async project(id) {
      const row = await keptProjects(tables).where("projects.id", "=", id).executeTakeFirst();
      return row && projectOf(row);
    },

    async revisions(id) {
      const rows = await tables
        .selectFrom("revisions")
        .select(INFO)
        .where("project", "=", id)
        .where("document", "is not", null)
        .orderBy("number", "desc")
        .execute();
      return rows.map(infoOf);
    },

    async revision(id, number) {
      const row = await tables
        .selectFrom("revisions")
        .selectAll()
        .where("project", "=", id)
        .where("number", "=", number)
        .executeTakeFirst();
      if (!row || row.document === null) return undefined;
      const document: unknown = JSON.parse(row.document);
      const read = readDocument(document, "");
      return { ...infoOf(row), document: read.ok ? read.document : document };
    },

    async knows(id, hash) {
      const row = await tables
        .selectFrom("revisions")
        .select("number")
        .where("project", "=", id)
        .where("hash", "=", hash)
        .executeTakeFirst();
      return row !== undefined;
    },

    put: (id, { name, title, document, says, time, who = "", onto }) =>
      writing(async (within) => {
        const held = await latestOf(within, id);
        const text = JSON.stringify(document);
        const hash = hashOf(text);
        if (held?.hash === hash) return { kind: "kept", revision: held, fresh: false };
        if (held?.tag !== onto) return { kind: "conflict", latest: held };
        const parent = held?.number ?? null;
        const row = { number: (parent ?? 0) + 1, parent, hash, says: JSON.stringify(says), time, who };
        await within
          .insertInto("projects")
          .values({ id, name, title })
          .onConflict((same) => same.column("id").doUpdateSet({ name, title }))
          .execute();
        await within
          .insertInto("revisions")
          .values({ project: id, ...row, document: text })
          .execute();
        await thinOut(within, { project: id, latest: row.number });
        return { kind: "kept", revision: infoOf(row), fresh: true };
      }),

    remove: (id, name) =>
      writing(async (within) => {
        const row = await within
          .selectFrom("projects")
          .select("name")
          .where("id", "=", id)
          .executeTakeFirst();
        if (!row) return "missing";
        if (row.name !== name) return "other-name";
        await within.deleteFrom("projects").where("id", "=", id).execute();
        return "removed";
      }),

    attachments: attachmentsIn(tables, writing),
    journal: journalIn(tables, writing),
    issued: issuedIn(tables, writing),
    people: peopleIn(tables, writing, sessions),
    sessions,
    archives: archivesIn(writing),

    backUp: (file) => copyInto(database, file),

    close: () => {
      database.close();
    },
  };
}

type InfoRow = Pick<Selectable<RevisionTable>, (typeof INFO)[number]>;

function infoOf({ number, parent, hash, says, time, who }: InfoRow): RevisionInfo {
  return { number, parent, hash, tag: tagOf({ number, hash }), says: JSON.parse(says) as Message, time, who };
}

function projectOf(row: InfoRow & { id: string; name: string; title: string }): KeptProject {
  const { id, name, title } = row;
  return { id, name, title, latest: infoOf(row) };
}

/** Each project beside its latest revision. */
function keptProjects(tables: Kysely<Tables>) {
  return tables
    .selectFrom("projects")
    .innerJoin("revisions", "revisions.project", "projects.id")
    .select(["projects.id", "projects.name", "projects.title", ...INFO])
    .where("revisions.number", "=", ({ selectFrom }) =>
      selectFrom("revisions as all")
        .select(({ fn }) => fn.max("all.number").as("latest"))
        .whereRef("all.project", "=", "projects.id"),
    );
}

async function latestOf(tables: Kysely<Tables>, project: string): Promise<RevisionInfo | undefined> {
  const row = await tables
    .selectFrom("revisions")
    .select(INFO)
    .where("project", "=", project)
    .orderBy("number", "desc")
    .limit(1)
    .executeTakeFirst();
  return row && infoOf(row);
}
