/** How far wind uses what is on the faces, worked out on the page while it is shown. */
import { useMemo } from "react";
import type { Design } from "../../design.ts";
import { type FaceUse, windUses } from "../../proof/wind/uses.ts";

/** @param design at rest: a drag needs its time for the drawing */
export function useWindUses(
  design: Design | undefined,
  shown: boolean,
): { readonly uses: readonly FaceUse[] } | undefined {
  const facade = design?.facade;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a design that has been proven since has the same facade
  return useMemo(() => (design && shown ? { uses: windUses(design) } : undefined), [facade, shown]);
}
