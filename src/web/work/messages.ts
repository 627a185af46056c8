/** What the page and its worker say to each other. */
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";

export interface DesignRequest {
  readonly id: number;
  /** As messages name the file. */
  readonly name: string;
  readonly text: string;
}

export type DesignAnswer =
  | {
      readonly id: number;
      readonly name: string;
      readonly kind: "designed";
      readonly design: Design;
      /** Of reading the file: what hinders nothing. */
      readonly readFindings: readonly Finding[];
    }
  | {
      readonly id: number;
      readonly name: string;
      readonly kind: "refused";
      readonly findings: readonly Finding[];
    }
  /** A mistake of the program's, not of the file's. */
  | { readonly id: number; readonly name: string; readonly kind: "broken" };
