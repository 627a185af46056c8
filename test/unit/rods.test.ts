/** What a rod of the project file becomes: its lines, its ripped boards, its season, its runner-up. Common practice. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { solveRod } from "../../src/setout/rod/index.ts";
import { gapSwing } from "../../src/setout/storey/season.ts";
import { settingOf } from "../../src/setout/storey/task.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { readAs, rodOf, rodZonesOf } from "./rods-harness.ts";

interface Demo {
  claddings: { kind: string; widths: number[]; gapBand: number[]; maxEqualWidthsTouching?: number }[];
  faces: { id: string; openings: object[]; penetrations: object[] }[];
  rods: { rips?: { segment: number; width: number }[] }[];
}

function demo(change: (document: Demo) => void = () => undefined): Demo {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8")) as Demo;
  change(document);
  return document;
}

const boardsOf = (document: Demo) => document.claddings.find(({ kind }) => kind === "boards")!;
const widthsIn = (segments: readonly { courses: readonly { width: number }[] }[]) =>
  segments.map(({ courses }) => courses.map(({ width }) => width));

describe("ripped boards of the file", () => {
  it("are laid once, in their segment alone, and the rest still fills it", () => {
    // 950 = 70 + 2 x 94 + 5 x 126 + 7 x 8.857.
    const { rod, findings } = rodOf(
      readAs(demo(({ rods }) => (rods[0]!.rips = [{ segment: 1, width: 70 }]))),
      false,
    );
    const [first, ...others] = widthsIn(rod.segments);
    expect(first!.filter((width) => width === 70)).toHaveLength(1);
    expect(others.flat()).not.toContain(70);
    const sum = first!.reduce((total, width) => total + width, 0);
    expect(sum + rod.segments[0]!.gap * (first!.length - 1)).toBeCloseTo(950, 9);
    expect([...first!].sort((a, b) => a - b)).toEqual([70, 94, 94, 126, 126, 126, 126, 126]);
    expect(findings.some(({ outcome }) => outcome === "fail")).toBe(false);
  });

  it("say on every piece of their course that they are ripped, and to what", () => {
    const { facade } = design(readAs(demo(({ rods }) => (rods[0]!.rips = [{ segment: 1, width: 70 }]))));
    const boards = facade.faces.flatMap(({ pieces }) => pieces.filter(({ kind }) => kind === "board"));
    const ripped = boards.filter(({ why }) => why.rule.key === "setout.why.course.ripped");
    expect(ripped.length).toBeGreaterThan(0);
    for (const { why } of ripped) expect(why.rule.values.width).toBe(70);
    const course = facade.rods[0]?.segments[0]?.courses.find(({ width }) => width === 70)?.number;
    expect(new Set(ripped.map((piece) => piece.course))).toEqual(new Set([course]));
  });

  it.each([
    ["setout.rod.rip.no-segment", [{ segment: 4, width: 70 }], 0],
    [
      "setout.rod.rip.segment-twice",
      [
        { segment: 1, width: 70 },
        { segment: 1, width: 71 },
      ],
      1,
    ],
    ["setout.rod.rip.regular-width", [{ segment: 2, width: 94 }], 0],
  ])("that cannot be laid are named (%s), and taking them out changes nothing drawn", (key, rips, index) => {
    const document = demo(({ rods }) => (rods[0]!.rips = rips));
    const { rod, findings } = rodOf(readAs(document), false);
    const told = findings.filter(({ outcome }) => outcome === "fail");
    expect(told.map(({ says, where }) => [says.key, where.path])).toEqual([[key, `/rods/0/rips/${index}`]]);
    const patched = applyPatch(document, told[0]!.edit);
    expect(patched.ok && rodOf(readAs(patched.document), false).rod).toEqual(rod);
  });
});

describe("more secondary lines than the search takes on", () => {
  // 40 small windows on the following face, one beside the other: 40 sills and 40 heads, each at a height of its own.
  const document = demo(({ faces }) => {
    const west = faces.find(({ id }) => id === "west")!;
    west.penetrations = [];
    west.openings = Array.from({ length: 40 }, (_, i) => ({
      id: `S${i}`,
      kind: "window",
      x: [40 + i * 110, 100 + i * 110],
      y: [103 + i * 9, 1001 + i * 17],
    }));
  });
  const project = readAs(document);
  const setting = settingOf({
    project,
    spec: project.rods![0]!,
    zones: rodZonesOf(project, 0),
    gapBand: [6, 12],
    season: undefined,
  });
  const { rod, findings } = rodOf(project, false);

  it("keeps 64 of them: heads before sills, then the lower ones", () => {
    const { secondary, leftOut } = setting.lines;
    expect(secondary).toHaveLength(64);
    expect(secondary.filter(({ kind }) => kind === "head")).toHaveLength(40);
    expect(leftOut.every(({ kind }) => kind === "sill")).toBe(true);
    const lowest = Math.min(...leftOut.map(({ at }) => at));
    expect(secondary.every(({ kind, at }) => kind === "head" || at < lowest)).toBe(true);
    expect(leftOut).toHaveLength(16);
  });

  it("solves the rod and names those it misses, left out or not", () => {
    expect(findings.find(({ code }) => code === "S001")?.outcome).toBe("pass");
    const edges = rod.segments.flatMap(({ courses }) => courses.map(({ to }) => to));
    const missed = findings.filter(({ code }) => code === "S002");
    const met = (at: number, tolerance: number): boolean =>
      edges.some((edge) => edge <= at + 1e-9 && edge >= at - tolerance - 1e-9);
    const expected = [...setting.lines.secondary, ...setting.lines.leftOut]
      .filter(({ at, kind }) => !met(at, kind === "head" ? 6 : 2))
      .map(({ id }) => id);
    expect(missed.map(({ says }) => says.values.line).sort()).toEqual(expected.sort());
    expect(missed.map(({ says }) => says.key)).toContain("setout.rod.missed.left-out");
    expect(rod.missedLines.map(({ line }) => line)).toEqual(missed.map(({ says }) => says.values.line));
  });
});

describe("the season", () => {
  const season = { wettestMm: -0.02, driestMm: 0.015, basis: "given" } as const;

  it("narrows the band by the widest board, and the rod keeps within it all year", () => {
    // 126 x 0.02 = 2.52 and 126 x 0.015 = 1.89: of 6 to 12 there are left 8.52 to 10.11.
    const project = readAs(demo());
    const { rod, findings } = rodOf(project, season);
    for (const { gap } of rod.segments) {
      expect(gap).toBeGreaterThanOrEqual(8.52);
      expect(gap).toBeLessThanOrEqual(10.11);
    }
    expect(findings.some(({ says }) => says.key === "setout.rod.season")).toBe(false);
  });

  it("takes the best rod of the narrower band, not the best of the given one", () => {
    // The best at fixing has a gap of 6.25, which 126 x 0.006 = 0.756 takes below 6 in the wettest month.
    const mild = { wettestMm: -0.006, driestMm: 0.004, basis: "given" } as const;
    const project = readAs(
      demo((document) => {
        boardsOf(document).widths = [87, 126];
      }),
    );
    const zones = rodZonesOf(project, 0);
    const setting = settingOf({ project, spec: project.rods![0]!, zones, gapBand: [6, 12], season: mild });
    const best = solveRod({ ...setting.problem, gapBand: setting.yearBand! });
    const unaware = solveRod(setting.problem);
    if (best.kind !== "solved" || unaware.kind !== "solved") throw new Error("expected rods");
    const { rod } = rodOf(project, mild);
    expect(widthsIn(rod.segments)).toEqual(widthsIn(best.best.segments));
    expect(widthsIn(rod.segments)).not.toEqual(widthsIn(unaware.best.segments));
    const { closes, opens } = gapSwing(mild, 126);
    const gaps = rod.segments.map(({ gap }) => gap);
    expect(Math.min(...gaps) + closes).toBeGreaterThanOrEqual(6);
    expect(Math.max(...gaps) + opens).toBeLessThanOrEqual(12);
  });

  it("gives way where no rod keeps the band all year, and says how far the year goes", () => {
    // 126 x 0.03 = 3.78 each way leaves nothing of 6 to 12.
    const wild = { wettestMm: -0.03, driestMm: 0.03, basis: "given" } as const;
    const project = readAs(demo());
    const { rod, findings } = rodOf(project, wild);
    expect(rod).toEqual(rodOf(project, false).rod);
    const told = findings.find(({ says }) => says.key === "setout.rod.season")!;
    expect(told.outcome).toBe("attention");
    // Gaps of 9 and 10 at fixing.
    expect(told.says.values.narrowest).toBeCloseTo(9 - 3.78, 9);
    expect(told.says.values.broadest).toBeCloseTo(10 + 3.78, 9);
    expect([told.demand, told.limit]).toEqual([13.78, 12]);
    expect(told.working?.substituted).toBe("9.00 − 3.78 = 5.22; 10.00 + 3.78 = 13.78");
  });

  it("leaves the band alone where boards are fixed wetter than they ever get again, but for what they shrink", () => {
    const project = readAs(demo());
    const zones = rodZonesOf(project, 0);
    const drying = { wettestMm: 0.004, driestMm: 0.01, basis: "given" } as const;
    const { yearBand } = settingOf({
      project,
      spec: project.rods![0]!,
      zones,
      gapBand: [6, 12],
      season: drying,
    });
    expect(yearBand).toEqual([6, 10.74]);
  });
});

describe("the runner-up", () => {
  it("is the next best rod, with the first thing in which it is worse", () => {
    const project = readAs(demo());
    const setting = settingOf({
      project,
      spec: project.rods![0]!,
      zones: rodZonesOf(project, 0),
      gapBand: [6, 12],
      season: undefined,
    });
    const outcome = solveRod(setting.problem);
    if (outcome.kind !== "solved") throw new Error("expected a rod");
    const [next] = outcome.alternatives;
    const { runnerUp } = rodOf(project, false);
    const counts = next!.segments
      .map((segment) =>
        segment.counts.flatMap(({ width, count }) => (count > 0 ? `${count}×${width}` : [])).join(" + "),
      )
      .join(" / ");
    expect(runnerUp?.values.counts).toBe(counts);
    expect(say(runnerUp!, ENGLISH_MM)).toBe(
      "next best counts 4×94 + 4×126 / 4×94 + 6×126 / 2×94 + 5×126: gaps 1 mm further in all from the middle of the band",
    );
  });

  it("is silent where there is no other rod", () => {
    const project = readAs(
      demo((document) => {
        Object.assign(boardsOf(document), { widths: [94, 126], gapBand: [9, 9] });
        delete boardsOf(document).maxEqualWidthsTouching;
      }),
    );
    expect(rodOf(project, false).runnerUp).toBeUndefined();
  });
});

describe("a rod too long for the exact search", () => {
  it("is shown, neither proven possible nor impossible, and says what would help", () => {
    // 1222 holds more than 400 boards of 2.5.
    const { rod, findings } = rodOf(
      readAs(demo((document) => Object.assign(boardsOf(document), { widths: [2.5], gapBand: [0, 1] }))),
      false,
    );
    const told = findings.filter(({ code }) => code === "S001");
    expect(told.map(({ outcome, says, hint }) => [outcome, says.key, hint?.key])).toEqual([
      ["cannot evaluate", "setout.rod.too-large", "setout.rod.too-large.hint"],
    ]);
    expect(rod.segments.map(({ from, to }) => [from, to])).toEqual([
      [-50, 900],
      [900, 2122],
      [2122, 3010],
    ]);
  });
});
