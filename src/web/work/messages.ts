/** What the page and its worker say to each other. */
import type { FileDesign, FileLaid, Laid, ProjectFile } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { PackedFacade, PackedLayouts, PackedList } from "./packed.ts";

export interface DesignRequest {
  readonly ask: "design";
  readonly id: number;
  readonly file: ProjectFile;
  /** A place on the way of an edit: need not be proven where a later request has come meanwhile. */
  readonly passing: boolean;
  /** The page has set the file out itself and wants its findings alone. */
  readonly findingsAlone?: boolean;
}

/** What the worker has laid out, for the page to begin with. */
export interface LayoutsRequest {
  readonly ask: "layouts";
  readonly id: number;
}

export type WorkerRequest = DesignRequest | LayoutsRequest;

/** A mistake of the program's, not of the file's. */
export interface Broken {
  readonly kind: "broken";
  readonly name: string;
}

export type DesignAnswer = FileDesign | Broken;

/** A later request has come before this one was proven, or before its proof was here. */
export interface Overtaken {
  readonly kind: "overtaken";
  /** Of reading and designing, where they are known: newer than what the page shows. */
  readonly findings?: readonly Finding[];
}

/** Comes as soon as the facade is set out, so that it is drawn while it is proven. */
export type LaidReply = Omit<Extract<FileLaid, { kind: "laid" }>, "laid"> & {
  readonly laid: Omit<Laid, "facade"> & { readonly facade: PackedFacade };
};

export interface LayoutsReply {
  readonly kind: "layouts";
  readonly layouts: PackedLayouts;
}

/** The rest of the design that was laid before. */
export interface ProvenReply {
  readonly kind: "proven";
  readonly findings: PackedList<Finding>;
  /** Places among them of those that setting-out found. */
  readonly laying: readonly number[];
}

export type DesignReply = { readonly id: number } & (
  | LaidReply
  | LayoutsReply
  | ProvenReply
  | Overtaken
  | Exclude<DesignAnswer, { kind: "designed" }>
);
