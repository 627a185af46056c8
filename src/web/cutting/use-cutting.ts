/** The cut plan of the project on the sheet: asked for when a part of the job shows it, and again when edits rest. */
import { useEffect, useMemo, useRef, useState } from "react";
import type { SheetKind } from "../../project/schema/sheets.ts";
import type { Reader } from "../../text/say.ts";
import type { Cut, Cutter } from "../work/cutter.ts";

export interface Cutting {
  /** The last that came back; of an earlier state of the project where `stale`. */
  readonly cut: Cut | undefined;
  readonly stale: boolean;
  /** The program failed on this project. */
  readonly broken: boolean;
}

export interface CuttingOf {
  readonly name: string | undefined;
  readonly document: unknown;
  readonly wanted: boolean;
  /** For whom drawings are wanted as well. */
  readonly drawFor: Reader | undefined;
  /** Of the drawings, these kinds alone; all where absent. */
  readonly drawOnly?: readonly SheetKind[] | undefined;
}

/** Milliseconds without an edit. */
const REST = 300;

interface Asked {
  readonly name: string;
  readonly document: unknown;
  readonly drawFor: Reader | undefined;
  readonly drawOnly: readonly SheetKind[] | undefined;
}

export function useCutting(
  cutter: Cutter,
  { name, document, wanted, drawFor, drawOnly }: CuttingOf,
): Cutting {
  const [held, setHeld] = useState<Asked & { readonly cut: Cut | undefined }>();
  const asked = useRef<Asked>(undefined);
  const answers = (one: Asked | undefined): boolean =>
    one?.document === document &&
    one?.name === name &&
    (drawFor === undefined ||
      // A whole set has what a part of it asks for.
      (one?.drawFor === drawFor && (one.drawOnly === undefined || one.drawOnly === drawOnly)));
  const stale = !answers(held);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asks again when what is wanted changes, not when it is answered
  useEffect(() => {
    if (!wanted || name === undefined || document === undefined || !stale) return;
    const rested = setTimeout(() => {
      if (answers(asked.current)) return;
      const own: Asked = { name, document, drawFor, drawOnly };
      asked.current = own;
      void cutter
        .cut({ name, document, ...(drawFor && { drawFor }), ...(drawFor && drawOnly && { drawOnly }) })
        .then((cut) => {
          // What was asked meanwhile has an answer of its own.
          if (asked.current === own) setHeld({ ...own, cut });
        });
    }, REST);
    return () => clearTimeout(rested);
  }, [cutter, name, document, wanted, drawFor, drawOnly, stale]);
  const cut = held?.name === name ? held?.cut : undefined;
  const broken = !stale && !cut;
  return useMemo(() => ({ cut, stale, broken }), [cut, stale, broken]);
}
