/**
 * Keeps what rules of one face found, by everything that they were given: the laid-out face itself, which a memo of faces
 * hands out again for as long as nothing of it changed, and the whole text of the rest. Never hashes, so what is
 * remembered is always right; a face that is laid out anew is proven anew.
 */
import type { Finding } from "../findings/finding.ts";
import type { FaceLayout } from "../setout/facade.ts";

export interface ProofMemo {
  /** What was found on the face with the rest of its inputs as in `key`, found now where it is not remembered. */
  readonly recall: (layout: FaceLayout, key: string, find: () => readonly Finding[]) => readonly Finding[];
  /** Faces proven so far, remembered ones not counted. */
  readonly made: number;
}

/** Remembers for each laid-out face its latest findings; they go when the face goes. */
export function createProofMemo(): ProofMemo {
  const kept = new WeakMap<FaceLayout, { readonly key: string; readonly found: readonly Finding[] }>();
  let made = 0;
  return {
    get made() {
      return made;
    },
    recall(layout, key, find) {
      const known = kept.get(layout);
      if (known?.key === key) return known.found;
      const found = find();
      made += 1;
      kept.set(layout, { key, found });
      return found;
    },
  };
}
