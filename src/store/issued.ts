/** Sets of drawings that went out, frozen with their files. */
import type { Kysely } from "kysely";
import { putContent } from "./attachments.ts";
import { hashOf } from "./revision.ts";
import type { Tables } from "./tables.ts";
import type { Writing } from "./writing.ts";

export interface IssuedFile {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

export interface IssuedSet {
  /** 1, 2, 3 … in each project. */
  readonly number: number;
  /** As printed: A, B … */
  readonly revision: string;
  readonly note: string;
  readonly who: string;
  /** ISO 8601, UTC. */
  readonly time: string;
  /** SHA-256 of the document that the set was made from. */
  readonly hash: string;
  readonly files: readonly IssuedFile[];
}

export interface NewIssuedSet extends Pick<IssuedSet, "revision" | "note" | "who" | "time" | "hash"> {
  readonly files: readonly { readonly name: string; readonly content: Uint8Array }[];
}

export interface Issued {
  /** The set's number; the number of an earlier one where that has this revision and the same files. */
  freeze(project: string, set: NewIssuedSet): Promise<number>;
  /** The latest in front. */
  list(project: string): Promise<readonly IssuedSet[]>;
  file(project: string, number: number, name: string): Promise<Uint8Array | undefined>;
}

export function issuedIn(tables: Kysely<Tables>, writing: Writing): Issued {
  return {
    freeze: (project, { files, ...set }) =>
      writing(async (within) => {
        const frozen = files.map(({ name, content }) => ({ name, content, sha256: hashOf(content) }));
        const held = await listed(within, project);
        const same = held.find(
          (one) => one.revision === set.revision && one.hash === set.hash && sameFiles(one.files, frozen),
        );
        if (same) return same.number;
        const number = (held[0]?.number ?? 0) + 1;
        await within
          .insertInto("issued")
          .values({ project, number, ...set })
          .execute();
        for (const { name, content, sha256 } of frozen) {
          await putContent(within, { sha256, content });
          await within
            .insertInto("issued_files")
            .values({ project, number, name, bytes: content.byteLength, sha256 })
            .execute();
        }
        return number;
      }),

    list: (project) => listed(tables, project),

    file: async (project, number, name) => {
      const row = await tables
        .selectFrom("issued_files")
        .innerJoin("contents", "contents.sha256", "issued_files.sha256")
        .select("content")
        .where("project", "=", project)
        .where("number", "=", number)
        .where("name", "=", name)
        .executeTakeFirst();
      return row?.content;
    },
  };
}

async function listed(tables: Kysely<Tables>, project: string): Promise<IssuedSet[]> {
  const sets = await tables
    .selectFrom("issued")
    .selectAll()
    .where("project", "=", project)
    .orderBy("number", "desc")
    .execute();
  const files = await tables
    .selectFrom("issued_files")
    .selectAll()
    .where("project", "=", project)
    .orderBy("name")
    .execute();
  return sets.map(({ project: _, ...set }) => ({
    ...set,
    files: files
      .filter(({ number }) => number === set.number)
      .map(({ name, bytes, sha256 }) => ({ name, bytes, sha256 })),
  }));
}

function sameFiles(
  held: readonly IssuedFile[],
  given: readonly Pick<IssuedFile, "name" | "sha256">[],
): boolean {
  return (
    held.length === given.length &&
    given.every(({ name, sha256 }) => held.some((one) => one.name === name && one.sha256 === sha256))
  );
}
