/**
 * What is finished together: the boards of one finish on one face, so that a face is of one shade (common practice).
 */
import type { Facade } from "../setout/facade.ts";
import type { FinishLine, PieceLine, Takeoff } from "./model.ts";

export interface FinishBatch {
  /** The face's code and the finish's number: `W-F1`. */
  readonly code: string;
  readonly face: string;
  readonly finish: string;
  readonly pieces: readonly PieceLine[];
  /** All six sides (m²). */
  readonly areaM2: number;
  readonly coats?: number;
  readonly dryingDays?: number;
  readonly litres?: FinishLine["litres"];
}

const MM2_PER_M2 = 1e6;

export function finishBatches(
  { pieces, finishes }: Pick<Takeoff, "pieces" | "finishes">,
  { faces }: Pick<Facade, "faces">,
): FinishBatch[] {
  const own = new Map<string, Map<string, PieceLine[]>>();
  for (const piece of pieces) {
    if (piece.finish === undefined) continue;
    const onFace = own.get(piece.face) ?? new Map<string, PieceLine[]>();
    own.set(piece.face, onFace);
    const together = onFace.get(piece.finish);
    if (together) together.push(piece);
    else onFace.set(piece.finish, [piece]);
  }
  /** Each finish with the first of its lines, numbered in the order of these. */
  const lines = new Map<string, FinishLine>();
  for (const line of finishes) if (!lines.has(line.finish)) lines.set(line.finish, line);
  const kinds = [...lines.values()];
  return faces.flatMap(({ id, code }) =>
    kinds.flatMap((line, at): FinishBatch[] => {
      const { finish, coats, dryingDays, litres } = line;
      const batch = own.get(id)?.get(finish);
      if (!batch) return [];
      const areaM2 = batch.reduce((sum, one) => sum + surface(one), 0) / MM2_PER_M2;
      const share = line.areaM2 > 0 ? areaM2 / line.areaM2 : 0;
      return [
        {
          code: `${code}-F${at + 1}`,
          face: id,
          finish,
          pieces: batch,
          areaM2,
          ...(coats !== undefined && { coats }),
          ...(dryingDays !== undefined && { dryingDays }),
          ...(litres && { litres: { least: litres.least * share, most: litres.most * share } }),
        },
      ];
    }),
  );
}

function surface({ length, width, thickness }: PieceLine): number {
  return 2 * (length * width + length * thickness + width * thickness);
}
