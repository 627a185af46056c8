/** Readings of a wall: how far it stands out from the plumb plane that the laser drew. */
import type { Project } from "../../project/schema/project.ts";
import type { SiteState } from "../journal/fold.ts";

/** One reading, in the face frame (mm). */
export interface Reading {
  readonly face: string;
  readonly x: number;
  readonly y: number;
  /** Positive where the wall stands out from the plumb plane. */
  readonly outward: number;
}

/** A place that was read, once or more: the mean of its readings. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly outward: number;
  readonly times: number;
}

/** The readings that the project file holds. */
export function readingsOf({ survey = [] }: Pick<Project, "survey">): Reading[] {
  return survey.flatMap(({ face, x, y, outward, places = [], again = [] }) => [
    ...outward.flatMap((row, j) =>
      row.map((value, i) => ({ face, x: x[i] as number, y: y[j] as number, outward: value })),
    ),
    ...[...places, ...again].map((one) => ({ face, x: one.x, y: one.y, outward: one.outward })),
  ]);
}

/** What phones told at the crossings of battens. */
export function readingsTold({ readings }: Pick<SiteState, "readings">): Reading[] {
  return readings.map(({ place: { face, x, y }, body: { outward } }) => ({ face, x, y, outward }));
}

/** What the file holds and what phones told, in that order. */
export function readingsOfBoth(
  project: Project,
  told: Pick<SiteState, "readings"> | undefined,
): readonly Reading[] {
  return [...readingsOf(project), ...(told ? readingsTold(told) : [])];
}

/** The places of one face in the order in which they were first read. */
export function spotsOf(readings: readonly Reading[], face: string): Spot[] {
  const byPlace = new Map<string, Reading[]>();
  for (const reading of readings.filter((one) => one.face === face)) {
    const place = `${reading.x} ${reading.y}`;
    byPlace.set(place, [...(byPlace.get(place) ?? []), reading]);
  }
  return [...byPlace.values()].map((same) => ({
    x: (same[0] as Reading).x,
    y: (same[0] as Reading).y,
    outward: same.reduce((sum, { outward }) => sum + outward, 0) / same.length,
    times: same.length,
  }));
}

export interface RepeatError {
  /** Standard deviation of one reading (mm), pooled over the places that were read more than once. */
  readonly deviation: number;
  /** Readings less places: how much the deviation rests on. */
  readonly freedom: number;
}

/**
 * What repeated readings say of the error of one: s² = Σ (r − r̄)² / Σ (n − 1) over the places read n times (ISO 5725-2:1994, 7.4.5, the repeatability
 * variance). Undefined where no place was read twice.
 */
export function repeatError(readings: readonly Reading[]): RepeatError | undefined {
  const faces = [...new Set(readings.map(({ face }) => face))];
  let squares = 0;
  let freedom = 0;
  for (const face of faces) {
    for (const { x, y, outward, times } of spotsOf(readings, face)) {
      freedom += times - 1;
      for (const one of readings) {
        if (one.face === face && one.x === x && one.y === y) squares += (one.outward - outward) ** 2;
      }
    }
  }
  return freedom > 0 ? { deviation: Math.sqrt(squares / freedom), freedom } : undefined;
}
