/** What the page and its worker say to each other. */
import type { FileDesign, FileLaid, Laid, ProjectFile } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { PackedFacade, PackedList } from "./packed.ts";

export interface DesignRequest {
  readonly id: number;
  readonly file: ProjectFile;
  /** A place on the way of an edit: need not be proven where a later request has come meanwhile. */
  readonly passing: boolean;
}

/** A mistake of the program's, not of the file's. */
export interface Broken {
  readonly kind: "broken";
  readonly name: string;
}

export type DesignAnswer = FileDesign | Broken;

/** A later request has come before this one was proven. */
export interface Overtaken {
  readonly kind: "overtaken";
}

/** Comes as soon as the facade is set out, so that it is drawn while it is proven. */
export type LaidReply = Omit<Extract<FileLaid, { kind: "laid" }>, "laid"> & {
  readonly laid: Omit<Laid, "facade"> & { readonly facade: PackedFacade };
};

/** The rest of the design that was laid before. */
export interface ProvenReply {
  readonly kind: "proven";
  readonly findings: PackedList<Finding>;
  /** Places among them of those that setting-out found. */
  readonly laying: readonly number[];
}

export type DesignReply = { readonly id: number } & (
  | LaidReply
  | ProvenReply
  | Overtaken
  | Exclude<DesignAnswer, { kind: "designed" }>
);
