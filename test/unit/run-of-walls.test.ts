/** Walls told as lengths and turns: faces that meet, corners and directions as a plan would have them, faults in words. */
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { type ReadRun, type Run, readRun } from "../../src/project/editing/run.ts";
import { startWalls, wallId } from "../../src/project/editing/start.ts";
import { setOut } from "../../src/setout/set-out.ts";
import { sourceOf } from "../helpers/editing.ts";

function ran(read: ReadRun): Run {
  if (!read.ok) throw new Error(read.says.key);
  return read.run;
}

const fault = (text: string): unknown => {
  const read = readRun(text, "mm");
  return read.ok ? "read" : [read.says.key.replace("project.run.", ""), read.says.values.wall];
};

function started(text: string, { azimuthDeg = 180, heights = [2550] as readonly number[] } = {}) {
  const run = ran(readRun(text, "mm"));
  const walls = startWalls({
    title: "House",
    run,
    heights,
    azimuthDeg,
    display: { units: "mm", language: "en" },
  });
  return sourceOf(walls).project;
}

describe("a run that is read", () => {
  it.each([
    "8400, left, 3600, right, 2400",
    "8400,left,3600,right,2400",
    "8400 l 3600 r 2400",
    "8.4 m; gauche; 360 cm; droite; 2400 mm",
    "8400 gauche 90° 3600 DROITE 90 degrés 2400",
  ])("%s has three walls, out and in", (text) => {
    const { walls, points, closed } = ran(readRun(text, "mm"));
    expect(walls).toEqual([
      { length: 8400, turnDeg: 90 },
      { length: 3600, turnDeg: -90 },
      { length: 2400, turnDeg: 0 },
    ]);
    expect(points).toEqual([
      [0, 0],
      [8400, 0],
      [8400, 3600],
      [10800, 3600],
    ]);
    expect(closed).toBe(false);
  });

  it("takes feet and inches, and a French decimal comma", () => {
    expect(ran(readRun(`27'-6 3/4", left, 12'`, "in")).walls.map(({ length }) => length)).toEqual([
      (27 * 12 + 6.75) * 25.4,
      12 * 12 * 25.4,
    ]);
    expect(ran(readRun("8400,5 gauche 3600", "mm")).walls[0]?.length).toBe(8400.5);
  });

  it("turns by other angles: an equilateral triangle closes", () => {
    const { points, closed } = ran(readRun("6000 left 120° 6000 left 120 deg 6000 left 120°", "mm"));
    expect(closed).toBe(true);
    expect(points[2]?.[0]).toBeCloseTo(3000, 3);
    // Half of six metres times the square root of three.
    expect(points[2]?.[1]).toBeCloseTo(3000 * Math.sqrt(3), 3);
    expect(points[3]).toEqual([0, 0]);
  });

  it.each<[string, unknown]>([
    ["", ["no-length", 1]],
    ["8400, 3600", ["no-length", 1]],
    ["8400, left, a yard", ["no-length", 2]],
    ["left, 3600", ["no-length", 1]],
    ["8400, left, -3600", ["no-length", 2]],
    ["8400 left 180° 3600", ["no-turn", 1]],
    ["8400 left 0° 3600", ["no-turn", 1]],
    ["8400, left, 3600, left", ["apart", undefined]],
    ["8400, left, 3600, left, 2400, left, 5000", ["crosses", 4]],
    ["8400, left, 3600, left, 2400, left, 3600", ["crosses", 4]],
    ["8400, left, 3600, left, 9000, left, 3600, left, 700", ["crosses", 5]],
    ["8400, right, 3600, right, 8400, right, 3600", ["inward", undefined]],
  ])("%s is refused in words", (text, said) => {
    expect(fault(text)).toEqual(said);
  });
});

describe("faces made of a run", () => {
  it("look away from the house: the second wall of a square house looks a quarter turn less, round to the first", () => {
    const { faces, corners } = started("8000, left, 6000, left, 8000, left, 6000");
    expect(faces.map(({ id, azimuthDeg }) => [id, azimuthDeg])).toEqual([
      ["a", 180],
      ["b", 90],
      ["c", 0],
      ["d", 270],
    ]);
    expect(corners?.map(({ left, right, kind, lead }) => [left, right, kind, lead])).toEqual([
      ["a", "b", "lapped", "a"],
      ["b", "c", "lapped", "b"],
      ["c", "d", "lapped", "c"],
      ["d", "a", "lapped", "d"],
    ]);
  });

  it("have heights of their own, the last standing for what follows, and corners of their angle", () => {
    const { faces, corners } = started("6000 left 3000 right 2000 left 45° 1500", {
      azimuthDeg: 10,
      heights: [2550, 3100],
    });
    expect(faces.map(({ azimuthDeg }) => azimuthDeg)).toEqual([10, 280, 10, 325]);
    expect(faces.map(({ outline }) => outline[2]?.[1])).toEqual([2500, 3050, 3050, 3050]);
    expect(corners?.map(({ kind }) => kind)).toEqual(["lapped", "lapped", "open mitre"]);
    expect(faces.flatMap(({ openings }) => openings)).toEqual([]);
  });

  it("are set out, each with its sheets, and a single wall has no corner", () => {
    const project = started("6000 left 3000 right 2000");
    const facade = setOut(project, demandsOf(project));
    expect(facade.faces.map(({ pieces }) => pieces.some(({ kind }) => kind === "sheet"))).toEqual([
      true,
      true,
      true,
    ]);
    expect(started("6000").corners).toBeUndefined();
  });

  it("are named by letters without end", () => {
    expect([0, 25, 26, 53].map(wallId)).toEqual(["a", "z", "a2", "b3"]);
  });
});
