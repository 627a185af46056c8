/** What the page and its worker say to each other. */
import type { FileDesign } from "../../design.ts";

export interface DesignRequest {
  readonly id: number;
  /** As messages name the file. */
  readonly name: string;
  readonly text: string;
}

export type DesignAnswer =
  | FileDesign
  /** A mistake of the program's, not of the file's. */
  | { readonly kind: "broken"; readonly name: string };

export interface DesignReply {
  readonly id: number;
  readonly answer: DesignAnswer;
}
