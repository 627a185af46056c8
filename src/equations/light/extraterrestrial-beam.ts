/** Sunlight outside the air, by the day: the earth is nearest to the sun in January. */
import { equation } from "../equation.ts";

const SOLAR_CONSTANT = 1367;

/** W/m² across the beam. @param dayOfYear 1 is the first of January */
export function extraterrestrialBeam({ dayOfYear }: { readonly dayOfYear: number }): number {
  const x = (2 * Math.PI * (dayOfYear - 1)) / 365;
  return (
    SOLAR_CONSTANT *
    (1.00011 +
      0.034221 * Math.cos(x) +
      0.00128 * Math.sin(x) +
      0.000719 * Math.cos(2 * x) +
      0.000077 * Math.sin(2 * x))
  );
}

export const EXTRATERRESTRIAL_BEAM = equation({
  name: "extraterrestrial-beam",
  formula:
    "1367 · (1.00011 + 0.034221 cos x + 0.00128 sin x + 0.000719 cos 2x + 0.000077 sin 2x), x = 2π · (dayOfYear − 1)/365",
  inputs: [{ key: "dayOfYear", unit: "d", range: [1, 366] }],
  result: { unit: "W/m²" },
  source: { document: "Spencer, Search 2 (1971), as used in Bird and Hulstrom, SERI/TR-642-761 (1981)" },
  work: extraterrestrialBeam,
});
