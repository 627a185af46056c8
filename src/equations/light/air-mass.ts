/** How much more air the sun's light passes than straight down. Kasten prints the exponent 1.253; this model rounds it. */
import { equation } from "../equation.ts";

/** Relative air mass at sea level. @param zenithDeg 0 to under 93.885; the source fits to the horizon */
export function airMass({ zenithDeg }: { readonly zenithDeg: number }): number {
  return 1 / (Math.cos((zenithDeg * Math.PI) / 180) + 0.15 * (93.885 - zenithDeg) ** -1.25);
}

export const AIR_MASS = equation({
  name: "air-mass",
  formula: "1/(cos zenithDeg + 0.15 · (93.885 − zenithDeg)^−1.25)",
  inputs: [{ key: "zenithDeg", unit: "°", range: [0, 90] }],
  result: { unit: "1" },
  source: { document: "Kasten (1966), as rounded in Bird and Hulstrom, SERI/TR-642-761 (1981)" },
  work: airMass,
});
