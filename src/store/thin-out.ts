/** What goes of old revisions, so that years of edits do not fill the disk. */
import { type Kysely, sql } from "kysely";
import type { Tables } from "./tables.ts";

/** As many of the latest revisions stay whole. */
export const WHOLE = 200;

/**
 * Of older ones the first stays, and the last of each day (UTC). The others lose their document; what they were called,
 * when, and their hash stay, so that a file of that state is still known.
 */
export async function thinOut(
  tables: Kysely<Tables>,
  { project, latest }: { project: string; latest: number },
): Promise<void> {
  const day = sql`substr(time, 1, 10)`;
  await tables
    .updateTable("revisions")
    .set({ document: null })
    .where("project", "=", project)
    .where("number", ">", 1)
    .where("number", "<=", latest - WHOLE)
    .where("document", "is not", null)
    .where("number", "not in", ({ selectFrom }) =>
      selectFrom("revisions")
        .select(({ fn }) => fn.max("number").as("last"))
        .where("project", "=", project)
        .groupBy(day),
    )
    .execute();
}
