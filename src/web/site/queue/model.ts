/** What waits on the phone until the server has it, and what the server says. */
import type { Entry } from "../../../site/journal/entry.ts";

/** An entry without what the device gives it: its name and its time. */
export type Telling = Entry extends infer One
  ? One extends Entry
    ? Omit<One, "id" | "told">
    : never
  : never;

export interface Waiting {
  /** In the order in which they were told. */
  readonly place: number;
  /** Id of the project's journal. */
  readonly project: string;
  readonly entry: Entry;
  /** Why the server will never take it as it is; it is kept and shown. */
  readonly refused?: string;
}

/** Of each entry sent, in its place. `other`: the server has another entry under its id. */
export type EntryAnswer =
  | { readonly kind: "fresh" | "kept"; readonly number: number }
  | { readonly kind: "other" }
  | { readonly kind: "refused"; readonly field: string };

/** What is said of entries that the server will not take, in the reader's language. */
export interface Whys {
  readonly other: string;
  /** @param field of the entry, as a JSON pointer */
  unusable(field: string): string;
}

/** Away: no network, no server, or a server that cannot now. */
export type Answer<Done> =
  | { readonly kind: "done"; readonly done: Done }
  | { readonly kind: "away" }
  | { readonly kind: "signed-out" }
  | { readonly kind: "refused"; readonly why: string };

/** The way to the server. */
export interface Line {
  send(project: string, entries: readonly Entry[]): Promise<Answer<readonly EntryAnswer[]>>;
  sendPhoto(sha256: string, picture: Blob): Promise<Answer<true>>;
}

/** What the phone keeps; each call is one transaction. */
export interface QueueStore {
  /** All that wait, refused ones among them, in the order told. */
  waiting(): Promise<readonly Waiting[]>;
  /** The server has it under this number: it goes from the queue into the journal at once. */
  arrived(waiting: Waiting, number: number): Promise<void>;
  refused(waiting: Waiting, why: string): Promise<void>;
  /** This device's name is another's too: what is told from now on bears a new one. */
  renameDevice(): Promise<void>;
  /** The picture, where it still has to be sent. */
  photoToSend(sha256: string): Promise<Blob | undefined>;
  photoArrived(sha256: string): Promise<void>;
}

/** SHA-256 of the pictures that an entry shows. */
export function photosOf({ body }: Entry): readonly string[] {
  if ("photo" in body) return [body.photo];
  return "photos" in body ? (body.photos ?? []) : [];
}
