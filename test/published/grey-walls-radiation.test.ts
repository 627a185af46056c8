/**
 * Radiation between parallel grey walls against two printed examples. D. Q. Kern, Process Heat Transfer (1950), example 4.2:
 * walls at 1000 and 800 °F with emissivities 0.6 and 0.8 exchange 1825 Btu/(h·ft²). And the example of a public library of
 * engineering functions: 873.16 and 403.16 K, 0.19 and 0.76, 5638.04 W/m².
 *
 * Ours is a coefficient at the mean temperature; over a difference the fourth powers ask 1 + (ΔT/2T_m)² times it, exactly.
 */
import { expect, it } from "vitest";
import { radiationCoefficient } from "../../src/equations/cavity/radiation-coefficient.ts";

const W_PER_M2 = 3.154591;

function exchanged(
  [warmK, coldK]: readonly [number, number],
  emissivities: readonly [number, number],
): number {
  const meanK = (warmK + coldK) / 2;
  const difference = warmK - coldK;
  const coefficient = radiationCoefficient({
    meanC: meanK - 273.15,
    outerEmissivity: emissivities[0],
    innerEmissivity: emissivities[1],
  });
  return coefficient * difference * (1 + (difference / 2 / meanK) ** 2);
}

it("Kern: 1825 Btu/(h·ft²) with temperatures rounded to 1460 and 1260 °R", () => {
  const btu = exchanged([1460 / 1.8, 1260 / 1.8], [0.6, 0.8]) / W_PER_M2;
  // The book takes 0.173e-8 Btu/(h·ft²·R⁴), 0.9 % over today's constant, and prints four figures.
  expect(Math.abs(btu * (0.173 / 0.171344) - 1825)).toBeLessThan(2);
});

it("Kern: 3500 Btu/(h·ft²) between black walls of the same temperatures", () => {
  const btu = exchanged([1460 / 1.8, 1260 / 1.8], [1, 1]) / W_PER_M2;
  expect(Math.abs(btu * (0.173 / 0.171344) - 3500)).toBeLessThan(5);
});

it("aluminium and copper, oxidised: 5638 W/m²", () => {
  expect(Math.abs(exchanged([873.16, 403.16], [0.19, 0.76]) / 5638.04 - 1)).toBeLessThan(0.001);
});
