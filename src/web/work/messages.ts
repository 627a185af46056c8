/** What the page and its worker say to each other. */
import type { FileDesign, ProjectFile } from "../../design.ts";
import type { PackedDesign } from "./packed.ts";

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

export interface DesignReply {
  readonly id: number;
  readonly answer: PackedDesign | Exclude<DesignAnswer, { kind: "designed" }>;
}
