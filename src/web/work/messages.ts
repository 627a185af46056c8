/** What the page and its worker say to each other. */
import type { Design, FileDesign, Laid, ProjectFile } from "../../design.ts";
import type { PackedFacade } from "./packed.ts";

export interface DesignRequest {
  readonly id: number;
  readonly file: ProjectFile;
}

/** A mistake of the program's, not of the file's. */
export interface Broken {
  readonly kind: "broken";
  readonly name: string;
}

export type DesignAnswer = FileDesign | Broken;

type Designed = Extract<FileDesign, { kind: "designed" }>;

/** Comes as soon as the facade is set out, so that it is drawn while it is proven. */
export interface LaidReply {
  readonly id: number;
  readonly kind: "laid";
  readonly laid: Omit<Laid, "facade"> & { readonly facade: PackedFacade };
}

/** The rest of the design that was laid before. */
export interface ProvenReply extends Omit<Designed, "design"> {
  readonly id: number;
  /** Those of setting-out are among `findings` too: sent in one message they stay the same objects. */
  readonly laying: Design["facade"]["findings"];
  readonly findings: Design["findings"];
}

export type DesignReply =
  | LaidReply
  | ProvenReply
  | ({ readonly id: number } & Exclude<DesignAnswer, { kind: "designed" }>);
