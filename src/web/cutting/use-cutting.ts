/** The cut plan of the project on the sheet: asked for when a part of the job shows it, and again when edits rest. */
import { useEffect, useMemo, useRef, useState } from "react";
import type { Cut, Cutter } from "../work/cutter.ts";

export interface Cutting {
  /** The last plan that came back; of an earlier state of the project where `stale`. */
  readonly cut: Cut | undefined;
  readonly stale: boolean;
  /** The program failed on this project. */
  readonly broken: boolean;
}

/** Milliseconds without an edit. */
const REST = 300;

interface Held {
  readonly of: unknown;
  readonly name: string;
  readonly cut: Cut | undefined;
}

export function useCutting(
  cutter: Cutter,
  { name, document, wanted }: { name: string | undefined; document: unknown; wanted: boolean },
): Cutting {
  const [held, setHeld] = useState<Held>();
  const asked = useRef<unknown>(undefined);
  const have = held?.of;
  useEffect(() => {
    if (!wanted || name === undefined || document === undefined || document === have) return;
    const rested = setTimeout(() => {
      if (asked.current === document) return;
      asked.current = document;
      void cutter.cut({ name, document }).then((cut) => {
        // Edits that came meanwhile are asked for by themselves.
        if (asked.current === document) setHeld({ of: document, name, cut });
      });
    }, REST);
    return () => clearTimeout(rested);
  }, [cutter, name, document, wanted, have]);
  const own = held?.name === name ? held : undefined;
  const stale = own?.of !== document;
  const cut = own?.cut;
  const broken = !stale && own !== undefined && !cut;
  return useMemo(() => ({ cut, stale, broken }), [cut, stale, broken]);
}
