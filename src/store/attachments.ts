/** Pictures, kept by the SHA-256 of their bytes: the same one sent twice lies there once. */
import type { Kysely } from "kysely";
import { type PictureType, pictureType } from "./picture-type.ts";
import { hashOf } from "./revision.ts";
import type { Tables } from "./tables.ts";
import type { Writing } from "./writing.ts";

/** Bytes of one picture: a phone's are three to six million. */
export const LARGEST_PICTURE = 10 * 1024 * 1024;

export type AttachmentAnswer =
  /** `fresh` is false where it lay there already. */
  | { readonly kind: "kept"; readonly type: PictureType; readonly fresh: boolean }
  /** Larger than allowed; no picture that is taken; not the bytes that its name tells. */
  | { readonly kind: "too-large" | "other-type" | "other-hash" };

export interface Attachment {
  readonly type: string;
  readonly content: Uint8Array;
}

export interface Attachments {
  /** @param sha256 of the bytes, in hexadecimal, as the sender reckoned it */
  put(
    sha256: string,
    what: { readonly content: Uint8Array; readonly time: string },
  ): Promise<AttachmentAnswer>;
  get(sha256: string): Promise<Attachment | undefined>;
  /** Those of the names that lie there: a phone asks before it sends. */
  known(sha256: readonly string[]): Promise<readonly string[]>;
}

export function attachmentsIn(tables: Kysely<Tables>, writing: Writing): Attachments {
  return {
    put: async (sha256, { content, time }) => {
      if (content.byteLength > LARGEST_PICTURE) return { kind: "too-large" };
      const type = pictureType(content);
      if (type === undefined) return { kind: "other-type" };
      if (hashOf(content) !== sha256) return { kind: "other-hash" };
      return writing(async (within) => {
        await putContent(within, { sha256, content });
        const { numInsertedOrUpdatedRows } = await within
          .insertInto("attachments")
          .values({ sha256, type, bytes: content.byteLength, time })
          .onConflict((same) => same.column("sha256").doNothing())
          .executeTakeFirstOrThrow();
        return { kind: "kept", type, fresh: numInsertedOrUpdatedRows === 1n };
      });
    },

    get: (sha256) =>
      tables
        .selectFrom("attachments")
        .innerJoin("contents", "contents.sha256", "attachments.sha256")
        .select(["type", "content"])
        .where("attachments.sha256", "=", sha256)
        .executeTakeFirst(),

    known: async (names) => {
      if (names.length === 0) return [];
      const rows = await tables
        .selectFrom("attachments")
        .select("sha256")
        .where("sha256", "in", [...names])
        .orderBy("sha256")
        .execute();
      return rows.map(({ sha256 }) => sha256);
    },
  };
}

/** Keeps bytes where they do not lie there yet. The caller has made sure of their hash. */
export async function putContent(
  within: Kysely<Tables>,
  { sha256, content }: { readonly sha256: string; readonly content: Uint8Array },
): Promise<void> {
  await within
    .insertInto("contents")
    // The database's library takes a Buffer and no other bytes.
    .values({ sha256, content: Buffer.from(content) })
    .onConflict((same) => same.column("sha256").doNothing())
    .execute();
}
