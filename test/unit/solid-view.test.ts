/** The axonometric view without its graphics: sun, eye, unfolding, and what an edit builds anew. */
import { describe, expect, it } from "vitest";
import { sunAzimuth } from "../../src/equations/light/sun-azimuth.ts";
import { sunElevation } from "../../src/equations/light/sun-elevation.ts";
import { inBuilding } from "../../src/geometry/frame.ts";
import { createBuilding } from "../../src/web/solid/building.ts";
import { lookingAt } from "../../src/web/solid/looking-at.ts";
import { createMaterials } from "../../src/web/solid/materials.ts";
import { framing, moved, nearer, type Orbit, sightOf, turned } from "../../src/web/solid/orbit.ts";
import { placed, standing, turnsOf, unfolding, type Vector } from "../../src/web/solid/placing.ts";
import { cornersOf, spotsInPlane } from "../../src/web/solid/plane.ts";
import { sunOver } from "../../src/web/solid/sun.ts";
import { solidDemo } from "../helpers/solid-demo.ts";

const { facade, project } = solidDemo;
const { faces } = facade;
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cosDeg = (deg: number): number => Math.cos((deg * Math.PI) / 180);
const sinDeg = (deg: number): number => Math.sin((deg * Math.PI) / 180);
const DAY = 86_400_000;

describe("the sun over the building", () => {
  it.each([
    { dayOfYear: 1, hour: 9.5 },
    { dayOfYear: 80, hour: 12 },
    { dayOfYear: 172, hour: 16.25 },
    { dayOfYear: 265, hour: 7 },
    { dayOfYear: 355, hour: 1 },
  ])("falls on each face as the equations have it, day $dayOfYear at $hour", (moment) => {
    const { latitudeDeg, longitudeDeg } = project.site;
    // Local mean time runs four minutes behind for each degree west; the year is 2025, as in the proof of light.
    const utc = Date.UTC(2025, 0, moment.dayOfYear) + (moment.hour / 24) * DAY - (longitudeDeg / 360) * DAY;
    const at = { latitudeDeg, longitudeDeg, daysFromJ2000: (utc - Date.UTC(2000, 0, 1, 12)) / DAY };
    const [height, azimuth] = [sunElevation(at), sunAzimuth(at)];
    const sun = sunOver(project, facade, moment);
    expect(sun.elevationDeg).toBeCloseTo(height, 6);
    expect(sun.azimuthDeg).toBeCloseTo(azimuth, 6);
    expect(sun.towards[2]).toBeCloseTo(sinDeg(height), 9);
    expect(Math.hypot(...sun.towards)).toBeCloseTo(1, 9);
    for (const { azimuthDeg, frame } of faces) {
      if (azimuthDeg === undefined) continue;
      const square = dot(sun.towards, [...frame.outward, 0]);
      expect(square).toBeCloseTo(cosDeg(height) * cosDeg(azimuth - azimuthDeg), 9);
    }
  });

  it("is under the horizon at midwinter's midnight", () => {
    expect(sunOver(project, facade, { dayOfYear: 355, hour: 0 }).elevationDeg).toBeLessThan(-30);
  });
});

describe("the eye", () => {
  const corners = cornersOf(faces);
  const size = { width: 800, height: 500, margin: 20 };
  const start: Orbit = framing(corners, { roundDeg: 35, heightDeg: 22 }, size);
  const onScreen = (point: Vector, { target, k, ...from }: Orbit): [number, number] => {
    const { right, up } = sightOf(from);
    const off: Vector = [point[0] - target[0], point[1] - target[1], point[2] - target[2]];
    return [dot(right, off) * k, -dot(up, off) * k];
  };

  it("sees the whole building, as large as there is room for", () => {
    const seen = corners.map((corner) => onScreen(corner, start));
    const wide = Math.max(...seen.map(([x]) => Math.abs(x)));
    const high = Math.max(...seen.map(([, y]) => Math.abs(y)));
    expect(wide).toBeLessThanOrEqual(380.001);
    expect(high).toBeLessThanOrEqual(230.001);
    expect(Math.max(wide / 380, high / 230)).toBeCloseTo(1, 6);
  });

  it("keeps what is under the hand where it is while it comes nearer", () => {
    const corner = corners[3]!;
    const at = onScreen(corner, start);
    const after = onScreen(corner, nearer(start, 1.7, at));
    expect(after[0]).toBeCloseTo(at[0], 6);
    expect(after[1]).toBeCloseTo(at[1], 6);
  });

  it("moves the building with the hand, and turns its front the way the hand goes", () => {
    const corner = corners[0]!;
    const [x, y] = onScreen(corner, start);
    const [x2, y2] = onScreen(corner, moved(start, { dx: 30, dy: -12 }));
    expect([x2 - x, y2 - y]).toEqual([expect.closeTo(30, 6), expect.closeTo(-12, 6)]);
    // The front's middle lies nearer to the eye than the middle of the house.
    const front: Vector = [3600, 0, 1000];
    const level = { ...start, roundDeg: 0, target: [3600, 2400, 1000] as const };
    expect(onScreen(front, turned(level, { dx: 20, dy: 0 }))[0]).toBeGreaterThan(0);
  });

  it("stands before the face that a jump asks for, with the thing in the middle", () => {
    for (const face of faces) {
      const piece = face.pieces.find(({ kind }) => kind === "board" || kind === "sheet")!;
      const orbit = lookingAt(solidDemo, { kind: "piece", face: face.id, id: piece.mark }, size)!;
      const out = standing(face.frame).z;
      expect(dot(sightOf(orbit).towardsEye, out)).toBeGreaterThan(0.5);
    }
  });
});

describe("unfolding", () => {
  const turns = turnsOf(faces);
  const spots = spotsInPlane(facade);
  const at = (i: number, part: number) =>
    unfolding(faces[i]!.frame, { turn: turns[i]!, to: spots[i]!, part });

  it("starts from the faces as they stand, within a hair's turn too", () => {
    for (const [i, { frame }] of faces.entries()) {
      const point = { x: 700, y: 400, z: 60 };
      const stood = inBuilding(frame, point);
      for (const part of [0, 1e-9]) {
        const now = placed(at(i, part), [point.x, point.y, point.z]);
        for (const axis of [0, 1, 2] as const) expect(now[axis]).toBeCloseTo(stood[axis], 3);
      }
    }
  });

  it("ends with all faces upright in one plane, outside to the viewer, none over another", () => {
    const ends = faces.map(({ outline }, i) => {
      const placing = at(i, 1);
      expect(placing.x).toEqual([expect.closeTo(1), expect.closeTo(0), 0]);
      expect(placing.y.map((one) => one + 0)).toEqual([
        expect.closeTo(0),
        expect.closeTo(0),
        expect.closeTo(1),
      ]);
      expect(placing.z[1]).toBeCloseTo(-1);
      const xs = outline.map(([x, y]) => placed(placing, [x, y, 0])[0]);
      return [Math.min(...xs), Math.max(...xs)] as const;
    });
    for (const [i, [left]] of ends.entries()) if (i > 0) expect(left).toBeGreaterThan(ends[i - 1]![1]);
    expect(new Set(spots.map(([, y]) => y)).size).toBe(1);
  });

  it("stretches nothing on the way", () => {
    for (const i of faces.keys())
      for (const part of [0.2, 0.5, 0.8]) {
        const { x, y, z } = at(i, part);
        for (const one of [x, y, z]) expect(Math.hypot(...one)).toBeCloseTo(1, 9);
        for (const [a, b] of [
          [x, y],
          [y, z],
          [z, x],
        ] as const)
          expect(dot(a, b)).toBeCloseTo(0, 9);
      }
  });
});

describe("an edit", () => {
  it("builds anew the faces that it changes, and lets the others stand", () => {
    const building = createBuilding(createMaterials());
    building.build(solidDemo);
    const before = faces.map(({ id }) => building.modelOf(id));
    const [first, ...rest] = faces;
    const edited = { ...solidDemo, facade: { ...facade, faces: [{ ...first! }, ...rest] } };
    let freed = 0;
    for (const child of before[0]!.group.children)
      if ("geometry" in child) {
        const geometry = child.geometry as { addEventListener(kind: "dispose", told: () => void): void };
        geometry.addEventListener("dispose", () => freed++);
      }
    building.build(edited);
    const after = faces.map(({ id }) => building.modelOf(id));
    expect(after[0]).not.toBe(before[0]);
    for (const [i, model] of after.entries()) if (i > 0) expect(model).toBe(before[i]);
    expect(freed).toBe(before[0]!.group.children.length);
    expect(building.group.children).toHaveLength(faces.length);
    building.dispose();
    expect(building.group.children).toHaveLength(0);
  });

  it("builds a face anew when the sheathing that it stands on changes", () => {
    const building = createBuilding(createMaterials());
    building.build(solidDemo);
    const before = building.models();
    const structure = { ...project.structure, sheathingThickness: 15 };
    building.build({ ...solidDemo, project: { ...project, structure } });
    for (const [i, model] of building.models().entries()) expect(model).not.toBe(before[i]);
  });
});

describe("layers taken away", () => {
  it("are not seen, nor pressed", () => {
    const building = createBuilding(createMaterials());
    building.build(solidDemo);
    const front = building.modelOf("front")!;
    const picked = (): Set<string> => {
      const found = front.pressed().flatMap((mesh) => {
        const { count } = (mesh as unknown as { geometry: { attributes: { position: { count: number } } } })
          .geometry.attributes.position;
        return Array.from({ length: count / 3 }, (_, triangle) => front.pickOf(mesh, triangle));
      });
      return new Set(found.flatMap((pick) => (pick && "id" in pick ? [pick.id] : [])));
    };
    const marks = (kinds: readonly string[]): string[] =>
      faces
        .find(({ id }) => id === "front")!
        .pieces.filter(({ kind }) => kinds.includes(kind))
        .map(({ mark }) => mark);
    front.show(new Set(["cladding", "battens"]), 1);
    expect([...picked()]).toEqual(
      expect.arrayContaining([...marks(["board", "sheet", "batten"]), "W2", "D1"]),
    );
    front.show(new Set(["battens"]), 1);
    const left = picked();
    expect(marks(["board", "sheet", "flashing"]).filter((mark) => left.has(mark))).toEqual([]);
    expect([...left]).toEqual(expect.arrayContaining([...marks(["batten"]), "W2", "D1"]));
  });
});
