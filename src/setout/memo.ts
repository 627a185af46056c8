/**
 * Keeps laid-out faces by everything that they were made from, so that an edit on one face does not lay out another. What
 * two layouts share (stock, limits, structure, demands) is one key, what a face has of its own another: both are whole
 * texts, never hashes, so a remembered face is always the right one.
 */
import type { LaidFace } from "./face-layout.ts";

export interface FaceMemo {
  /** The face made from these keys, made now where it is not remembered. */
  recall(shared: string, own: string, make: () => LaidFace): LaidFace;
  /** Faces laid out so far, remembered ones not counted. */
  readonly made: number;
}

/** Remembers the latest faces of the latest few sets of shared input. */
export function createFaceMemo({
  faces,
  shareds,
}: {
  readonly faces: number;
  readonly shareds: number;
}): FaceMemo {
  const kept = new Map<string, Map<string, LaidFace>>();
  let made = 0;
  return {
    get made() {
      return made;
    },
    recall(shared, own, make) {
      const group = kept.get(shared) ?? new Map<string, LaidFace>();
      freshen(kept, shared, group, shareds);
      const known = group.get(own);
      const face = known ?? make();
      if (!known) made += 1;
      freshen(group, own, face, faces);
      return face;
    },
  };
}

/** Puts an entry last and lets the oldest go beyond the limit. */
function freshen<T>(map: Map<string, T>, key: string, value: T, limit: number): void {
  map.delete(key);
  map.set(key, value);
  for (const oldest of map.keys()) {
    if (map.size <= limit) break;
    map.delete(oldest);
  }
}
