/** The thermal resistance of a layer. */
import { equation } from "../equation.ts";

export interface HeatLayer {
  /** Along the flow of heat (mm). */
  readonly thicknessMm: number;
  /** Of the material (W/mK). */
  readonly conductivityWPerMK: number;
}

/** Resistance (m²K/W). */
export function layerResistance({ thicknessMm, conductivityWPerMK }: HeatLayer): number {
  return thicknessMm / 1000 / conductivityWPerMK;
}

export const LAYER_RESISTANCE = equation({
  name: "layer-resistance",
  formula: "thicknessMm/1000 / conductivityWPerMK",
  inputs: [
    { key: "thicknessMm", unit: "mm", range: [0, 2000] },
    { key: "conductivityWPerMK", unit: "W/mK", range: [0.005, 400] },
  ],
  result: { unit: "m²K/W" },
  source: { document: "ISO 6946", clause: "Homogeneous layers" },
  work: layerResistance,
});
