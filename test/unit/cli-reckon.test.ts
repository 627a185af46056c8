/** Every equation is reached by its name on the command line, its inputs listed with their units. */
import { afterAll, describe, expect, it } from "vitest";
import { EQUATIONS } from "../../src/equations/index.ts";
import { bench } from "../helpers/cli.ts";
import { SAMPLES } from "../helpers/samples.ts";

const desk = bench();
afterAll(() => desk.clear());

describe.each(EQUATIONS.map((equation) => [equation.name, equation] as const))("%s", (name, equation) => {
  const sample = SAMPLES[name] ?? {};
  const typed = Object.entries(sample).map(([key, value]) => `${key}=${value}`);

  it("is worked with its inputs, each with its unit", async () => {
    const { exit, out } = await desk.run("reckon", name, ...typed);
    expect(exit).toBe(0);
    for (const { key, unit } of equation.inputs) {
      expect(out).toContain(`    ${key} = ${String(sample[key]).replace("-", "−")} [${unit}]`);
    }
    expect(out).toContain(`${name} [${equation.result.unit}]`);
    expect(out).toContain(equation.source.document);
    const json = JSON.parse((await desk.run("reckon", name, ...typed, "--json")).out);
    const reckoned = equation.reckon(sample);
    expect(json.result).toEqual({
      unit: equation.result.unit,
      value: reckoned.ok ? reckoned.value : Number.NaN,
    });
  });

  it("asked without numbers, tells which it wants and in which units", async () => {
    const { exit, err } = await desk.run("reckon", name);
    expect(exit).toBe(2);
    for (const { key, unit } of equation.inputs) expect(err).toContain(`${key} [${unit}]`);
  });
});

it("the list holds them all", async () => {
  const { out } = await desk.run("reckon");
  for (const { name, inputs } of EQUATIONS) {
    expect(out).toContain(`${name} [`);
    for (const { key, unit } of inputs) expect(out).toContain(`    ${key} [${unit}] `);
  }
});
