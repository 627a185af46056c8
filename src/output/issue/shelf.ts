/** Where the documents of an issue go as they are made: none waits for the others. A folder and an archive are shelves. */
import type { Piece } from "../pieces.ts";

export interface Document {
  readonly name: string;
  /** Gone through once, each written before the next is made. */
  readonly pieces: Iterable<Piece>;
}

export interface Shelf {
  put(document: Document): Promise<void>;
  /** A document that comes piece by piece; others may be put meanwhile. */
  open(name: string): Promise<OpenDocument>;
  /**
   * Whether these documents stand from an issue before, made from the very same: they are then put as they are, and are not to be made.
   * A shelf that has nothing from before is without it.
   * @param from everything that they are made from, as text
   */
  standing?(names: readonly string[], from: Iterable<string>): Promise<boolean>;
}

export interface OpenDocument {
  add(chunk: Uint8Array): Promise<void>;
  close(): Promise<void>;
}
