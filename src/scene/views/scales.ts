/** Scales for a drawing that has to fit a sheet. */
import type { Rect } from "../../geometry/rect.ts";

/** ISO 5455 reductions, with 1 : 25, which building drawings use beside them (common practice). */
const REDUCTIONS: readonly number[] = [5, 10, 20, 25, 50, 100, 200, 500, 1000];

/**
 * The largest usual scale at which a box fits.
 * @param room width and height on paper for the box itself, mm
 */
export function fittingScale(
  box: Rect,
  { room }: { room: readonly [width: number, height: number] },
): number {
  const width = box.x[1] - box.x[0];
  const height = box.y[1] - box.y[0];
  const fits = REDUCTIONS.find((times) => width / times <= room[0] && height / times <= room[1]);
  return 1 / (fits ?? (REDUCTIONS.at(-1) as number));
}
