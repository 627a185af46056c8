/**
 * What went out with an issue, kept small: each piece by its mark with a sum over everything that is drawn or cut of it. A mark
 * that went out keeps its piece: a piece that changes is a change of its mark, and one that goes leaves its mark unused.
 */
import type { Facade, Piece } from "../setout/facade.ts";

export interface Changes {
  /** Marks of pieces that are new or differ. */
  readonly changed: readonly string[];
  /** Marks that went out and have no piece any more. */
  readonly gone: readonly string[];
}

/** Sums by mark, in the order of the facade. */
export function issueState({ faces }: Pick<Facade, "faces">): Record<string, string> {
  return Object.fromEntries(
    faces.flatMap(({ pieces }) => pieces.map((piece) => [piece.mark, pieceSum(piece)] as const)),
  );
}

export function changesSince(
  before: Readonly<Record<string, string>>,
  facade: Pick<Facade, "faces">,
): Changes {
  const now = issueState(facade);
  return {
    changed: Object.keys(now).filter((mark) => now[mark] !== before[mark]),
    gone: Object.keys(before).filter((mark) => !(mark in now)),
  };
}

/** FNV-1a, 32 bits (Fowler, Noll, Vo; from memory), over two halves of the text: enough to tell states of one piece apart. */
export function pieceSum(piece: Piece): string {
  const { outline, holes, reliefs, z, ends, profile, planProfile, bevelDeg, material, cut } = piece;
  const fixings = piece.fixings.map(({ x, y, kind, screw, hole }) => [x, y, kind, screw, hole]);
  const text = JSON.stringify([
    outline,
    holes,
    reliefs ?? 0,
    z,
    ends,
    profile ?? 0,
    planProfile ?? 0,
    bevelDeg ?? 0,
    material,
    cut,
    fixings,
  ]);
  return fnv(text).toString(36) + fnv([...text].reverse().join("")).toString(36);
}

function fnv(text: string): number {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    sum ^= text.charCodeAt(i);
    sum = Math.imul(sum, 0x01000193);
  }
  return sum >>> 0;
}
