/** Faces reshaped, added and taken out: plans still meet, and nothing speaks of what is gone. */
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import {
  addFaceBeside,
  copyFaceRules,
  moveOutlinePoint,
  removeFace,
  setFaceHeight,
  setFaceWidth,
} from "../../src/project/editing/faces.ts";
import { startWall } from "../../src/project/editing/start.ts";
import { splitZone } from "../../src/project/editing/zones.ts";
import { faceById } from "../../src/project/lookup.ts";
import { starterProject } from "../../src/project/starter.ts";
import { setOut } from "../../src/setout/set-out.ts";
import { changed, edited, exampleSource, refusals, sourceOf } from "../helpers/editing.ts";

const bouleau = exampleSource("atelier-bouleau");
const starter = sourceOf(starterProject());

describe("the outline of a face", () => {
  it("has a corner put elsewhere, so that its top rakes", () => {
    const raked = edited(starter, moveOutlinePoint(starter, "front", 2, [4800, 3100]));
    expect(faceById(raked.project, "front")?.outline).toEqual([
      [0, -50],
      [4800, -50],
      [4800, 3100],
      [0, 2500],
    ]);
    expect(refusals(starter, moveOutlinePoint(starter, "front", 2, [4800, 1500]))).toContain("F012");
    expect(moveOutlinePoint(starter, "front", 9, [0, 0])).toBeUndefined();
  });

  it("keeps its rake when its height is typed, and its zones reach the new top", () => {
    const high = edited(bouleau, setFaceHeight(bouleau, "west", 3260));
    // 200 mm more than from −50 to 3010.
    expect(faceById(high.project, "west")?.outline.map(([, y]) => y)).toEqual([-50, -50, 3210, 2490]);
    const parted = edited(
      starter,
      splitZone(starter, { face: "front", id: "sheets" }, { axis: "y", at: 1200 }),
    );
    const higher = edited(parted, setFaceHeight(parted, "front", 3000));
    expect(faceById(higher.project, "front")?.zones.map(({ y }) => y)).toEqual([
      [-50, 1200],
      [1208, 2950],
    ]);
  });

  it("is widened at a free end, with the faces beyond it", () => {
    const wide = edited(starter, setFaceWidth(starter, "front", 6000));
    expect(faceById(wide.project, "front")).toMatchObject({
      plan: { to: [6000, 0] },
      ground: [
        [0, -350],
        [6000, -350],
      ],
    });
    const two = edited(
      starter,
      addFaceBeside(starter, "front", { width: 3000, height: 2550, azimuthDeg: 90 }),
    );
    const moved = edited(two, setFaceWidth(two, "front", 6000));
    expect(faceById(moved.project, "face1")?.plan).toEqual({ from: [6000, 0], to: [6000, 3000] });
  });

  it("is not widened where the plan is closed", () => {
    expect(setFaceWidth(bouleau, "front", 8000)).toBeUndefined();
  });
});

describe("a face set beside another", () => {
  it("turns with its azimuth, meets it in a corner, and is set out", () => {
    const two = edited(
      starter,
      addFaceBeside(starter, "front", { width: 3000, height: 2550, azimuthDeg: 90 }),
    );
    const added = faceById(two.project, "face1");
    expect(added).toMatchObject({ plan: { from: [4800, 0], to: [4800, 3000] }, azimuthDeg: 90 });
    expect(two.project.corners).toEqual([{ left: "front", right: "face1", kind: "open mitre", gap: 10 }]);
    const { faces } = setOut(two.project, demandsOf(two.project));
    expect(faces.find(({ id }) => id === "face1")?.pieces.some(({ kind }) => kind === "sheet")).toBe(true);
  });

  it("goes straight on without a corner, or in at an inner one", () => {
    const on = edited(
      starter,
      addFaceBeside(starter, "front", { width: 2000, height: 2000, azimuthDeg: 180 }),
    );
    expect(on.project.corners).toBeUndefined();
    expect(faceById(on.project, "face1")?.plan.to).toEqual([6800, 0]);
    const inner = edited(
      starter,
      addFaceBeside(starter, "front", { width: 2000, height: 2000, azimuthDeg: 270 }),
    );
    expect(faceById(inner.project, "face1")?.plan.to).toEqual([4800, -2000]);
  });

  it("is not set where one stands already", () => {
    expect(addFaceBeside(bouleau, "front", { width: 2000, height: 2000, azimuthDeg: 82 })).toBeUndefined();
  });
});

describe("a face taken out", () => {
  it("takes its corners, readings and places on rods with it", () => {
    const less = edited(bouleau, removeFace(bouleau, "front"));
    const { corners, rods, survey, crews } = less.project;
    expect(JSON.stringify([corners, rods, survey, crews])).not.toContain('"front"');
    expect(crews?.map(({ name }) => name)).toEqual(bouleau.project.crews?.map(({ name }) => name));
    expect(less.project.rods?.[0]).toMatchObject({
      zones: [{ face: "west", zone: "boards" }],
      leads: ["west"],
    });
  });

  it("no longer lines the recess that it lined", () => {
    const less = edited(bouleau, removeFace(bouleau, "recess-back"));
    expect(faceById(less.project, "east")?.openings[0]?.linedBy).toEqual(["recess-left", "recess-right"]);
  });

  it("takes what lines its recesses out with it", () => {
    const less = edited(bouleau, removeFace(bouleau, "east"));
    expect(less.project.faces.map(({ id }) => id)).toEqual(["west", "front", "north"]);
    expect(less.project.retired).toEqual(expect.arrayContaining(["east", "R1", "recess-back", "D2"]));
  });

  it("that is the last is refused", () => {
    expect(refusals(starter, removeFace(starter, "front")).length).toBeGreaterThan(0);
  });

  it("and added again is undone by taking it out", () => {
    const two = edited(
      starter,
      addFaceBeside(starter, "front", { width: 3000, height: 2550, azimuthDeg: 180 }),
    );
    expect(changed(two, removeFace(two, "face1"))).toEqual({
      ...Object(starter.document),
      retired: ["face1"],
    });
  });
});

describe("the rules of a face given to another", () => {
  it("clad its zones alike, on the same rod, with the same frames and splash", () => {
    const alike = edited(bouleau, copyFaceRules(bouleau, "west", "north"));
    expect(faceById(alike.project, "north")).toMatchObject({
      frameProjection: 71,
      splash: { cover: "gravel", width: 200 },
      zones: [{ id: "sheets", cladding: "charred-boards", buildUp: "over-wool-boards" }],
    });
    expect(alike.project.rods?.[0]?.zones).toContainEqual({ face: "north", zone: "sheets" });
  });

  it("take both its zones off their rod at once", () => {
    const alike = edited(bouleau, copyFaceRules(bouleau, "north", "west"));
    expect(alike.project.rods?.[0]?.zones).toEqual([{ face: "front", zone: "boards" }]);
  });
});

describe("a wall to start with", () => {
  it("is the starter project with that size, read without a word against it", () => {
    const wall = startWall({
      title: "Mur",
      width: 6100,
      height: 2800,
      display: { units: "mm", language: "fr" },
    });
    const { project } = sourceOf(wall);
    expect(project.display).toMatchObject({ units: "mm", language: "fr", denominator: 16 });
    expect(project.faces[0]).toMatchObject({
      plan: { from: [0, 0], to: [6100, 0] },
      outline: [
        [0, -50],
        [6100, -50],
        [6100, 2750],
        [0, 2750],
      ],
      openings: [],
    });
    expect(setOut(project, demandsOf(project)).faces[0]?.pieces.length).toBeGreaterThan(0);
  });
});
