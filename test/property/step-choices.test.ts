/** Where zones stand apart: every edit that the step's finding offers, put into the file, read and set out again. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import type { Finding, PatchOperation } from "../../src/findings/finding.ts";
import { applyPatch } from "../../src/project/edit.ts";
import type { ProjectDocument } from "../../src/project/schema/project.ts";
import { planeGroups, searchPlanes } from "../../src/setout/plane-search/index.ts";
import { setOut } from "../../src/setout/set-out.ts";
import { type StepChoicesRequest, stepChoices } from "../../src/setout/step-choices.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { exampleDocument, projectOf } from "../helpers/plane-search.ts";

const SOAK = process.env.OUTERLEAF_SOAK !== undefined;

function laidOut(document: unknown): StepChoicesRequest {
  const project = projectOf(document);
  const demands = demandsOf(project);
  return { project, demands, facade: setOut(project, demands) };
}

function applied(document: unknown, edit: readonly PatchOperation[]): unknown {
  const patched = applyPatch(document, edit);
  if (!patched.ok) throw new Error(`refused: ${JSON.stringify(patched.findings[0])}`);
  return patched.document;
}

/** Puts each choice of a finding in, and gives back how many there were. */
function held(document: unknown, before: StepChoicesRequest, found: Finding): number {
  const { findings } = before.facade;
  const unsettled = new Set(findings.filter(({ outcome }) => !SETTLED.includes(outcome)).map(placeOf));
  const passed = new Set(findings.map(placeOf).filter((place) => !unsettled.has(place)));
  const blocked = new Set(findings.filter(blocks).map(placeOf));
  const choices = found.choices ?? [];
  expect([found.hint, found.edit, found.outcome]).toEqual([choices[0]?.says, choices[0]?.edit, "fail"]);
  expect(choices.length).toBeLessThanOrEqual(3);
  for (const { says, edit = [] } of choices) {
    expect(say(says, ENGLISH_MM)).not.toMatch(/[[\]]|undefined/);
    // The slot under the roof stays what it was; a deeper cavity only asks more of it.
    const after = laidOut(applied(document, edit)).facade.findings.filter(({ code }) => code !== "S025");
    const step = after.filter((one) => placeOf(one) === placeOf(found));
    expect(step.map(({ outcome }) => outcome)).toEqual(["pass"]);
    const broken = after.filter(
      (one) =>
        (passed.has(placeOf(one)) && !SETTLED.includes(one.outcome)) ||
        (blocks(one) && !blocked.has(placeOf(one))),
    );
    expect({ edit, broken }).toEqual({ edit, broken: [] });
  }
  return choices.length;
}

const SETTLED: readonly Finding["outcome"][] = ["pass", "not applicable"];
const failsStep = ({ code, outcome }: Finding): boolean => code === "S007" && outcome === "fail";
const blocks = ({ outcome }: Finding): boolean => outcome === "fail" || outcome === "cannot evaluate";
const placeOf = ({ code, where: { face, zone, opening, path } }: Finding): string =>
  [code, face ?? path, zone, opening].join(" ");

/** What leaves the front of a house in two planes, more often than not. */
const spoiling = fc.record({
  name: fc.constantFrom("atelier-bouleau", "imperial"),
  // Thicker ones than these no screw of the examples' stock holds, whatever stands behind them.
  boards: fc.integer({ min: 28, max: 44 }).map((half) => half / 2),
  sheets: fc.integer({ min: 6, max: 14 }),
  packed: fc.boolean(),
  thickBattens: fc.boolean(),
});

interface Spoiling {
  readonly name: string;
  readonly boards: number;
  readonly sheets: number;
  readonly packed: boolean;
  readonly thickBattens: boolean;
}

function spoilt({ name, boards, sheets, packed, thickBattens }: Spoiling): ProjectDocument {
  const document = exampleDocument(name);
  for (const one of document.claddings) one.thickness = one.kind === "boards" ? boards : sheets;
  const { battens } = projectOf(document).stock;
  const [thickest] = [...battens].sort((a, b) => b.thickness - a.thickness);
  for (const buildUp of document.buildUps) {
    if (!packed) buildUp.layers = buildUp.layers.filter(({ kind }) => kind !== "packer");
  }
  for (const layer of document.buildUps[0]?.layers ?? [])
    if (thickBattens && layer.kind === "batten") layer.stock = thickest!.id;
  return document;
}

describe("a step between planes", () => {
  it("is offered what mends it and breaks nothing", () => {
    let offers = 0;
    fc.assert(
      fc.property(spoiling, (how) => {
        const document = spoilt(how);
        const before = laidOut(document);
        const failing = before.facade.findings.filter(failsStep);
        fc.pre(failing.length > 0);
        const choices = stepChoices(before);
        expect([...choices.keys()].filter((one) => !failing.includes(one))).toEqual([]);
        for (const found of choices.values()) {
          if (found.choices) offers += held(document, before, found);
          else expect(found).toMatchObject({ outcome: "fail", hint: { key: /^planes\.none\./ } });
        }
      }),
      { seed: 7, numRuns: SOAK ? 150 : 12 },
    );
    expect(offers).toBeGreaterThan(SOAK ? 100 : 5);
  });

  it("is offered the first of what the plane search passes, without what the set-out wall refuses", () => {
    // Boards of 18 on the imperial house: deeper battens bring a corner's end batten too near its sheet's edge (S010).
    const how = { boards: 18, sheets: 8, packed: true, thickBattens: false };
    const document = spoilt({ name: "imperial", ...how });
    const before = laidOut(document);
    const blocked = new Set(before.facade.findings.filter(blocks).map(placeOf));
    const zones = planeGroups(before.project)[0]!;
    const { passing } = searchPlanes({ ...before, zones, show: { passing: 8, failing: 0 } });
    const holding = passing.filter(({ edit }) =>
      laidOut(applied(document, edit)).facade.findings.every(
        (one) => !blocks(one) || blocked.has(placeOf(one)),
      ),
    );
    expect(holding.length).toBeGreaterThan(1);
    expect(holding.length).toBeLessThan(passing.length);
    const [found] = stepChoices(before).values();
    expect(found?.choices?.map(({ edit }) => edit)).toEqual(holding.slice(0, 3).map(({ edit }) => edit));
  });

  it("is offered the lap of a corner turned with it, where the lap alone stands against a plane", () => {
    // Boards of 22 bring the front's plane so far out that east's sheets, which lap over it, pass their last screw by
    // 71 to 74 mm, where the data sheet allows 70; with the front lapping over east they stop short instead.
    const document = spoilt({
      name: "atelier-bouleau",
      boards: 22,
      sheets: 6,
      packed: true,
      thickBattens: false,
    });
    const before = laidOut(document);
    const zones = planeGroups(before.project)[0]!;
    const { passing } = searchPlanes({ ...before, zones, show: { passing: 40, failing: 0 } });
    expect(passing.length).toBeGreaterThan(8);
    for (const { edit } of passing) {
      const upset = laidOut(applied(document, edit)).facade.findings.filter(
        ({ code, outcome }) => code === "S010" && outcome === "fail",
      );
      expect(upset.map(({ where }) => where.face)).toEqual(["east"]);
      expect(upset[0]?.demand).toBeGreaterThan(70);
    }
    const [found] = stepChoices(before).values();
    expect(found && held(document, before, found)).toBe(3);
    const lap = document.corners?.findIndex(({ left, right }) => left === "front" && right === "east");
    expect(found?.edit?.at(-1)).toEqual({ op: "replace", path: `/corners/${lap}/lead`, value: "front" });
  });

  it("that nothing in stock mends says so, with the numbers of the whole search", () => {
    const document = spoilt({ name: "imperial", boards: 21, sheets: 6, packed: true, thickBattens: false });
    const before = laidOut(document);
    const zones = planeGroups(before.project)[0]!;
    const { counts, failing } = searchPlanes({ ...before, zones, show: { passing: 0, failing: 1 } });
    expect(counts.passing).toBe(0);
    expect(counts.meeting).toBeGreaterThan(0);
    const [found] = stepChoices(before).values();
    expect(found?.edit).toBeUndefined();
    expect(found?.hint).toMatchObject({
      key: "planes.none.rules",
      values: { all: counts.all, meeting: counts.meeting, says: failing[0]?.failed[0]?.says },
    });
    expect(found?.hint && say(found.hint, ENGLISH_MM)).not.toMatch(/[[\]]|undefined/);
  });

  it("that no batten in stock brings near one plane says what the nearest leaves", () => {
    const document = spoilt({
      name: "atelier-bouleau",
      boards: 20,
      sheets: 8,
      packed: false,
      thickBattens: false,
    });
    document.stock.battens = document.stock.battens.filter(({ id }) => id === "b38x64");
    document.stock.packers = [];
    for (const { layers } of document.buildUps)
      for (const layer of layers) if ("stock" in layer) layer.stock = "b38x64";
    const before = laidOut(document);
    const [step] = before.facade.findings.filter(failsStep);
    // 20 against 8 and a gasket of 1: 11 apart.
    expect(step?.demand).toBe(11);
    const [found] = stepChoices(before).values();
    expect(found?.hint).toMatchObject({
      key: "planes.none.apart",
      values: { all: 1, over: 11 - before.project.limits.facesMeetWithin.value },
    });
  });

  it("that no combination brings near without breaking another rule says that none does", () => {
    const document = spoilt({
      name: "atelier-bouleau",
      boards: 20,
      sheets: 8,
      packed: false,
      thickBattens: false,
    });
    // No batten in stock is as thick as the cavity is asked deep, so that every combination fails, meeting or not.
    document.limits.cavityMin = { value: 60, basis: "given" };
    expect(Math.max(...projectOf(document).stock.battens.map(({ thickness }) => thickness))).toBeLessThan(60);
    document.stock.battens = document.stock.battens.filter(({ id }) => id === "b38x64");
    document.stock.packers = [];
    for (const { layers } of document.buildUps)
      for (const layer of layers) if ("stock" in layer) layer.stock = "b38x64";
    const [found] = stepChoices(laidOut(document)).values();
    expect(found?.edit).toBeUndefined();
    expect(found?.hint).toEqual({ key: "planes.none.far", values: { all: 1 } });
  });

  it("whose every combination upsets the set-out wall says so, with what the first upsets", () => {
    // 14 over the heads is just what the west window's flashing needs before the boards come forward with the front's.
    const document = spoilt({
      name: "atelier-bouleau",
      boards: 22,
      sheets: 6,
      packed: true,
      thickBattens: false,
    });
    document.limits.clearances.head = { value: 14, basis: "given" };
    const before = laidOut(document);
    const tight = ({ findings }: StepChoicesRequest["facade"]) =>
      findings.filter(
        ({ code, outcome, where }) => code === "S018" && outcome === "fail" && where.opening === "W3",
      );
    expect(tight(before.facade)).toEqual([]);
    const zones = planeGroups(before.project)[0]!;
    const { counts, passing } = searchPlanes({ ...before, zones, show: { passing: 100, failing: 0 } });
    expect(passing).toHaveLength(counts.passing);
    const tried = passing.map(({ edit }) => tight(laidOut(applied(document, edit)).facade));
    for (const upset of tried) expect(upset).toHaveLength(1);
    const [found] = stepChoices(before).values();
    expect(found?.edit).toBeUndefined();
    expect(found?.hint).toEqual({
      key: "planes.none.wall",
      values: { all: counts.all, passing: counts.passing, tried: 8, says: tried[0]?.[0]?.says },
    });
  });

  it("that does not fail is not searched for", () => {
    for (const name of ["atelier-bouleau", "imperial"])
      expect(stepChoices(laidOut(exampleDocument(name))).size).toBe(0);
  });
});
