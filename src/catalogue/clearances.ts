/** How far cladding stays above ground, roof, deck and flashing. Jurisdictions disagree and are kept side by side. */

import type { Jurisdiction } from "./figure.ts";
import { type Catalogue, figureFiles } from "./files.ts";
import type { Clearance, ClearanceKind } from "./schema/clearances.ts";

export type { Clearance, ClearanceKind } from "./schema/clearances.ts";

/** The rule of one jurisdiction for one kind of edge, or undefined where none is known: never another place's rule. */
export function clearance(
  asked: { jurisdiction: Jurisdiction; kind: ClearanceKind },
  from: Catalogue = figureFiles,
): Clearance | undefined {
  return from.clearances.clearances.find(
    (entry) => entry.jurisdiction === asked.jurisdiction && entry.kind === asked.kind,
  );
}

/** Every known rule for one kind of edge, to show the disagreement. */
export function clearancesOf(kind: ClearanceKind, from: Catalogue = figureFiles): Clearance[] {
  return from.clearances.clearances.filter((entry) => entry.kind === kind);
}
