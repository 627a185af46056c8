/** The widths offered for the demo's pile: each makes the rod that it promises, and the list is ranked by rod and pile. */
import { describe, expect, it } from "vitest";
import { ripChoices } from "../../src/cutting/facade/rip-choice.ts";
import { design } from "../../src/design.ts";
import { bench } from "../helpers/cli.ts";
import { example } from "./cut-facade-examples.ts";

const { project, facade } = example("atelier-bouleau");
const DEMO = "atelier-bouleau.outerleaf.json";
const { demands } = design(project);
const [rod] = ripChoices(project, { demands, facade }, { from: 80, to: 130 });
if (!rod) throw new Error("the demo's rod takes from its pile");
const { choices } = rod;
/** Sums of fractions carry a little dust. */
const differ = (one: number, other: number): number => Math.round((one - other) * 1e6);
const spread = ({ gaps }: (typeof choices)[number]): number => gaps.most - gaps.least;

describe("rip widths of the demo", () => {
  it.each(choices.slice(0, 6))(
    "$widths: set out so, the rod has that many courses and those gaps",
    (choice) => {
      const claddings = project.claddings.map((one) =>
        one.id === rod.cladding && one.kind === "boards" ? { ...one, widths: [...choice.widths] } : one,
      );
      const segments = design({ ...project, claddings }).facade.rods[0]?.segments ?? [];
      const gaps = segments.map(({ gap }) => gap);
      expect(segments.reduce((sum, { courses }) => sum + courses.length, 0)).toBe(choice.courses);
      expect(Math.min(...gaps)).toBeCloseTo(choice.gaps.least, 3);
      expect(Math.max(...gaps)).toBeCloseTo(choice.gaps.most, 3);
    },
  );

  it("counts for each choice how many are better in both, and puts those of none first", () => {
    for (const one of choices) {
      const beats = choices.filter((other) => {
        const even = other.missedLines - one.missedLines || differ(spread(other), spread(one));
        const thrifty = differ(other.toBuyM2, one.toBuyM2) || differ(one.leftM2, other.leftM2);
        return even <= 0 && thrifty <= 0 && (even < 0 || thrifty < 0);
      });
      expect(one.beatenBy, String(one.widths)).toBe(beats.length);
    }
    expect(choices.map(({ beatenBy }) => beatenBy)).toEqual(
      choices.map(({ beatenBy }) => beatenBy).sort((a, b) => a - b),
    );
    expect(choices[0]?.beatenBy).toBe(0);
  });

  it("asks with the present widths for the pieces that the facade has", () => {
    const present = choices.filter((one) => one.present);
    expect(present).toHaveLength(1);
    expect(present[0]?.edit).toEqual([]);
    const wanted = (present[0]?.pieces ?? []).map(({ had, short }) => had + short);
    const zones = facade.rods[0]?.zones ?? [];
    const laid = facade.faces
      .flatMap((face) => face.pieces)
      .filter(
        ({ kind, face, zone }) =>
          kind === "board" && zones.some((one) => one.face === face && one.zone === zone),
      );
    const total = laid.reduce((sum, { cut }) => sum + cut.length, 0);
    // Widths take turns otherwise than the rod lays them, so lengths agree in all and not one by one.
    expect(wanted.reduce((sum, one) => sum + one, 0)).toBeCloseTo(total, 3);
  });

  it("yields of every width, for a plot, reach the best alone", () => {
    expect(rod.curve.map(({ widths }) => widths[0])).toEqual(Array.from({ length: 51 }, (_, at) => 80 + at));
    expect(Math.max(...rod.curve.map((one) => one.yield))).toBeCloseTo(rod.best[0]?.yield ?? 0, 12);
  });

  it("an edit of the list makes the widths the project's", async () => {
    const desk = bench();
    const { out } = await desk.run("rips", DEMO, "--narrowest", "90", "--widest", "120", "--json");
    const [first] = JSON.parse(out).rods[0].choices as { widths: number[]; edit: unknown[] }[];
    desk.write("patch.json", first?.edit);
    const cut = JSON.parse((await desk.run("cut", DEMO, "--edit", "patch.json", "--json")).out);
    const widths = new Set(
      cut.rips.supply
        .filter(({ cladding }: { cladding: string }) => cladding === rod.cladding)
        .map(({ width }: { width: number }) => width),
    );
    expect([...(first?.widths ?? [])].every((width) => widths.has(width))).toBe(true);
    desk.clear();
  });

  it("a range that ends before it begins is refused", async () => {
    const desk = bench();
    const { exit, err } = await desk.run("rips", DEMO, "--narrowest", "130", "--widest", "90");
    expect(exit).toBe(2);
    expect(err).toContain("--narrowest 130");
    desk.clear();
  });
});

it("a project without a pile has none", () => {
  const { pile: _, ...bare } = project;
  expect(ripChoices(bare, { demands, facade }, { from: 80, to: 130 })).toEqual([]);
});
