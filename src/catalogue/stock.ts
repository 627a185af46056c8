/** Sizes in which lumber, battens and packers are bought, and the widths of saw cuts. */

import type { Figure } from "./figure.ts";
import { stockFile } from "./files.ts";
import type { Section, StockFile } from "./schema/stock.ts";

export type { Section } from "./schema/stock.ts";

/** Dressed dry size by nominal name, such as `1x4`. */
export function lumber(id: string): Section | undefined {
  return stockFile.lumber.find((entry) => entry.id === id);
}

export function lumberIds(): string[] {
  return stockFile.lumber.map((entry) => entry.id);
}

/** Dry and green thickness by nominal inches: `1`, `5/4` or `2`. */
export function nominalThickness(id: string): StockFile["nominalThickness"][number] | undefined {
  return stockFile.nominalThickness.find((entry) => entry.id === id);
}

/** Batten by thickness and width in millimetres, such as `19x64`. */
export function battenSection(id: string): Section | undefined {
  return stockFile.battens.find((entry) => entry.id === id);
}

export function battenSections(): readonly Section[] {
  return stockFile.battens;
}

export function packerThicknesses(): readonly Figure[] {
  return stockFile.packers;
}

/** Width of a saw's cut: `circular-saw` or `band-saw`. */
export function kerf(id: string): StockFile["kerfs"][number] | undefined {
  return stockFile.kerfs.find((entry) => entry.id === id);
}
