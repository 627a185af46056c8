/** From each version of the database to the next. A line is never changed once it was in a release. */
import type { Database } from "better-sqlite3";

/** Migration n, counted from 1, leads to version n. */
const MIGRATIONS: readonly string[] = [
  `CREATE TABLE projects (
     id TEXT PRIMARY KEY,
     name TEXT NOT NULL,
     title TEXT NOT NULL
   ) STRICT;
   CREATE TABLE revisions (
     project TEXT NOT NULL REFERENCES projects (id) ON DELETE CASCADE,
     number INTEGER NOT NULL,
     parent INTEGER,
     hash TEXT NOT NULL,
     says TEXT NOT NULL,
     time TEXT NOT NULL,
     document TEXT,
     PRIMARY KEY (project, number)
   ) STRICT;
   CREATE INDEX revisions_by_hash ON revisions (project, hash);`,
  `ALTER TABLE revisions ADD COLUMN who TEXT NOT NULL DEFAULT '';
   CREATE TABLE contents (
     sha256 TEXT PRIMARY KEY,
     content BLOB NOT NULL
   ) STRICT;
   CREATE TABLE attachments (
     sha256 TEXT PRIMARY KEY REFERENCES contents (sha256),
     type TEXT NOT NULL,
     bytes INTEGER NOT NULL,
     time TEXT NOT NULL
   ) STRICT;
   CREATE TABLE journal (
     project TEXT NOT NULL,
     number INTEGER NOT NULL,
     device TEXT NOT NULL,
     count INTEGER NOT NULL,
     entry TEXT NOT NULL,
     who TEXT NOT NULL,
     time TEXT NOT NULL,
     PRIMARY KEY (project, number),
     UNIQUE (project, device, count)
   ) STRICT;
   CREATE TABLE issued (
     project TEXT NOT NULL,
     number INTEGER NOT NULL,
     revision TEXT NOT NULL,
     note TEXT NOT NULL,
     who TEXT NOT NULL,
     time TEXT NOT NULL,
     hash TEXT NOT NULL,
     PRIMARY KEY (project, number)
   ) STRICT;
   CREATE TABLE issued_files (
     project TEXT NOT NULL,
     number INTEGER NOT NULL,
     name TEXT NOT NULL,
     bytes INTEGER NOT NULL,
     sha256 TEXT NOT NULL REFERENCES contents (sha256),
     PRIMARY KEY (project, number, name),
     FOREIGN KEY (project, number) REFERENCES issued (project, number)
   ) STRICT;
   CREATE TABLE people (
     id TEXT PRIMARY KEY,
     name TEXT NOT NULL,
     role TEXT NOT NULL CHECK (role IN ('office', 'site', 'reader')),
     made TEXT NOT NULL,
     revoked TEXT
   ) STRICT;
   CREATE TABLE invitations (
     hash TEXT PRIMARY KEY,
     person TEXT NOT NULL REFERENCES people (id),
     until TEXT NOT NULL,
     used TEXT
   ) STRICT;
   CREATE TABLE sessions (
     hash TEXT PRIMARY KEY,
     person TEXT NOT NULL REFERENCES people (id),
     until TEXT NOT NULL,
     ended TEXT
   ) STRICT;
   CREATE INDEX sessions_of_person ON sessions (person);
   CREATE TABLE audit (
     number INTEGER PRIMARY KEY,
     time TEXT NOT NULL,
     who TEXT NOT NULL,
     what TEXT NOT NULL,
     about TEXT NOT NULL
   ) STRICT;
   ${["journal", "issued", "issued_files", "contents", "audit"].map(onlyAddedTo).join("\n")}`,
  `CREATE TABLE folds (
     project TEXT PRIMARY KEY,
     version INTEGER NOT NULL,
     number INTEGER NOT NULL,
     device TEXT NOT NULL,
     count INTEGER NOT NULL,
     content BLOB NOT NULL
   ) STRICT;`,
  // Of sessions that were there, when they began follows from the ninety days for which they were given.
  `ALTER TABLE sessions ADD COLUMN id TEXT NOT NULL DEFAULT '';
   ALTER TABLE sessions ADD COLUMN device TEXT NOT NULL DEFAULT '';
   ALTER TABLE sessions ADD COLUMN begun TEXT NOT NULL DEFAULT '';
   ALTER TABLE sessions ADD COLUMN seen TEXT;
   UPDATE sessions SET id = lower(hex(randomblob(8))), begun = strftime('%Y-%m-%dT%H:%M:%fZ', until, '-90 days');
   CREATE UNIQUE INDEX sessions_by_id ON sessions (id);`,
];

/** What stands in such a table can neither be changed nor deleted, whatever a mistake of ours may ask for. */
function onlyAddedTo(table: string): string {
  return ["UPDATE", "DELETE"]
    .map(
      (change) =>
        `CREATE TRIGGER ${table}_no_${change.toLowerCase()} BEFORE ${change} ON ${table}
         BEGIN SELECT RAISE(ABORT, '${table} is only added to'); END;`,
    )
    .join("\n");
}

/** The version that this program works with. */
export const DATABASE_VERSION = MIGRATIONS.length;

/** Tells a database of ours from another program's (SQLite's `application_id`). */
export const APPLICATION_ID = 0x6f6c6561;

export type Brought = "ready" | "foreign" | { readonly newer: number };

/** Brings a database up to the present version, whole or not at all; one that is newer or not ours is left alone. */
export function bringUp(database: Database): Brought {
  const numberOf = (pragma: string): number => database.pragma(pragma, { simple: true }) as number;
  const step = database.transaction((): Brought => {
    const version = numberOf("user_version");
    if (numberOf("application_id") !== APPLICATION_ID) {
      const held = database.prepare("SELECT count(*) FROM sqlite_schema").pluck().get();
      if (held !== 0 || version !== 0) return "foreign";
      database.pragma(`application_id = ${APPLICATION_ID}`);
    }
    if (version > DATABASE_VERSION) return { newer: version };
    for (const migration of MIGRATIONS.slice(version)) database.exec(migration);
    database.pragma(`user_version = ${DATABASE_VERSION}`);
    return "ready";
  });
  return step.immediate();
}
