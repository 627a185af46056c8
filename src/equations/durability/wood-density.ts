/** The density of wood at a moisture content, from its specific gravity there. */
import { equation } from "../equation.ts";

export interface WoodMass {
  /** Ovendry mass on volume at this moisture content. */
  readonly specificGravity: number;
  /** Moisture content (%). */
  readonly moisturePercent: number;
}

/** Density (kg/m³). */
export function woodDensity({ specificGravity, moisturePercent }: WoodMass): number {
  return 1000 * specificGravity * (1 + moisturePercent / 100);
}

export const WOOD_DENSITY = equation({
  name: "wood-density",
  formula: "1000 · specificGravity · (1 + moisturePercent/100)",
  inputs: [
    { key: "specificGravity", unit: "1", range: [0.05, 1.4] },
    { key: "moisturePercent", unit: "%", range: [0, 250] },
  ],
  result: { unit: "kg/m³" },
  source: {
    document: "Wood Handbook, Forest Products Laboratory, FPL-GTR-282 (2021)",
    clause: "Equation 4-14",
  },
  work: woodDensity,
});
