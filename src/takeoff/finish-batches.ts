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
  const kinds = [...new Set(finishes.map(({ finish }) => finish))];
  return faces.flatMap(({ id, code }) =>
    kinds.flatMap((finish, at): FinishBatch[] => {
      const own = pieces.filter((one) => one.face === id && one.finish === finish);
      if (own.length === 0) return [];
      const areaM2 = own.reduce((sum, one) => sum + surface(one), 0) / MM2_PER_M2;
      const line = finishes.find((one) => one.finish === finish);
      const share = line && line.areaM2 > 0 ? areaM2 / line.areaM2 : 0;
      return [
        {
          code: `${code}-F${at + 1}`,
          face: id,
          finish,
          pieces: own,
          areaM2,
          ...(line?.coats !== undefined && { coats: line.coats }),
          ...(line?.dryingDays !== undefined && { dryingDays: line.dryingDays }),
          ...(line?.litres && {
            litres: { least: line.litres.least * share, most: line.litres.most * share },
          }),
        },
      ];
    }),
  );
}

function surface({ length, width, thickness }: PieceLine): number {
  return 2 * (length * width + length * thickness + width * thickness);
}
