/** Openings of a generated face: windows, doors, square passages, niches and lined recesses, some hard beside one another; ducts. */
import fc from "fast-check";
import type { ProjectDocument } from "../../../src/project/schema/project.ts";
import { millimetres, share } from "./numbers.ts";

type FaceDocument = ProjectDocument["faces"][number];
type OpeningDocument = FaceDocument["openings"][number];
type Penetration = NonNullable<FaceDocument["penetrations"]>[number];

interface OpeningSeed {
  readonly kind: "window" | "door" | "passage" | "niche" | "recess";
  readonly left: number;
  readonly width: number;
  readonly sill: number;
  readonly height: number;
  readonly own: readonly [number, number, number] | null;
}

interface DuctSeed {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  readonly clearance: number | null;
}

export interface OpeningsSeed {
  readonly openings: readonly OpeningSeed[];
  readonly ducts: readonly DuctSeed[];
}

export const openingsSeed: fc.Arbitrary<OpeningsSeed> = fc.record({
  openings: fc.array(
    fc.record({
      kind: fc.constantFrom("window", "window", "door", "passage", "niche", "recess", "recess"),
      left: millimetres(40, 900),
      width: millimetres(300, 1400, 5),
      sill: millimetres(100, 1300, 10),
      height: millimetres(150, 1300, 10),
      own: fc.option(fc.tuple(millimetres(0, 25), millimetres(5, 40), millimetres(5, 40)), { freq: 4 }),
    }),
    { maxLength: 3 },
  ),
  ducts: fc.array(
    fc.record({
      x: share(3, 97),
      y: millimetres(60, 2400),
      diameter: millimetres(30, 200, 5),
      clearance: fc.option(millimetres(0, 30), { freq: 4 }),
    }),
    { maxLength: 3 },
  ),
});

export interface Wall {
  readonly id: string;
  readonly length: number;
  /** Between which heights all of the wall is there. */
  readonly sure: readonly [number, number];
}

export const RECESS_DEEP_MM = 300;
const PASSAGE_MOST_MM = 400;
/** From a wall's ends: room for the neighbour's own recess and for the timber behind both linings. */
const RECESS_FROM_END_MM = 700;
const RECESS_LEAST_MM = 700;

export function openingsOf({ openings }: OpeningsSeed, { id, length, sure }: Wall): OpeningDocument[] {
  const made: OpeningDocument[] = [];
  let reached = 0;
  for (const one of openings) {
    const lined = one.kind === "recess";
    const wide = one.kind === "passage" ? Math.min(one.width, PASSAGE_MOST_MM) : one.width;
    const width = lined ? Math.max(RECESS_LEAST_MM, wide) : wide;
    const left = reached + (lined ? Math.max(RECESS_FROM_END_MM, one.left) : one.left);
    const right = left + width;
    if (right + (lined ? RECESS_FROM_END_MM : 40) > length) continue;
    const toBase = one.kind === "door" || lined;
    const bottom = lined ? sure[0] : toBase ? Math.max(0, sure[0]) : Math.max(one.sill, sure[0] + 30);
    const tall = one.kind === "passage" ? Math.min(one.height, PASSAGE_MOST_MM) : one.height;
    const top = Math.min(toBase ? 2050 : bottom + tall, sure[1] - 20);
    if (top - bottom < 100) continue;
    reached = lined ? right + RECESS_FROM_END_MM : right;
    made.push({
      id: `${id}-${made.length + 1}`,
      kind: one.kind === "passage" ? "other" : one.kind === "niche" ? "recess" : one.kind,
      x: [left, right],
      y: [bottom, top],
      ...(toBase && { toBase: true }),
      ...((one.kind === "niche" || lined) && { depth: RECESS_DEEP_MM }),
      ...(one.own && !lined && { clearance: { jamb: one.own[0], head: one.own[1], sill: one.own[2] } }),
    });
  }
  return made;
}

/** Openings that faces of their own line. */
export function isLined({ kind, toBase }: OpeningDocument): boolean {
  return kind === "recess" && toBase === true;
}

export function ductsOf(
  { ducts }: OpeningsSeed,
  { id, length, sure }: Wall,
  openings: readonly OpeningDocument[],
): Penetration[] {
  return ducts.flatMap(({ x: share, y, diameter, clearance }, i): Penetration[] => {
    const x = Math.round(length * share);
    const r = diameter / 2 + 2;
    const beyond = x - r < 0 || x + r > length || y - r < sure[0] || y + r > sure[1];
    const clash = openings.some(
      (one) =>
        x + r > Number(one.x[0]) &&
        x - r < Number(one.x[1]) &&
        y + r > Number(one.y[0]) &&
        y - r < Number(one.y[1]),
    );
    if (beyond || clash) return [];
    return [
      {
        id: `${id}-duct-${i + 1}`,
        kind: "duct",
        x,
        y,
        diameter,
        ...(clearance !== null && { clearance: { value: clearance, basis: "given" as const } }),
      },
    ];
  });
}
