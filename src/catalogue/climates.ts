/** Monthly normals of places, and the moisture content wood keeps outdoors there. */
import { climatesFile } from "./files.ts";
import type { Climate, OutdoorMoisture, OutdoorMoistureSpan } from "./schema/climates.ts";

export type { Climate, OutdoorMoisture, OutdoorMoistureSpan } from "./schema/climates.ts";

/** Normals by place, such as `quebec-city`. */
export function climate(id: string): Climate | undefined {
  return climatesFile.climates.find((entry) => entry.id === id);
}

export function climateIds(): string[] {
  return climatesFile.climates.map((entry) => entry.id);
}

/** Monthly equilibrium moisture content outdoors by place; remembered, so the climate's normals are to be preferred. */
export function outdoorMoisture(id: string): OutdoorMoisture | undefined {
  return climatesFile.outdoorMoisture.find((entry) => entry.id === id);
}

export function outdoorMoistureIds(): string[] {
  return climatesFile.outdoorMoisture.map((entry) => entry.id);
}

/** Spans of moisture content seen in print for seasons of a place; empty where none is known. */
export function outdoorMoistureSpans(id: string): OutdoorMoistureSpan[] {
  return climatesFile.outdoorMoistureSpans.filter((entry) => entry.id === id);
}
