import { toGridSteps } from "../units/length.ts";
import type { LengthRequest, LengthStock, Span } from "./model.ts";

/**
 * The runs of a bar that pieces may lie in, in steps: its sound runs less the trim at the bar's own ends and less
 * the margin beside defects. Runs nearer together than the blade is wide are kept a blade apart.
 */
export function usableRuns(stock: LengthStock, request: LengthRequest): Span[] {
  const kerf = toGridSteps(request.kerf);
  const endTrim = toGridSteps(request.endTrim ?? 0);
  const margin = toGridSteps(request.defectMargin ?? 0);
  const length = toGridSteps(stock.length);
  const runs: Span[] = [];
  let free = Number.NEGATIVE_INFINITY;
  for (const sound of [...stock.sound].sort((a, b) => a.from - b.from)) {
    const start = toGridSteps(sound.from);
    const end = toGridSteps(sound.to);
    const from = Math.max(start <= 0 ? endTrim : start + margin, endTrim, free);
    const to = Math.min(end >= length ? length - endTrim : end - margin, length - endTrim);
    if (to <= from) continue;
    runs.push({ from, to });
    free = to + kerf;
  }
  return runs;
}
