/** Round ducts as spans of a rod, beside which no sliver of a board should be left. */
import type { RoundKeepOut } from "../ground-plan.ts";
import type { DuctSpan, RodProblem } from "../rod/index.ts";

/** Ducts of one span as one, since what spares one spares them all; nothing where there are none. */
export function ductsAcross(
  rounds: readonly RoundKeepOut[],
  { axis, leastShare }: { readonly axis: "x" | "y"; readonly leastShare: number },
): Pick<RodProblem, "ducts"> {
  const spans: (DuctSpan & { of: string[] })[] = [];
  for (const { of, bounds } of rounds) {
    const [from, to] = bounds[axis];
    const same = spans.find((span) => span.from === from && span.to === to);
    if (same) same.of.push(of);
    else spans.push({ of: [of], from, to });
  }
  return spans.length === 0 ? {} : { ducts: { spans, leastShare } };
}
