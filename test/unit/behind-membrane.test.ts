/** Strips of the membrane, counted by hand on the demo; the laps are those that P043 compares with NHBC 6.2.13. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { design } from "../../src/design.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { readDocument } from "../../src/project/read.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function demo(edit: (document: Loose) => void = () => {}) {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  edit(document);
  const result = readDocument(document, "membrane");
  if (!result.ok) throw new Error(JSON.stringify(result.findings));
  const { facade, findings } = design(result.project);
  const strips = facade.faces.flatMap(({ pieces }) =>
    pieces.filter(({ kind, profile }) => kind === "membrane" && !profile),
  );
  return {
    project: result.project,
    facade,
    strips,
    of: (mark: string) => strips.find((one) => one.mark === mark),
    findings: findings.filter(({ code }) => code === "S020"),
  };
}

const membranes = (document: Loose): Loose[] =>
  document.buildUps.flatMap(({ layers }: Loose) => layers.filter(({ kind }: Loose) => kind === "membrane"));

describe("the membrane's strips", () => {
  const made = demo();

  it("lie level from the base up, each lapped over the one below", () => {
    // 1500 mm of roll with laps of 150: rows start at −50, 1300 and 2650.
    const rows = ["F-M1", "F-M2", "F-M3"].map((mark) => polygonBounds(made.of(mark)?.outline ?? []).y);
    expect(rows).toEqual([
      [-50, 1450],
      [1300, 2800],
      [2650, 3010],
    ]);
  });

  it("run round an outside corner, past the neighbour's insulation and on by the upright lap", () => {
    // The west wall is 4800 long; the front's wool is 51 thick: 4851, and 150 onto the front.
    expect(polygonBounds(made.of("W-M1")?.outline ?? []).x).toEqual([0, 4851]);
    expect(made.of("W-M1")?.cut).toEqual({ length: 5001, width: 1500, thickness: 0 });
  });

  it("stop where an opening cuts them through, and leave it out where it does not", () => {
    expect(["E-M1a", "E-M1b"].map((mark) => polygonBounds(made.of(mark)?.outline ?? []).x)).toEqual([
      [-51, 1650],
      [3150, 4800],
    ]);
    expect(made.of("W-M2")?.holes).toHaveLength(1);
  });

  it("lie in the membrane's plane and have no thickness there", () => {
    expect(made.of("W-M1")?.z).toEqual([51, 51]);
    expect(made.of("N-M1")?.z).toEqual([0, 0]);
  });

  it("rest on a typical roll until the file names one", () => {
    expect(made.findings.every(({ outcome, provisional }) => outcome === "pass" && provisional)).toBe(true);
    const named = demo((document) => {
      for (const layer of membranes(document)) layer.roll = { width: 3000, length: 50_000 };
    });
    expect(named.findings.some(({ provisional }) => provisional)).toBe(false);
    expect(named.of("F-M2")?.cut.width).toBe(3010 - (2950 - 150));
  });

  it("lap upright where the roll is shorter than the wall, in equal lengths", () => {
    const short = demo((document) => {
      for (const layer of membranes(document)) layer.roll = { width: 1500, length: 4000 };
    });
    // 7251 on the north and 150 round the corner: two of (7401 + 150) / 2.
    expect([short.of("N-M1a"), short.of("N-M1b")].map((one) => one?.cut.length)).toEqual([3775.5, 3775.5]);
  });

  it("are refused where the laps eat the roll, and not laid where laps are not known", () => {
    const eaten = demo((document) => {
      for (const layer of membranes(document)) layer.roll = { width: 150, length: 50_000 };
    });
    expect(eaten.strips).toEqual([]);
    expect(eaten.findings.length).toBeGreaterThan(0);
    expect(eaten.findings.every(({ outcome }) => outcome === "fail")).toBe(true);
    const unknown = demo((document) => {
      for (const layer of membranes(document)) delete layer.laps;
    });
    expect(unknown.strips).toEqual([]);
    expect(unknown.findings).toEqual([]);
  });

  it("are ordered by the roll that they take", () => {
    const { order } = takeOff(made.project, made.facade, cutFacade(made.project, made.facade).plan);
    const line = order.lines.find(({ item }) => item.key === "schedule.order.membrane-roll");
    const metres = made.strips.reduce((sum, { cut }) => sum + cut.length, 0) / 1000;
    expect(line?.needed).toBeCloseTo(metres * 1.5, 6);
  });
});
