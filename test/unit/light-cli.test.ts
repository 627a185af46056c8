/** `outerleaf prove --weather`: a year of weather in place of clear skies, and what is refused. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { bench } from "../helpers/cli.ts";
import { clearEpw } from "../helpers/epw.ts";

const DEMO = "atelier-bouleau.outerleaf.json";
const desk = bench();
afterAll(() => desk.clear());

const EPW = clearEpw();

function weatherFile(name: string, text: string): string {
  const path = join(desk.folder, name);
  writeFileSync(path, text);
  return path;
}

interface Said {
  readonly code: string;
  readonly says: string;
  readonly demand?: number;
}

async function doses(...options: string[]): Promise<Said[]> {
  const { out } = await desk.run("prove", DEMO, "--json", "--language", "en", ...options);
  return (JSON.parse(out) as { findings: Said[] }).findings.filter(({ code }) => code === "P021");
}

describe("prove --weather", () => {
  it("takes the light from the file and says so", async () => {
    const clear = await doses();
    const weather = await doses("--weather", weatherFile("clear.epw", EPW));
    expect(clear.length).toBeGreaterThan(0);
    expect(weather.length).toBe(clear.length);
    for (const { says } of weather) expect(says).toContain("by the weather file");
    for (const { says } of clear) expect(says).toContain("clear skies");
    const most = (found: Said[]): number => Math.max(...found.map(({ demand }) => demand ?? 0));
    // The file is a clear year: little changes but where the light is said to come from.
    expect(Math.abs(most(weather) / most(clear) - 1)).toBeLessThan(0.05);
  });

  it("half the light in the file is half the dose", async () => {
    const halved = clearEpw((cells) =>
      cells.map((cell, i) => (i >= 13 && i <= 15 ? String(Number(cell) / 2) : cell)),
    );
    const [whole, half] = await Promise.all(
      [EPW, halved].map(async (text, i) => await doses("--weather", weatherFile(`${i}.epw`, text))),
    );
    const sum = (found: Said[] = []): number => found.reduce((total, { demand = 0 }) => total + demand, 0);
    expect(sum(half) / sum(whole)).toBeCloseTo(0.5, 2);
  });

  it.each([
    ["no weather", "a,b,c", "cannot be used as a year of weather"],
    ["a far place", EPW.replace(",46.8,-71.4,", ",10.0,-71.4,"), "too far from"],
  ])("is refused: %s", async (_, text, word) => {
    const { exit, out, err } = await desk.run(
      "prove",
      DEMO,
      "--language",
      "en",
      "--weather",
      weatherFile("bad.epw", text),
    );
    expect({ exit, out }).toEqual({ exit: 2, out: "" });
    expect(err).toContain(word);
  });

  it("is refused where the file is not there", async () => {
    const { exit } = await desk.run("prove", DEMO, "--weather", join(desk.folder, "nowhere.epw"));
    expect(exit).toBe(2);
  });
});
