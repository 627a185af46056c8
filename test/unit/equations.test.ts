/** Every equation's record stands beside its function, and no two like inputs can be swapped without the result showing it. */
import { describe, expect, it } from "vitest";
import { changeByShrinkage } from "../../src/equations/change-by-shrinkage.ts";
import type { Equation } from "../../src/equations/equation.ts";
import { equilibriumMoisture } from "../../src/equations/equilibrium-moisture.ts";
import { EQUATIONS } from "../../src/equations/index.ts";
import { AIR_ALIKE } from "../helpers/equation-samples.ts";
import { LIGHT_ALIKE } from "../helpers/light-samples.ts";
import { SAMPLES } from "../helpers/samples.ts";
import { STRUCTURE_ALIKE } from "../helpers/structure-samples.ts";

/**
 * Pairs of one unit that a sum treats alike: it does not care which of two is which, so no test can tell them apart and no
 * swap can do harm.
 */
const ALIKE: Readonly<Record<string, readonly string[]>> = {
  "joint-width-arithmetic": [
    "heatMm moistureMm",
    "heatMm sizeToleranceMm",
    "heatMm placeToleranceMm",
    "heatMm leastMm",
    "moistureMm sizeToleranceMm",
    "moistureMm placeToleranceMm",
    "moistureMm leastMm",
    "sizeToleranceMm placeToleranceMm",
    "sizeToleranceMm leastMm",
    "placeToleranceMm leastMm",
  ],
  "joint-width-root-sum-square": [
    "heatMm moistureMm",
    "heatMm leastMm",
    "moistureMm leastMm",
    "sizeToleranceMm placeToleranceMm",
  ],
  "net-vent-area": ["freeShare cleanShare"],
  ...AIR_ALIKE,
  ...LIGHT_ALIKE,
  ...STRUCTURE_ALIKE,
};

/** The pairs of inputs that share a unit and so can be mistaken for each other. */
function likeTyped({ inputs }: Equation): [string, string][] {
  return inputs.flatMap((a, i) =>
    inputs
      .slice(i + 1)
      .filter((b) => b.unit === a.unit)
      .map((b): [string, string] => [a.key, b.key]),
  );
}

/** The result, or undefined where the inputs leave the range. */
function worked(equation: Equation, inputs: Readonly<Record<string, number>>): number | undefined {
  const result = equation.reckon(inputs);
  return result.ok ? result.value : undefined;
}

it("names are words joined by hyphens and stand once", () => {
  const names = EQUATIONS.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
  expect(Object.keys(SAMPLES).sort()).toEqual([...names].sort());
});

describe.each(EQUATIONS.map((equation) => [equation.name, equation] as const))("%s", (name, equation) => {
  const sample = SAMPLES[name] ?? {};
  const value = worked(equation, sample);

  it("has units, ordered ranges and a source, and works on a sample in range", () => {
    for (const { key, unit, range } of equation.inputs) {
      expect(equation.formula.includes(key) || name === "equilibrium-moisture").toBe(true);
      expect(unit).not.toBe("");
      expect(range[0]).toBeLessThan(range[1]);
    }
    expect(equation.source.document).not.toBe("");
    expect(Number.isFinite(value)).toBe(true);
  });

  it("a swap of two inputs of one unit changes the result or leaves the range", () => {
    const unnoticed = likeTyped(equation)
      .filter(([a, b]) => {
        const swapped = worked(equation, { ...sample, [a]: sample[b] ?? 0, [b]: sample[a] ?? 0 });
        return swapped !== undefined && Math.abs(swapped - (value ?? 0)) < 1e-9;
      })
      .map((pair) => pair.join(" "));
    expect(unnoticed).toEqual(ALIKE[name] ?? []);
  });

  it("says which inputs are missing and which are out of range", () => {
    const [first] = equation.inputs;
    expect(equation.reckon({})).toEqual({
      ok: false,
      missing: equation.inputs.map(({ key }) => key),
      outside: [],
    });
    expect(equation.reckon({ ...sample, [first?.key ?? ""]: (first?.range[0] ?? 0) - 1 })).toEqual({
      ok: false,
      missing: [],
      outside: [first?.key],
    });
  });
});

describe("own results, so that a change is seen (not published values)", () => {
  it.each([
    [-20, 80, 15.9382],
    [-10, 85, 18.3838],
    [0, 85, 18.5149],
    [5, 85, 18.4695],
    [10, 70, 13.4257],
    [20, 50, 9.2711],
    [20, 65, 11.9963],
    [20, 75, 14.4509],
    [20, 85, 18.0024],
    [20, 95, 23.9415],
    [25, 40, 7.6082],
    [30, 60, 10.6397],
  ])("moisture at %d °C and %d %%", (temperatureC, humidityPercent, percent) => {
    expect(equilibriumMoisture({ temperatureC, humidityPercent })).toBeCloseTo(percent, 4);
  });

  it("a board that dries shrinks", () => {
    const board = {
      widthMm: 100,
      shrinkagePercent: 8,
      saturationPercent: 30,
      fromPercent: 20,
      toPercent: 10,
    };
    expect(changeByShrinkage(board)).toBeLessThan(0);
  });
});
