/**
 * Cutting against published instances and their best known values.
 *
 * Sheets: Berkey & Wang, J. Operational Research Society 38 (1987) 423-429 (classes 1 to 6); Martello & Vigo, Management
 * Science 44 (1998) 388-399 (classes 7 to 10); best known values as listed for three-stage guillotine patterns.
 * Bars: Falkenauer, J. Heuristics 2 (1996) 5-30, with the values of the OR-Library (J. E. Beasley).
 *
 * The values are best known, not what is reached in so few steps: the ratios below are what was measured, rounded up.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { SawAnswer } from "../../src/cutting/index.ts";
import { saw } from "../../src/cutting/index.ts";

interface Instances {
  instances: { id: string; ref: Record<string, number> }[];
}

function load(name: string): Instances {
  return JSON.parse(readFileSync(new URL(`./fixtures/${name}.json`, import.meta.url), "utf8")) as Instances;
}

function compare(name: string, turn: boolean, key: string): { answers: SawAnswer[]; best: number[] } {
  const document = load(name);
  const { answers, problems } = saw(document, { turn });
  expect(problems).toEqual([]);
  expect(answers.map((answer) => answer.id)).toEqual(document.instances.map((one) => one.id));
  for (const answer of answers) {
    expect(answer.problems).toEqual([]);
    expect(answer.unplaced).toEqual([]);
  }
  return { answers, best: document.instances.map((one) => one.ref[key] ?? Number.NaN) };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

describe.each([
  { name: "cutting-classes", turn: false, key: "bestO3", ratio: 1.025 },
  { name: "cutting-classes", turn: true, key: "bestR3", ratio: 1.015 },
  { name: "cutting-bars", turn: false, key: "orlib", ratio: 1 },
])("$name, turned: $turn", ({ name, turn, key, ratio }) => {
  const { answers, best } = compare(name, turn, key);

  it("bounds no instance above its best known value", () => {
    answers.forEach((answer, index) => {
      expect(answer.bound, answer.id).toBeLessThanOrEqual(best[index]!);
      expect(answer.bound, answer.id).toBeGreaterThan(0.8 * best[index]!);
    });
  });

  it(`comes within ${ratio} of the best known values in all`, () => {
    expect(total(answers.map((answer) => answer.cost)) / total(best)).toBeLessThanOrEqual(ratio);
  });

  it("claims a proof only where the value is the best known or better", () => {
    answers.forEach((answer, index) => {
      if (answer.proven) expect(answer.cost, answer.id).toBeLessThanOrEqual(best[index]!);
    });
  });
});
