/** Pieces by what a gloved hand types of a mark. */

/** Small letters, and without the strokes between: `fs12` is meant for `F-S12`. */
function plain(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9]/g, "");
}

/** The very mark first, then those that begin so, then those that hold it. */
export function found<One extends { readonly mark: string }>(pieces: readonly One[], typed: string): One[] {
  const wanted = plain(typed);
  if (wanted === "") return [];
  const ranked = pieces.flatMap((piece): { piece: One; rank: number }[] => {
    const mark = plain(piece.mark);
    if (!mark.includes(wanted)) return [];
    return [{ piece, rank: mark === wanted ? 0 : mark.startsWith(wanted) ? 1 : 2 }];
  });
  return ranked.sort((a, b) => a.rank - b.rank).map(({ piece }) => piece);
}
