/**
 * Parts of documents that were read before and hold nothing to complain of. An edit shares with the document before it whatever it
 * leaves alone, and a part that is the same object needs no second reading. Whoever hands a memo in never changes a document in place.
 */

/** Where a part stands: a field of the file, or any one of its faces. */
export type PartPlace = string;

export const ANY_FACE: PartPlace = "faces/*";

export interface ReadMemo {
  /** Parts as they were parsed. */
  readonly parsed: Map<PartPlace, WeakMap<object, unknown>>;
  /** Parts all of whose keys the schema knows. */
  readonly known: Map<PartPlace, WeakSet<object>>;
}

export function createReadMemo(): ReadMemo {
  return { parsed: new Map(), known: new Map() };
}
