/**
 * Sunlight outside the air, by the day: the earth is nearest to the sun in January. The solar constant is an input, for it has
 * been measured again: 1367 W/m² in the source and in Bird and Hulstrom's sheet, about 1361 by later satellites.
 */
import { equation } from "../equation.ts";

export interface SunOfDay {
  /** 1 is the first of January. */
  readonly dayOfYear: number;
  /** Sunlight at the earth's mean distance (W/m²). */
  readonly solarConstantWPerM2: number;
}

/** W/m² across the beam. */
export function extraterrestrialBeam({ dayOfYear, solarConstantWPerM2 }: SunOfDay): number {
  const x = (2 * Math.PI * (dayOfYear - 1)) / 365;
  return (
    solarConstantWPerM2 *
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
    "solarConstantWPerM2 · (1.00011 + 0.034221 cos x + 0.00128 sin x + 0.000719 cos 2x + 0.000077 sin 2x), x = 2π · (dayOfYear − 1)/365",
  inputs: [
    { key: "dayOfYear", unit: "d", range: [1, 366] },
    { key: "solarConstantWPerM2", unit: "W/m²", range: [1340, 1400] },
  ],
  result: { unit: "W/m²" },
  source: { document: "Spencer, Search 2 (1971), as used in Bird and Hulstrom, SERI/TR-642-761 (1981)" },
  work: extraterrestrialBeam,
});
