/** A journal as it is opened: what it came to at one of its entries, and the entries since, however long it is. */
import type { Entry } from "./entry.ts";
import { createFold, FOLD_VERSION, type Fold, type Folded } from "./fold.ts";

/** What the entries up to a number came to. */
export interface FoldedAt extends Folded {
  readonly version: number;
  readonly latest: number;
}

export interface Opening {
  /** Null for a journal that is short. */
  readonly folded: FoldedAt | null;
  /** All after it, in the order in which they came. */
  readonly entries: readonly { readonly number: number; readonly entry: Entry }[];
  /** The number of the latest entry of all; 0 where there is none. */
  readonly latest: number;
}

export function foldedAt(latest: number, fold: Fold): FoldedAt {
  return { version: FOLD_VERSION, latest, ...fold.folded() };
}

/** Undefined where another version reckoned: the entries themselves have to be read. */
export function foldOf({ folded, entries }: Opening): Fold | undefined {
  if (folded && folded.version !== FOLD_VERSION) return undefined;
  const fold = createFold(folded ?? undefined);
  fold.add(entries.map(({ entry }) => entry));
  return fold;
}
