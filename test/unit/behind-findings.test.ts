/** Slivers beside ducts, the edge under the roof and battens on soft insulation: worked by hand; common practice. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import type { Interval } from "../../src/geometry/interval.ts";
import { readDocument } from "../../src/project/read.ts";

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function demo(code: string, edit: (document: Loose) => void = () => {}) {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  edit(document);
  const result = readDocument(document, "findings");
  if (!result.ok) throw new Error(JSON.stringify(result.findings));
  const { facade, findings } = design(result.project);
  return { facade, findings: findings.filter((one) => one.code === code) };
}

const west = (document: Loose): Loose => document.faces.find(({ id }: Loose) => id === "west");
const soft = (document: Loose): Loose[] =>
  document.buildUps.flatMap(({ layers }: Loose) => layers.filter(({ kind }: Loose) => kind === "insulation"));

describe("boards beside a duct", () => {
  it("are well on the demo, whose ducts lie where courses break", () => {
    expect(demo("S024").findings).toEqual([]);
  });

  it("are spared by another order of widths where one does it, and each of them says so with the order passed over", () => {
    const tap = { id: "T1", kind: "tap", x: 4200, y: 250, diameter: 40 };
    const edges: Interval = [250 - 20 - 10, 250 + 20 + 10];
    const leftOf = ({ facade }: ReturnType<typeof demo>): number[] =>
      (facade.rods[0]?.segments ?? []).flatMap(({ courses }) =>
        courses.flatMap(({ from, to, width }) =>
          edges[1] <= from || edges[0] >= to
            ? []
            : [edges[0] - from, to - edges[1]].filter((left) => left > 0 && left < 0.3333 * width),
        ),
      );
    const usual = demo("S024");
    const [least] = leftOf(usual);
    expect(least).toBeGreaterThan(0);
    const spared = demo("S024", (document) => {
      west(document).penetrations = [tap];
    });
    expect(leftOf(spared)).toEqual([]);
    expect(spared.findings).toEqual([]);
    expect(spared.facade.rods[0]?.segments.map(({ gap }) => gap)).toEqual(
      usual.facade.rods[0]?.segments.map(({ gap }) => gap),
    );
    const beside = spared.facade.faces[0]?.pieces.filter(
      ({ why }) => why.rule.key === "setout.why.course.no-sliver",
    );
    expect(beside?.length).toBeGreaterThan(0);
    for (const { why } of beside ?? [])
      expect(why.runnerUp).toMatchObject({ values: { of: "T1", left: least } });
  });

  it("are named where a strip is left whatever the order, with the nearest height that leaves none", () => {
    const courses = demo("S024").facade.rods[0]?.segments[0]?.courses ?? [];
    const course = courses.find(({ width }) => width === 126);
    if (!course) throw new Error("no course of 126");
    // A tap of 40 with 10 all round is 60 across: with its lower edge 12 over the course's, 12 of 126 are left.
    const y = Math.round((course.from + 12 + 30) * 1000) / 1000;
    const moved = demo("S024", (document) => {
      west(document).penetrations = [{ id: "T1", kind: "tap", x: 4200, y, diameter: 40 }];
    });
    expect(moved.findings).toMatchObject([{ outcome: "attention", unit: "mm" }]);
    expect(moved.findings[0]?.demand).toBeCloseTo(y - 30 - course.from, 2);
    expect(moved.findings[0]?.limit).toBeCloseTo(0.3333 * 126, 2);
    const edit = moved.findings[0]?.edit?.[0];
    expect(edit?.path).toBe("/faces/0/penetrations/0/y");
    const mended = demo("S024", (document) => {
      west(document).penetrations = [{ id: "T1", kind: "tap", x: 4200, y: edit?.value, diameter: 40 }];
    });
    expect(mended.findings).toEqual([]);
  });
});

describe("the edge under the roof", () => {
  it("stays open where the slot passes what the mesh does: 10 cm² in a metre for each millimetre", () => {
    const { findings } = demo("S025");
    const north = findings.find(({ where }) => where.face === "north");
    expect(north).toMatchObject({ outcome: "pass", demand: 200, unit: "cm²/m" });
    expect(north?.limit).toBeLessThanOrEqual(200);
  });

  it("is measured under the face's own eaves", () => {
    const { findings } = demo("S025", (document) => {
      document.faces.find(({ id }: Loose) => id === "north").eaves = { depth: 400, y: 2290 + 8 };
    });
    expect(findings.find(({ where }) => where.face === "north")).toMatchObject({
      outcome: "attention",
      demand: 80,
    });
  });

  it("cannot be told where neither is in the file", () => {
    const { findings } = demo("S025", (document) => {
      delete document.roof.topVentGap;
    });
    expect(findings.map(({ outcome }) => outcome)).toEqual(Array(findings.length).fill("cannot evaluate"));
    expect(findings.length).toBeGreaterThan(0);
  });
});

describe("battens on soft insulation", () => {
  it("sink by the pull of a screw, worked from the stress at a tenth", () => {
    const { facade, findings } = demo("S026");
    const said = findings.find(({ where }) => where.face === "west");
    const battens = facade.faces[0]?.pieces.filter(({ kind }) => kind === "batten") ?? [];
    const screws = battens.map(({ fixings }) => fixings.map(({ y }) => y)).filter((ys) => ys.length > 1);
    const length = screws.reduce((sum, ys) => sum + Math.max(...ys) - Math.min(...ys), 0);
    const spacing = length / screws.reduce((sum, ys) => sum + ys.length - 1, 0);
    // 20 kPa at 10 %: one millimetre of 51 takes 3.92 kPa, on 64 mm of batten for each screw.
    const pull = ((20e3 * (1 / 51)) / 0.1) * (64e-3 * spacing * 1e-3);
    expect(said?.outcome).toBe("attention");
    expect(Math.abs((said?.demand ?? 0) - pull)).toBeLessThan(1);
  });

  it("cannot be told without the stress", () => {
    const { findings } = demo("S026", (document) => {
      for (const layer of soft(document)) delete layer.stressAt10PercentKPa;
    });
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.every(({ outcome }) => outcome === "cannot evaluate")).toBe(true);
  });

  it("hold where something stiff carries them, and packers bear there", () => {
    const held = (how: string) => (document: Loose) => {
      for (const layer of soft(document)) layer.battensHeldBy = how;
    };
    expect(demo("S026", held("rigid strips")).findings.every(({ outcome }) => outcome === "pass")).toBe(true);
    expect(demo("S017").findings.length).toBeGreaterThan(0);
    expect(demo("S017", held("blocks")).findings).toEqual([]);
    expect(demo("S017", held("adjustable screws")).findings.length).toBeGreaterThan(0);
  });
});
