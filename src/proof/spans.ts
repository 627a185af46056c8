/** Distances between supports and between screws along a piece. */
import type { Piece } from "../setout/facade.ts";
import type { ZoneView } from "./context.ts";

/** The marks of a face's rails. */
export function railsOf({ face }: Pick<ZoneView, "face">): ReadonlySet<string> {
  const rails = new Set<string>();
  for (const { kind, mark } of face.pieces) if (kind === "rail") rails.add(mark);
  return rails;
}

/** The widest span between supports: across upright battens, or between rails where the piece hangs on those (mm). */
export function widestSpan(rails: ReadonlySet<string>, { fixings }: Piece): number | undefined {
  const onRails = rails.size > 0 && fixings.some(({ into }) => rails.has(into));
  return widestGap(fixings.map(({ x, y }) => (onRails ? y : x)));
}

/** The widest gap between neighbours of unsorted places; undefined where all are one. */
export function widestGap(places: readonly number[]): number | undefined {
  const sorted = Float64Array.from(places).sort();
  let widest = 0;
  for (let i = 1; i < sorted.length; i++)
    widest = Math.max(widest, (sorted[i] as number) - (sorted[i - 1] as number));
  return widest > 0 ? widest : undefined;
}
