/** The tables, as the newest migration leaves them. */
import type { Generated } from "kysely";
import type { Role } from "./role.ts";

export interface ProjectTable {
  id: string;
  /** The file's name. */
  name: string;
  /** Of the latest revision. */
  title: string;
}

export interface RevisionTable {
  project: string;
  /** 1 is the first; no number comes twice in a project. */
  number: number;
  /** The number of the revision that it was made from. */
  parent: number | null;
  /** SHA-256 of the document's text, in hexadecimal. */
  hash: string;
  /** The message of the edit that led here, as JSON. */
  says: string;
  /** ISO 8601, UTC. */
  time: string;
  /** JSON; null once the revision was thinned out. */
  document: string | null;
  /** The name of who edited; empty for whoever sat at this machine. */
  who: Generated<string>;
}

/** Bytes by their SHA-256, whatever they are for. */
interface ContentTable {
  sha256: string;
  content: Uint8Array;
}

/** Contents that are pictures. */
interface AttachmentTable {
  sha256: string;
  /** Media type, by the content's first bytes. */
  type: string;
  bytes: number;
  time: string;
}

/** Only added to. */
export interface JournalTable {
  project: string;
  /** 1, 2, 3 … in each project: the order in which entries came. */
  number: number;
  device: string;
  /** The device's own number of the entry. */
  count: number;
  /** JSON, as the device made it. */
  entry: string;
  who: string;
  time: string;
}

/** What each journal came to at one of its entries: put by to be read sooner, and made anew from the journal where it is lost. */
interface FoldTable {
  project: string;
  /** Of the fold that made it. */
  version: number;
  /** Of the latest entry that it was made of; that entry's device and count tell whether it is of this journal. */
  number: number;
  device: string;
  count: number;
  content: Uint8Array;
}

/** Only added to. */
export interface IssuedTable {
  project: string;
  number: number;
  /** As printed: A, B … */
  revision: string;
  note: string;
  who: string;
  time: string;
  /** Of the document that the set was made from. */
  hash: string;
}

interface IssuedFileTable {
  project: string;
  number: number;
  name: string;
  bytes: number;
  sha256: string;
}

export interface PersonTable {
  id: string;
  name: string;
  role: Role;
  made: string;
  revoked: string | null;
}

/** Of the secret only the hash. */
interface InvitationTable {
  hash: string;
  person: string;
  until: string;
  used: string | null;
}

/** Of the secret only the hash. */
interface SessionTable {
  hash: string;
  person: string;
  until: string;
  ended: string | null;
  /** Names it in lists; nothing of the secret. */
  id: string;
  device: string;
  begun: string;
  seen: string | null;
}

/** Only added to. */
interface AuditTable {
  number: Generated<number>;
  time: string;
  who: string;
  what: string;
  /** JSON. */
  about: string;
}

export interface Tables {
  projects: ProjectTable;
  revisions: RevisionTable;
  contents: ContentTable;
  attachments: AttachmentTable;
  journal: JournalTable;
  folds: FoldTable;
  issued: IssuedTable;
  issued_files: IssuedFileTable;
  people: PersonTable;
  invitations: InvitationTable;
  sessions: SessionTable;
  audit: AuditTable;
}
