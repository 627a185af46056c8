/** The cut plan of the project on the sheet: asked for when a part of the job shows it, and again when edits rest. */
import { useEffect, useMemo, useRef, useState } from "react";
import { type Closeness, closenessOf } from "../../cutting/facade/closeness.ts";
import type { SheetKind } from "../../project/schema/sheets.ts";
import type { Reader } from "../../text/say.ts";
import type { Cut, Cutter } from "../work/cutter.ts";

export interface Cutting {
  /** The last that came back; of an earlier state of the project where `stale`. */
  readonly cut: Cut | undefined;
  readonly stale: boolean;
  /** While better plans are searched for than the one that came back last: what those so far cost, and what none costs less than. */
  readonly closing: readonly Closeness[] | undefined;
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
  /** Plans on the way to the last are shown too. */
  readonly onTheWay: boolean;
}

/** Milliseconds without an edit. */
const REST = 300;

/** What came back last. */
interface Held extends Asked, Pick<Cutting, "cut" | "closing"> {}

interface Asked {
  readonly name: string;
  readonly document: unknown;
  readonly drawFor: Reader | undefined;
  readonly drawOnly: readonly SheetKind[] | undefined;
}

export function useCutting(
  cutter: Cutter,
  { name, document, wanted, drawFor, drawOnly, onTheWay }: CuttingOf,
): Cutting {
  const [held, setHeld] = useState<Held>();
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
      // What was asked meanwhile has an answer of its own.
      const isLatest = (): boolean => asked.current === own;
      const closing: Closeness[] = [];
      const show = (cut: Cut): void => {
        if (!cut.plan || !isLatest()) return;
        closing.push(closenessOf(cut.plan));
        setHeld({ ...own, cut, closing: [...closing] });
      };
      const request = {
        name,
        document,
        ...(drawFor && { drawFor }),
        ...(drawFor && drawOnly && { drawOnly }),
      };
      void cutter.cut(request, onTheWay ? show : undefined).then((cut) => {
        if (isLatest()) setHeld({ ...own, cut, closing: undefined });
      });
    }, REST);
    return () => clearTimeout(rested);
  }, [cutter, name, document, wanted, drawFor, drawOnly, stale]);
  const cut = held?.name === name ? held?.cut : undefined;
  const broken = !stale && !cut;
  const closing = stale ? undefined : held?.closing;
  return useMemo(() => ({ cut, stale, broken, closing }), [cut, stale, broken, closing]);
}
