/** What would newly fail with an edit made: the project with it is designed beside the sheet, by a worker of its own. */
import { useEffect, useState } from "react";
import type { Finding } from "../../findings/finding.ts";
import { newlyFailing } from "../../findings/newly.ts";
import { applyPatch } from "../../project/edit.ts";
import type { Change } from "../../project/editing/change.ts";
import { createDesigner, type Designer } from "../work/designer.ts";

/** Figures are typed one after the other: the hand has rested for so long, milliseconds. */
const REST = 250;

export type NewlyFailing =
  | { readonly kind: "asking" }
  | { readonly kind: "known"; readonly findings: readonly Finding[] }
  /** It could not be designed at all. */
  | { readonly kind: "unknown" };

const ASKING: NewlyFailing = { kind: "asking" };

/** One for the whole page, from its first question on. */
let beside: Designer | undefined;

export interface Tried {
  /** The file's name. */
  readonly name: string;
  /** The document that the change is made to. */
  readonly document: unknown;
  /** Of that document; undefined while it is still being proven. */
  readonly findings: readonly Finding[] | undefined;
  readonly change: Change | undefined;
}

/** @returns undefined where there is no change */
export function useNewlyFailing({ name, document, findings, change }: Tried): NewlyFailing | undefined {
  const [answer, setAnswer] = useState<{ readonly to: Change; readonly found: NewlyFailing }>();
  useEffect(() => {
    if (!change || !findings) return;
    let isLeft = false;
    const ask = async (): Promise<void> => {
      const patched = applyPatch(document, change.operations);
      beside ??= createDesigner();
      const designed = patched.ok ? await beside.design({ name, document: patched.document }) : undefined;
      if (isLeft) return;
      const found: NewlyFailing =
        designed?.kind === "designed"
          ? { kind: "known", findings: newlyFailing(findings, designed.design.findings) }
          : { kind: "unknown" };
      setAnswer({ to: change, found });
    };
    const rest = setTimeout(() => void ask(), REST);
    return () => {
      isLeft = true;
      clearTimeout(rest);
    };
  }, [name, document, findings, change]);
  if (!change) return undefined;
  return answer?.to === change && findings ? answer.found : ASKING;
}
