/** Writes that are whole or not at all. */
import type { Database } from "better-sqlite3";
import { type Kysely, sql } from "kysely";
import type { Tables } from "./tables.ts";

/** A write from its first look on: nobody else writes between the look and the write. */
export type Writing = <Answer>(work: (within: Kysely<Tables>) => Promise<Answer>) => Promise<Answer>;

export function writingIn(database: Database, tables: Kysely<Tables>): Writing {
  return (work) =>
    tables.connection().execute(async (within) => {
      await sql`BEGIN IMMEDIATE`.execute(within);
      try {
        const answer = await work(within);
        await sql`COMMIT`.execute(within);
        return answer;
      } catch (error) {
        // Some errors have taken the transaction back already.
        if (database.inTransaction) await sql`ROLLBACK`.execute(within);
        throw error;
      }
    });
}
