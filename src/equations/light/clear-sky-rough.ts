/** A second, rougher clear sky that knows nothing but the sun's height: to see that the other is of the right size. */
import { equation } from "../equation.ts";

/** On level ground (W/m²). @param zenithDeg 0 to under 90 */
export function clearSkyRough({ zenithDeg }: { readonly zenithDeg: number }): number {
  const cosine = Math.cos((zenithDeg * Math.PI) / 180);
  return 1098 * cosine * Math.exp(-0.059 / cosine);
}

export const CLEAR_SKY_ROUGH = equation({
  name: "clear-sky-rough",
  formula: "1098 · cos zenithDeg · e^(−0.059/cos zenithDeg)",
  inputs: [{ key: "zenithDeg", unit: "°", range: [0, 89] }],
  result: { unit: "W/m²" },
  source: { document: "Haurwitz, Journal of Meteorology 2 (1945) and 3 (1946)" },
  work: clearSkyRough,
});
