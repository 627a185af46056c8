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
];

/** The version that this program works with. */
export const DATABASE_VERSION = MIGRATIONS.length;

/** Tells a database of ours from another program's (SQLite's `application_id`). */
const APPLICATION_ID = 0x6f6c6561;

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
