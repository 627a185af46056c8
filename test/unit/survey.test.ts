/** A surveyed wall: packers, the wall between its readings, errors of repeats, the demo's packing, and what is found of it. */
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readAgain, setReading, startSurvey } from "../../src/project/editing/readings.ts";
import { packingMap } from "../../src/scene/views/packing-map.ts";
import { packingCost } from "../../src/site/survey/cost.ts";
import { leanOf, surveyFindings } from "../../src/site/survey/findings.ts";
import { joinedPlanes } from "../../src/site/survey/joined.ts";
import { packersNear } from "../../src/site/survey/packers.ts";
import { surveyFace, usualPacking } from "../../src/site/survey/packing.ts";
import { planeAt } from "../../src/site/survey/plane.ts";
import { readingsOf, repeatError } from "../../src/site/survey/reading.ts";
import { surfaceOf, twistOf } from "../../src/site/survey/surface.ts";
import { edited, exampleSource } from "../helpers/editing.ts";

describe("packers of the stock", () => {
  it.each([
    [0, [], 0],
    [0.4, [], 0],
    [0.6, [1], 1],
    [4, [3, 1], 4],
    [6.4, [5, 1], 6],
    [9.2, [5, 3, 1], 9],
    [12, [5, 5, 2], 12],
    [-3, [], 0],
  ])("for %s mm: %j", (thickness, packers, sum) => {
    expect(packersNear(thickness, [1, 2, 3, 5])).toEqual({ packers, sum });
  });

  it("are none where the stock has none, and the fewest of those that come nearest", () => {
    expect(packersNear(7, [])).toEqual({ packers: [], sum: 0 });
    expect(packersNear(8, [4, 5, 3])).toEqual({ packers: [5, 3], sum: 8 });
    expect(packersNear(5, [4])).toEqual({ packers: [4], sum: 4 });
  });
});

const spot = (x: number, y: number, outward: number) => ({ x, y, outward, times: 1 });

describe("the wall between readings", () => {
  const surface = surfaceOf([spot(0, 0, 2), spot(1000, 0, 6), spot(0, 1000, 4), spot(1000, 1000, 12)]);
  it("runs straight from one to the next", () => {
    expect(surface(500, 0)).toBeCloseTo(4, 12);
    expect(surface(250, 500)).toBeCloseTo((0.75 * (2 + 4)) / 2 + (0.25 * (6 + 12)) / 2, 12);
  });
  it("is that of the edge a little beyond it, and not known further off", () => {
    expect(surface(-200, 0)).toBe(2);
    expect(surface(-400, 0)).toBeUndefined();
    expect(surface(500, 1600)).toBeUndefined();
  });
  it("is not known where a corner of its field was not read", () => {
    const broken = surfaceOf([spot(0, 0, 2), spot(1000, 0, 6), spot(0, 1000, 4)]);
    expect(broken(700, 700)).toBeUndefined();
    expect(broken(500, 0)).toBeCloseTo(4, 12);
  });
  it("is straight over the triangle of strewn readings round a place, and not known where that is too wide", () => {
    const strewn = surfaceOf([spot(0, 0, 3), spot(900, 100, 12), spot(200, 800, 7), spot(1000, 950, 20)]);
    // The middle of a triangle is the mean of its corners; of the two ways to part these four, the other one's circle holds a reading.
    expect(strewn(1100 / 3, 300)).toBeCloseTo((3 + 12 + 7) / 3, 9);
    expect(strewn(2100 / 3, 1850 / 3)).toBeCloseTo((12 + 7 + 20) / 3, 9);
    expect(strewn(-200, 500)).toBeUndefined();
    const wide = surfaceOf([spot(0, 0, 3), spot(1750, 100, 12), spot(200, 800, 7)]);
    expect(wide(600, 300)).toBeUndefined();
  });
  it("twists by what its fourth corner lies off the others", () => {
    expect(twistOf([spot(0, 0, 2), spot(1000, 0, 6), spot(0, 1000, 4), spot(1000, 1000, 12)])).toBe(4);
    expect(twistOf([spot(0, 0, 2), spot(1000, 0, 6), spot(0, 1000, 4)])).toBeUndefined();
  });
});

it("repeats tell the error of one reading: s² = Σ(r − r̄)² / Σ(n − 1), by hand", () => {
  const read = (x: number, outward: number) => ({ face: "front", x, y: 0, outward });
  // 10, 12 about 11: 2; 5, 5, 8 about 6: 6; the third place was read once. 8 / 3.
  const error = repeatError([read(0, 10), read(0, 12), read(1, 5), read(1, 5), read(1, 8), read(2, 4)]);
  expect(error?.freedom).toBe(3);
  expect(error?.deviation).toBeCloseTo(Math.sqrt(8 / 3), 12);
  expect(repeatError([read(0, 10), read(1, 12)])).toBeUndefined();
});

describe("the demo's front", () => {
  const { project, facade } = design(exampleSource("atelier-bouleau").project);
  const readings = readingsOf(project);
  const surveyed = surveyFace({ project, facade }, { face: "front", readings, lean: leanOf(project) });
  const kinds = surveyed.packings.map(({ kind }) => kind);
  const of = (kind: string) => surveyed.packings.find((one) => one.kind === kind);

  it("has a packing for every crossing of a batten, whatever the plane", () => {
    expect([...kinds].sort()).toEqual(["outer", "planed 1", "planed 2", "plumb"]);
    const screws = facade.faces
      .find(({ id }) => id === "front")
      ?.pieces.filter(({ kind }) => kind === "batten")
      .flatMap(({ fixings }) => fixings.filter(({ side }) => !side));
    for (const { crossings } of surveyed.packings) expect(crossings).toHaveLength(screws?.length ?? -1);
    expect(surveyed.unread).toEqual([]);
  });

  it("packs less the freer the plane is, and never less than nothing", () => {
    const [two, one, outer, plumb] = ["planed 2", "planed 1", "outer", "plumb"].map(
      (kind) => of(kind)?.sum ?? 0,
    );
    expect(two).toBeLessThanOrEqual(one as number);
    expect(one).toBeLessThanOrEqual(outer as number);
    expect(outer).toBeLessThanOrEqual(plumb as number);
    for (const crossing of of("outer")?.crossings ?? []) {
      expect(crossing.wanted).toBeGreaterThanOrEqual(0);
      expect(crossing.planeOff).toBe(0);
      expect(Math.abs(crossing.off)).toBeLessThanOrEqual(0.5 + 1e-9);
    }
    expect(of("planed 2")?.crossings.filter(({ planeOff }) => planeOff > 0)).toHaveLength(2);
  });

  it("what is packed brings every batten's back to the plane, to half the thinnest packer", () => {
    const { plane, crossings } = of("outer") as NonNullable<ReturnType<typeof of>>;
    for (const { x, y, wall, packers, spare } of crossings) {
      const back = wall + packers.reduce((all, one) => all + one, 0);
      expect(Math.abs(back - planeAt(plane, x, y) - spare)).toBeLessThanOrEqual(0.5 + 1e-9);
    }
  });

  it("finds what is not told, and the bite that packing takes from a screw", () => {
    const findings = surveyFindings({ project, facade, surveyed, readings }, of("outer"));
    const outcome = (code: string) => findings.filter((one) => one.code === code).map((one) => one.outcome);
    expect(outcome("M003")).toEqual([project.limits.packing ? "pass" : "cannot evaluate"]);
    expect(outcome("M005")).toEqual(["pass", "pass"]);
    const bite = findings.find(({ code }) => code === "M004");
    const least = Math.min(...(of("outer")?.crossings.map(({ biteLeft }) => biteLeft) ?? []));
    expect(bite?.demand).toBe(least);
    expect(bite?.outcome).toBe(least >= project.limits.screwBite.studs.value ? "pass" : "fail");
    const north = surveyFace({ project, facade }, { face: "north", readings, lean: leanOf(project) });
    expect(surveyFindings({ project, facade, surveyed: north, readings }, undefined)).toMatchObject([
      { code: "M002", outcome: "cannot evaluate" },
    ]);
  });

  it("and its west, read as well, are joined at their corner: packed no less than each by itself, and standing off alike", () => {
    const west = [0, 1200, 2400].flatMap((x) =>
      [0, 1500, 3000].map((y) => ({ face: "west", x, y, outward: 9 + (x + y) / 1500 })),
    );
    const both = [...readings, ...west];
    const { planes, corners } = joinedPlanes({ project, facade }, { readings: both, lean: leanOf(project) });
    expect([...planes.keys()].sort()).toEqual(["front", "west"]);
    expect(corners.map(({ left, right }) => [left, right])).toEqual([["west", "front"]]);
    const front = surveyFace(
      { project, facade },
      { face: "front", readings: both, lean: leanOf(project), joined: planes.get("front") },
    );
    const found = usualPacking(front.packings);
    expect(found?.kind).toBe("joined");
    expect(found?.sum).toBeGreaterThanOrEqual(of("outer")?.sum ?? Number.NaN);
    for (const { wanted, planeOff } of found?.crossings ?? []) {
      expect(wanted).toBeGreaterThanOrEqual(0);
      expect(planeOff).toBe(0);
    }
    const wall = project.faces.find(({ id }) => id === "west");
    const at = Math.hypot(
      (wall?.plan.to[0] ?? 0) - (wall?.plan.from[0] ?? 0),
      (wall?.plan.to[1] ?? 0) - (wall?.plan.from[1] ?? 0),
    );
    for (const y of [0, 3000]) {
      expect(planeAt(planes.get("west")!, at, y)).toBeCloseTo(planeAt(planes.get("front")!, 0, y), 6);
    }
    expect(joinedPlanes({ project, facade }, { readings, lean: leanOf(project) }).planes.size).toBe(0);
    expect(usualPacking(surveyed.packings)?.kind).toBe("outer");
  });

  it("is drawn with a figure at each crossing", () => {
    const packing = of("planed 2");
    const scene = packing && packingMap({ project, facade }, { face: "front", packing });
    const figures = scene?.items.filter(({ kind, layer }) => kind === "text" && layer.includes("FIXING"));
    expect(figures).toHaveLength(packing?.crossings.length ?? -1);
    expect(figures?.filter((one) => one.kind === "text" && one.ink === "red")).toHaveLength(2);
    expect(packing && packingMap({ project, facade }, { face: "nowhere", packing })).toBeUndefined();
  });
});

describe("readings typed into the file", () => {
  const source = exampleSource("atelier-bouleau");
  it("begin as a grid, no further apart than 1200 mm", () => {
    const change = startSurvey(source, { face: "north" });
    const begun = change && edited(source, change).project.survey?.find(({ face }) => face === "north");
    expect(begun?.x.every((x, i) => i === 0 || x - (begun.x[i - 1] as number) <= 1200)).toBe(true);
    expect(begun?.outward.flat().every((one) => one === 0)).toBe(true);
    expect(startSurvey(source, { face: "front" })).toBeUndefined();
  });
  it("are put over one another, and kept beside where a place is read again", () => {
    const change = setReading(source, { face: "front", column: 1, row: 2 }, 13);
    const after = change && edited(source, change);
    expect(after?.project.survey?.[0]?.outward[2]?.[1]).toBe(13);
    expect(setReading(source, { face: "front", column: 9, row: 2 }, 13)).toBeUndefined();
    const twice = readAgain(source, { face: "front", x: 0, y: 0, outward: 3 });
    const known = twice && readingsOf(edited(source, twice).project);
    expect(known && repeatError(known)?.freedom).toBeGreaterThan(0);
  });
});

it("prices a plane by the project's own figures, by hand, and names those that are missing", () => {
  const { project } = exampleSource("atelier-bouleau");
  const { facade } = design(project);
  const surveyed = surveyFace(
    { facade, project },
    { face: "front", readings: readingsOf(project), lean: leanOf(project) },
  );
  const planed = surveyed.packings.find(({ kind }) => kind === "planed 2");
  if (!planed) throw new Error("no such plane");
  const packers = planed.packers.reduce((sum, { count }) => sum + count, 0);
  const spots = planed.crossings.filter(({ planeOff }) => planeOff > 0).length;
  expect(spots).toBeGreaterThan(0);
  const work = { minutesPerPacker: 3, minutesPerSpot: 25, pricePerPacker: 0.4, pricePerHour: 66 };
  const minutes = 3 * packers + 25 * spots;
  const { price, ...rest } = packingCost(planed, { packingWork: work });
  expect(rest).toEqual({ packers, spots, minutes, lacks: [] });
  expect(price).toBeCloseTo(0.4 * packers + (66 * minutes) / 60, 9);
  const { pricePerHour: _, ...without } = work;
  expect(packingCost(planed, { packingWork: without })).toEqual({
    packers,
    spots,
    minutes,
    lacks: ["/packingWork/pricePerHour"],
  });
  expect(packingCost(planed, {}).lacks).toHaveLength(4);
});
