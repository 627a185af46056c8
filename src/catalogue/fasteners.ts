/** Screw gauges, stainless groups and least penetrations. */

import type { Jurisdiction } from "./figure.ts";
import { fastenersFile } from "./files.ts";
import type { Gauge, Penetration, StainlessGroup } from "./schema/fasteners.ts";

export type { Gauge, Penetration, StainlessGroup } from "./schema/fasteners.ts";

/** Screw diameter by gauge, such as `#10`. */
export function screwGauge(id: string): Gauge | undefined {
  return fastenersFile.gauges.find((entry) => entry.id === id);
}

export function screwGaugeIds(): string[] {
  return fastenersFile.gauges.map((entry) => entry.id);
}

/** Stainless group by name: `A2` or `A4`. */
export function stainlessGroup(id: string): StainlessGroup | undefined {
  return fastenersFile.stainlessGroups.find((entry) => entry.id === id);
}

/** Least penetrations a jurisdiction's rules name; empty where none is known. */
export function penetrations(jurisdiction: Jurisdiction): Penetration[] {
  return fastenersFile.penetration.filter((entry) => entry.jurisdiction === jurisdiction);
}
