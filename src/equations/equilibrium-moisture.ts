/**
 * The moisture content that wood comes to in still air. It lies midway between wood that dries and wood that takes up
 * water; a tenth of a point has no meaning for one board.
 */
import { equation } from "./equation.ts";

export interface Air {
  /** Air temperature (°C). The table behind the equation spans −1.1 to 132.2 °C. */
  readonly temperatureC: number;
  /** Relative humidity (%), above 0 and under 100. The table spans 5 to 95 %. */
  readonly humidityPercent: number;
}

/** Equilibrium moisture content in percent of the dry mass. */
export function equilibriumMoisture({ temperatureC: t, humidityPercent }: Air): number {
  const h = humidityPercent / 100;
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = k * h;
  const hydrated = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
  return (1800 / w) * (kh / (1 - kh) + hydrated);
}

export const EQUILIBRIUM_MOISTURE = equation({
  name: "equilibrium-moisture",
  formula: "1800/W · [Kh/(1 − Kh) + (K1·Kh + 2·K1·K2·K²h²)/(1 + K1·Kh + K1·K2·K²h²)]",
  inputs: [
    { key: "temperatureC", unit: "°C", range: [-1.2, 132.3] },
    { key: "humidityPercent", unit: "%", range: [5, 95] },
  ],
  result: { unit: "%" },
  source: {
    document: "Wood Handbook, Forest Products Laboratory, FPL-GTR-282 (2021)",
    clause: "Equation 4-5",
  },
  work: equilibriumMoisture,
});
