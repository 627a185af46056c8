/** The tables, as the newest migration leaves them. */

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
}

export interface Tables {
  projects: ProjectTable;
  revisions: RevisionTable;
}
