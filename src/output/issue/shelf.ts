/** Where the documents of an issue go as they are made: none waits for the others. A folder and an archive are shelves. */

export interface Document {
  readonly name: string;
  /** Text is written as UTF-8. */
  readonly content: Uint8Array | string;
}

export interface Shelf {
  put(document: Document): Promise<void>;
  /** A document that comes piece by piece; others may be put meanwhile. */
  open(name: string): Promise<OpenDocument>;
}

export interface OpenDocument {
  add(chunk: Uint8Array): Promise<void>;
  close(): Promise<void>;
}
