/** How far a litre of finish goes and how long it lasts. */

import { type Catalogue, figureFiles, finishesFile } from "./files.ts";
import type { Coverage, FinishesFile, ServiceLife } from "./schema/finishes.ts";

export type { Coverage, ServiceLife } from "./schema/finishes.ts";

/** Coverage of one coat by surface: `smooth` or `sawn-or-weathered`. */
export function coverage(surface: string, from: Catalogue = figureFiles): Coverage | undefined {
  return from.finishes.coverage.find((entry) => entry.id === surface);
}

/** Years until a finish wants renewing, such as `charred-brushed-re-oiling`. */
export function serviceLife(id: string): ServiceLife | undefined {
  return finishesFile.serviceLife.find((entry) => entry.id === id);
}

export function serviceLifeIds(): string[] {
  return finishesFile.serviceLife.map((entry) => entry.id);
}

/** The wettest that boards should be when they are fixed (%, by mass). */
export function builtInMoisture(): FinishesFile["moistureWhenBuiltIn"] {
  return finishesFile.moistureWhenBuiltIn;
}
