/** Faces of a generated building, and those that line its recesses. */
import fc from "fast-check";
import type { ProjectDocument } from "../../../src/project/schema/project.ts";
import { BUILD_UP, CLADDING } from "./makes.ts";
import { ductsOf, isLined, type OpeningsSeed, openingsOf, openingsSeed, RECESS_DEEP_MM } from "./openings.ts";
import { type OutlineSeed, outlineOf, outlineSeed, sureHeights } from "./outlines.ts";
import { type Make, type ZonesSeed, zonesOf, zonesSeed } from "./zones.ts";

export type FaceDocument = ProjectDocument["faces"][number];
type Point = readonly [number, number];

export interface FaceSeed {
  readonly outline: OutlineSeed;
  readonly openings: OpeningsSeed;
  readonly zones: ZonesSeed;
  readonly lining: Make;
}

export const faceSeed: fc.Arbitrary<FaceSeed> = fc.record({
  outline: outlineSeed,
  openings: openingsSeed,
  zones: zonesSeed,
  lining: fc.constantFrom("boards", "sheets", "upright"),
});

interface Place {
  readonly id: string;
  readonly from: Point;
  readonly to: Point;
}

function lengthOf({ from, to }: Pick<Place, "from" | "to">): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}

function azimuthOf({ from, to }: Place): number {
  const heading = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  // Walking on counter-clockwise in plan turns the outward normal against the compass.
  return Math.round(((((180 - heading) % 360) + 360) % 360) * 10) / 10;
}

/** @param written a wall's length as the drawing has it, to the millimetre or to the sixteenth */
export function faceOf(seed: FaceSeed, place: Place, written: (mm: number) => number): FaceDocument {
  const length = written(lengthOf(place));
  const outline = outlineOf(seed.outline, length);
  const wall = { id: place.id, length, sure: sureHeights(outline) };
  const openings = openingsOf(seed.openings, wall);
  return {
    id: place.id,
    azimuthDeg: azimuthOf(place),
    plan: { from: [...place.from], to: [...place.to] },
    outline,
    ground: groundOf(length),
    openings: openings.map((one) => (isLined(one) ? { ...one, linedBy: liningIds(one.id) } : one)),
    penetrations: ductsOf(seed.openings, wall, openings),
    zones: zonesOf(seed.zones, length),
  };
}

function groundOf(length: number): FaceDocument["ground"] {
  return [
    [0, -500],
    [length, -500],
  ];
}

function liningIds(opening: string): string[] {
  return ["l", "b", "r"].map((side) => `${opening}${side}`);
}

/** A lining's head lies this far under the recess's, where the soffit is. */
const SOFFIT_MM = 20;

/** The three walls of each lined recess, from the face's own plane inward, along its back and out again. */
export function liningsOf(
  face: FaceDocument,
  { make, planeZ, written }: { make: Make; planeZ: number; written: (mm: number) => number },
): FaceDocument[] {
  const [from, to] = [face.plan.from.map(Number), face.plan.to.map(Number)] as unknown as [Point, Point];
  const length = lengthOf({ from, to });
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const at = (x: number, z: number): Point => [
    written(from[0] + along[0] * x + along[1] * z),
    written(from[1] + along[1] * x - along[0] * z),
  ];
  return face.openings.filter(isLined).flatMap((opening) => {
    const [left, right] = opening.x.map(Number) as [number, number];
    const corners = [
      at(left, planeZ),
      at(left, -RECESS_DEEP_MM),
      at(right, -RECESS_DEEP_MM),
      at(right, planeZ),
    ];
    const top = Number(opening.y[1]) - SOFFIT_MM;
    return liningIds(opening.id).map((id, i): FaceDocument => {
      const place = { id, from: corners[i] as Point, to: corners[i + 1] as Point };
      const wide = written(lengthOf(place));
      const base = Number(opening.y[0]);
      return {
        id,
        azimuthDeg: azimuthOf(place),
        plan: { from: [...place.from], to: [...place.to] },
        outline: [
          [0, base],
          [wide, base],
          [wide, top],
          [0, top],
        ],
        ground: groundOf(wide),
        openings: [],
        zones: [
          { id: "z1", cladding: CLADDING[make], buildUp: BUILD_UP[make], x: ["left end", "right end"] },
        ],
      };
    });
  });
}
