/**
 * Where battens stand behind joints, beside openings and at corners, and where screws do not: measured on every example. Each edge of a
 * sheet or end of a board has its own bearing, from two battens or one wide one; a screw keeps 10 mm from a batten's sawn end (common
 * practice), so none falls in the gap of a batten's joint.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { sliceVertical } from "../../src/geometry/polygon.ts";
import { readProject } from "../../src/project/read.ts";
import type { FaceLayout, Piece } from "../../src/setout/facade.ts";
import { boxOf } from "../helpers/piece-boxes.ts";

const NOISE_MM = 0.01;
/** A sheet's edge distance and a screw's distance from a batten's edge, at least. */
const BEARING_MM = 20;

const standing = ({ frame }: FaceLayout): boolean => frame.level === undefined;

describe.each(["atelier-bouleau", "l-plan", "two-storey", "imperial", "porch"])("%s", (name) => {
  const read = readProject(readFileSync(`examples/${name}.outerleaf.json`, "utf8"), name);
  if (!read.ok) throw new Error(`${name} does not read`);
  const { project } = read;
  const { facade } = design(project);
  const uprightZones = new Set(
    project.faces.flatMap((face) =>
      face.zones
        .filter(({ cladding }) => {
          const one = project.claddings.find(({ id }) => id === cladding);
          return one?.kind === "boards" && one.direction === "vertical";
        })
        .map(({ id }) => `${face.id}.${id}`),
    ),
  );
  const faces = facade.faces.filter(standing);
  const battensOf = (face: FaceLayout, zone: string | undefined): Piece[] =>
    face.pieces.filter((piece) => piece.kind === "batten" && piece.zone === zone);

  /** Whether battens fill the strip at the height, one or several side by side. */
  function isBorne(battens: readonly Piece[], [from, to]: readonly [number, number], y: number): boolean {
    let reached = from;
    const there = battens
      .map(({ outline }) => boxOf(outline))
      .filter(([, , low, high]) => y > low && y < high)
      .sort((a, b) => a[0] - b[0]);
    for (const [left, right] of there) if (left <= reached + NOISE_MM) reached = Math.max(reached, right);
    return reached >= to - NOISE_MM;
  }

  it("bears both edges at every upright joint of sheets, and both ends at every butt of level boards", () => {
    let seen = 0;
    const bare: string[] = [];
    for (const face of faces) {
      const joints = face.joints.filter(
        ({ kind, along, zone }) =>
          along === "y" &&
          (kind === "sheet joint" || kind === "butt") &&
          !uprightZones.has(`${face.id}.${zone}`),
      );
      for (const { kind, region, zone } of joints) {
        const [left, right, low, high] = boxOf(region);
        const battens = battensOf(face, zone);
        // Where a batten's own lengths meet, or a duct parts it, a hand's breadth up or down counts.
        const heights = [0.3, 0.5, 0.7].map((share) => low + (high - low) * share);
        seen += 1;
        for (const strip of [
          [left - BEARING_MM, left],
          [right, right + BEARING_MM],
        ] as const)
          if (!heights.some((y) => isBorne(battens, strip, y)))
            bare.push(`${face.id} ${kind} at ${left}, ${low}`);
      }
    }
    expect(bare).toEqual([]);
    expect(seen).toBeGreaterThan(name === "imperial" || name === "porch" ? 0 : 5);
  });

  it("has a batten beside every opening, on each side where cladding ends on it", () => {
    const bare: string[] = [];
    let seen = 0;
    for (const face of faces)
      for (const { id, region } of face.openings) {
        const jambs = face.clearances.filter(({ kind, of }) => kind === "jamb" && of === id);
        for (const clear of jambs.map((one) => boxOf(one.region))) {
          const onLeft = clear[1] <= region.x[0] + NOISE_MM;
          const edge = onLeft ? clear[0] : clear[1];
          const clad = face.pieces.filter(({ kind, outline }) => {
            const [l, r, b, t] = boxOf(outline);
            const ends = Math.abs((onLeft ? r : l) - edge) < NOISE_MM;
            return (
              (kind === "sheet" || kind === "board") && ends && b < region.y[1] - 50 && t > region.y[0] + 50
            );
          });
          for (const { zone, outline, mark } of clad) {
            seen += 1;
            const [, , b, t] = boxOf(outline);
            const y = Math.min(Math.max((b + t) / 2, region.y[0] + 30), region.y[1] - 30);
            const strip = onLeft
              ? ([edge - BEARING_MM, edge] as const)
              : ([edge, edge + BEARING_MM] as const);
            const sticks = face.pieces.filter(
              (one) => ["batten", "rail"].includes(one.kind) && one.zone === zone,
            );
            if (
              !isBorne(
                uprightZones.has(`${face.id}.${zone}`)
                  ? sticks.filter(({ kind }) => kind === "batten")
                  : sticks,
                strip,
                y,
              )
            )
              bare.push(`${mark} beside ${id}`);
          }
        }
      }
    expect(bare).toEqual([]);
    expect(seen).toBeGreaterThan(3);
  });

  it("holds the cladding's last end at every corner within its edge distance or overhang", () => {
    const far: string[] = [];
    for (const face of faces)
      for (const piece of face.pieces.filter(({ kind, fixings }) => kind === "sheet" && fixings.length > 0)) {
        const zone = project.faces
          .find(({ id }) => id === face.id)
          ?.zones.find(({ id }) => id === piece.zone);
        const sheets = project.claddings.find(({ id }) => id === zone?.cladding);
        if (sheets?.kind !== "sheets") continue;
        const [left, right] = boxOf(piece.outline);
        const xs = piece.fixings.map(({ x }) => x);
        const most = sheets.dataSheet.edgeDistance[1];
        if (Math.min(...xs) - left > most + NOISE_MM || right - Math.max(...xs) > most + NOISE_MM)
          far.push(piece.mark);
      }
    expect(far).toEqual([]);
  });

  it("has no screw of the cladding in a joint, nor in the gap of a batten's joint or within 10 mm of it", () => {
    const bad: string[] = [];
    let seen = 0;
    for (const face of facade.faces) {
      const byMark = new Map(face.pieces.map((piece) => [piece.mark, piece]));
      const joints = face.joints.map(({ region }) => boxOf(region));
      for (const piece of face.pieces.filter(({ kind }) => kind === "sheet" || kind === "board"))
        for (const { x, y, into } of piece.fixings) {
          seen += 1;
          const holder = byMark.get(into);
          if (!holder) continue;
          const [left, right, low, high] = boxOf(holder.outline);
          const along = holder.kind === "rail" ? [x - left, right - x] : [y - low, high - y];
          if (
            holder.outline.length === 4 &&
            holder.grain === (holder.kind === "rail" ? "x" : "y") &&
            Math.min(...along) < 10 - NOISE_MM &&
            holder.kind === "batten"
          )
            bad.push(`${piece.mark} at ${x}, ${y} near the end of ${into}`);
          if (joints.some(([l, r, b, t]) => x > l && x < r && y > b && y < t))
            bad.push(`${piece.mark} in a joint`);
        }
    }
    expect(bad).toEqual([]);
    expect(seen).toBeGreaterThan(100);
  });

  it("names an opening of the cavity at the base and the top of every zone, and over and under every opening that has a sill", () => {
    const missing: string[] = [];
    for (const face of faces) {
      for (const zone of face.zones) {
        const own = face.vents.filter((vent) => vent.zone === zone.id);
        for (const position of ["base", "top"] as const)
          if (!own.some((vent) => vent.position === position && vent.netCm2PerM > 0))
            missing.push(`${face.id}.${zone.id} ${position}`);
      }
      const given = project.faces.find(({ id }) => id === face.id);
      for (const { id, region } of face.openings) {
        const opening = given?.openings.find((one) => one.id === id);
        const near = (position: string): boolean =>
          face.vents.some(
            (vent) =>
              vent.position === position &&
              vent.x[0] < region.x[1] &&
              vent.x[1] > region.x[0] &&
              vent.netCm2PerM > 0,
          );
        if (!near("over opening") && !near("top")) missing.push(`${face.id} over ${id}`);
        if (!opening?.toBase && !near("under opening")) missing.push(`${face.id} under ${id}`);
      }
    }
    expect(missing).toEqual([]);
  });
});

describe("the demo", () => {
  const read = readProject(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"), "demo");
  if (!read.ok) throw new Error("the demo does not read");
  const { project } = read;
  const { facade } = design(project);

  it("joins sheets and boards in one plane at its junctions, each edge on a batten of its own zone", () => {
    let seen = 0;
    for (const face of facade.faces)
      for (const joint of face.joints.filter(({ kind }) => kind === "junction")) {
        const [left, right, low, high] = boxOf(joint.region);
        const heights = Array.from({ length: 40 }, (_, i) => low + ((high - low) * (i + 0.5)) / 40);
        for (const y of heights) {
          const at = (edge: number, side: 0 | 1) =>
            face.pieces.find(({ kind, outline }) => {
              const box = boxOf(outline);
              const ends = Math.abs(box[side === 0 ? 1 : 0] - edge) < NOISE_MM;
              return (kind === "sheet" || kind === "board") && ends && box[2] < y && box[3] > y;
            });
          const [one, other] = [at(left, 0), at(right, 1)];
          // A course's gap lies at this height.
          if (!one || !other) continue;
          seen += 1;
          expect(Math.abs(one.z[1] - other.z[1])).toBeLessThanOrEqual(project.limits.facesMeetWithin.value);
          expect(one.zone).not.toBe(other.zone);
          for (const [piece, strip] of [
            [one, [left - BEARING_MM, left]],
            [other, [right, right + BEARING_MM]],
          ] as const) {
            const holds = face.pieces.some(({ kind, zone, outline }) => {
              const [l, r] = boxOf(outline);
              return (
                kind === "batten" &&
                zone === piece.zone &&
                l <= strip[0] + NOISE_MM &&
                r >= strip[1] - NOISE_MM
              );
            });
            expect(holds, `${piece.mark} at ${strip[0]}`).toBe(true);
          }
        }
      }
    expect(seen).toBeGreaterThan(0);
  });

  it("holds the points of its boards under the rake to where they are high enough for a screw", () => {
    let points = 0;
    for (const piece of facade.faces.flatMap(({ pieces }) => pieces)) {
      if (piece.kind !== "board" || piece.grain !== "x" || piece.holes.length > 0) continue;
      const sloping = piece.outline.some(([x, y], i) => {
        const next = piece.outline[(i + 1) % piece.outline.length];
        return next && x !== next[0] && y !== next[1];
      });
      const zone = project.faces
        .find(({ id }) => id === piece.face)
        ?.zones.find(({ id }) => id === piece.zone);
      const cladding = project.claddings.find(({ id }) => id === zone?.cladding);
      if (!sloping || cladding?.kind !== "boards" || piece.fixings.length === 0) continue;
      const [left, right] = boxOf(piece.outline);
      const needed = 2 * cladding.edgeDistance.value;
      const high: number[] = [];
      for (let x = left + 0.5; x < right; x += 1)
        if (sliceVertical(piece.outline, x).some(([from, to]) => to - from >= needed)) high.push(x);
      if (high.length === 0) continue;
      const xs = piece.fixings.map(({ x }) => x);
      points += 1;
      // To the centimetre, as the finding measures it.
      expect(Math.min(...xs) - Math.min(...high), piece.mark).toBeLessThanOrEqual(
        cladding.maxOverhang.value + 10,
      );
      expect(Math.max(...high) - Math.max(...xs), piece.mark).toBeLessThanOrEqual(
        cladding.maxOverhang.value + 10,
      );
    }
    expect(points).toBeGreaterThan(5);
  });
});
