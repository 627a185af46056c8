/** A project on the sheet, and as it comes to it. */
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { begin, type History } from "../edit/history.ts";
import type { ServedDesign } from "../work/api.ts";
import type { RevisionInfo } from "../work/kept-api.ts";
import type { Older } from "./older.ts";

export interface Sheeted {
  readonly name: string;
  /** Under which its edits are kept. */
  readonly keptAs: string;
  /** Counts the files put on the sheet: another one starts its own view. */
  readonly load: number;
  readonly design: Design;
  /** Of reading and designing, what is to be settled first in front. */
  readonly findings: readonly Finding[];
  /** The findings are still those of the facade before. */
  readonly proving: boolean;
  readonly history: History;
  /** It is an older state, to be looked at alone. */
  readonly older?: Older;
}

/** A project on its way to the sheet; `latest` where it is a revision of the server's. */
export type Coming = ServedDesign & { readonly latest?: RevisionInfo };

/** A project as it was read, before any edit; undefined where its file was refused. */
export function asRead(
  coming: Coming | undefined,
  { load, keptAs }: { load: number; keptAs: string },
): Sheeted | undefined {
  if (coming?.kind !== "designed") return undefined;
  const { name, document, design, readFindings } = coming;
  return {
    name,
    keptAs,
    load,
    design,
    findings: [...readFindings, ...design.findings],
    proving: false,
    history: begin({ document, says: message("page.edit.read", { file: name }) }),
  };
}
