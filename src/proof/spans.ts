/** Distances between supports and between screws along a piece. */
import type { Piece } from "../setout/facade.ts";
import type { ProofContext } from "./context.ts";

/** The widest span between supports: across upright battens, or between rails where the piece hangs on those (mm). */
export function widestSpan({ pieceOf }: Pick<ProofContext, "pieceOf">, piece: Piece): number | undefined {
  const onRails = piece.fixings.some(({ into }) => pieceOf(into)?.kind === "rail");
  return widestGap(piece.fixings.map(({ x, y }) => (onRails ? y : x)));
}

/** The widest gap between neighbours of unsorted places; undefined under two places. */
export function widestGap(places: readonly number[]): number | undefined {
  const sorted = [...new Set(places)].sort((a, b) => a - b);
  const gaps = sorted.slice(1).map((place, index) => place - (sorted[index] ?? place));
  return gaps.length === 0 ? undefined : Math.max(...gaps);
}
