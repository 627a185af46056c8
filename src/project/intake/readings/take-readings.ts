/** The survey of a project with the readings of a table: place by place, what the table does not name stays. */
import type { PatchOperation } from "../../../findings/finding.ts";
import { type Message, message } from "../../../text/message.ts";
import { snap } from "../../../units/length.ts";
import { type Change, likeWritten, type Source } from "../../editing/change.ts";
import { isGroup, valueAt } from "../../pointer.ts";
import type { Project } from "../../schema/project.ts";
import type { TakenReading } from "./read-readings.ts";
import "../texts.ts";

/** A place of a table, with what was read there before and what is read now, each as often as it was read (mm). */
export interface PlaceTaken {
  readonly face: string;
  readonly x: number;
  readonly y: number;
  readonly kind: "new" | "replaced" | "same";
  readonly was: readonly number[];
  readonly is: readonly number[];
}

type Survey = NonNullable<Project["survey"]>[number];

/** What the file holds of a place, or is to hold: its first reading before those that repeat it. */
interface Held {
  readonly x: number;
  readonly y: number;
  readonly outward: readonly number[];
  /** The same as they are written. */
  readonly written: readonly unknown[];
  /** Their entries as they are written, with notes; none of those on the grid, and of new ones. */
  readonly entries: readonly unknown[];
}

export function takeReadings(
  source: Source,
  readings: readonly TakenReading[],
  file: string,
): { readonly change: Change; readonly tells: readonly Message[]; readonly places: readonly PlaceTaken[] } {
  const { project } = source;
  const faces = [...new Set(readings.map(({ face }) => face))];
  const taken = faces.map((face) => {
    const index = project.survey?.findIndex((one) => one.face === face) ?? -1;
    const held = heldOf(source, index);
    const places = placesOf(
      readings.filter((one) => one.face === face),
      held,
    );
    return { face, index, held, places, stay: [...held.keys()].filter((key) => !places.has(key)).length };
  });
  const changed = taken.filter(({ places }) => [...places.values()].some(({ kind }) => kind !== "same"));
  const operations = changed.map(({ face, index, held, places }): PatchOperation => {
    const value = surveyOf(source, { face, index }, merged(held, places));
    return index < 0
      ? { op: "add", path: "/survey/-", value }
      : { op: "replace", path: `/survey/${index}`, value };
  });
  return {
    change: {
      operations: project.survey ? operations : [{ op: "add", path: "/survey", value: [] }, ...operations],
      says: message("project.edit.readings", { faces, file }),
    },
    tells: taken.flatMap(({ face, places, stay }) => told(face, [...places.values()], stay)),
    places: taken.flatMap(({ places }) => [...places.values()]),
  };
}

const keyOf = ({ x, y }: { readonly x: number; readonly y: number }): string => `${x} ${y}`;

function heldOf({ project, document }: Source, index: number): Map<string, Held> {
  const held = new Map<string, Held>();
  const survey = project.survey?.[index];
  if (!survey) return held;
  const add = ({ x, y }: Pick<Held, "x" | "y">, outward: number, written: unknown, entry?: unknown): void => {
    const key = keyOf({ x, y });
    const before = held.get(key);
    held.set(key, {
      x,
      y,
      outward: [...(before?.outward ?? []), outward],
      written: [...(before?.written ?? []), written],
      entries: [...(before?.entries ?? []), entry],
    });
  };
  survey.outward.forEach((row, j) => {
    row.forEach((value, i) => {
      const written = valueAt(document, ["survey", index, "outward", j, i]);
      add({ x: survey.x[i] as number, y: survey.y[j] as number }, value, written);
    });
  });
  for (const list of ["places", "again"] as const)
    (survey[list] ?? []).forEach(({ outward, ...place }, i) => {
      const path = ["survey", index, list, i];
      add(place, outward, valueAt(document, [...path, "outward"]), valueAt(document, path));
    });
  return held;
}

function placesOf(
  readings: readonly TakenReading[],
  held: ReadonlyMap<string, Held>,
): Map<string, PlaceTaken> {
  const read = new Map<string, TakenReading[]>();
  for (const one of readings) {
    const reading = { ...one, x: snap(one.x), y: snap(one.y), outward: snap(one.outward) };
    const key = keyOf(reading);
    read.set(key, [...(read.get(key) ?? []), reading]);
  }
  return new Map(
    [...read].map(([key, of]): [string, PlaceTaken] => {
      const { face, x, y } = of[0] as TakenReading;
      const was = held.get(key)?.outward ?? [];
      const is = of.map(({ outward }) => outward);
      const isSame = was.length === is.length && was.every((one, i) => one === is[i]);
      return [key, { face, x, y, was, is, kind: isSame ? "same" : was.length > 0 ? "replaced" : "new" }];
    }),
  );
}

/** Places that stay as they were, as they were written; then those of the table. */
function merged(held: ReadonlyMap<string, Held>, places: ReadonlyMap<string, PlaceTaken>): Held[] {
  const kept = [...held].map(([key, one]): Held => {
    const taken = places.get(key);
    if (!taken || taken.kind === "same") return one;
    const written = taken.is.map((mm, i) => likeWritten(mm, one.written[i] ?? one.written[0]));
    return { ...one, outward: taken.is, written, entries: [] };
  });
  const fresh = [...places.values()].filter(({ kind }) => kind === "new");
  return [...kept, ...fresh.map(({ x, y, is }): Held => ({ x, y, outward: is, written: is, entries: [] }))];
}

/** A grid where every place of it was read; else the grid that was there, and the others by themselves. */
function surveyOf(
  { project, document }: Source,
  { face, index }: { readonly face: string; readonly index: number },
  places: readonly Held[],
): Record<string, unknown> {
  const before: Partial<Survey> = project.survey?.[index] ?? {};
  const written = valueAt(document, ["survey", index]);
  const { places: _places, again: _again, ...rest } = isGroup(written) ? written : { places: [], again: [] };
  const [xs, ys] = [growing(places.map(({ x }) => x)), growing(places.map(({ y }) => y))];
  const isFull = xs.length * ys.length === places.length;
  const [x, y] = isFull ? [xs, ys] : [before.x ?? [], before.y ?? []];
  const at = new Map(places.map((one) => [keyOf(one), one]));
  const onGrid = new Set(y.flatMap((up) => x.map((across) => keyOf({ x: across, y: up }))));
  const off = places.filter((one) => !onGrid.has(keyOf(one)));
  const again = places.flatMap((one) => one.written.slice(1).map((_, i) => entryOf(one, i + 1)));
  return {
    ...rest,
    face,
    x: sameList(x, before.x) ? rest.x : x,
    y: sameList(y, before.y) ? rest.y : y,
    outward: y.map((up) => x.map((across) => at.get(keyOf({ x: across, y: up }))?.written[0])),
    ...(off.length > 0 && { places: off.map((one) => entryOf(one, 0)) }),
    ...(again.length > 0 && { again }),
  };
}

function entryOf({ x, y, written, entries }: Held, i: number): unknown {
  return entries[i] ?? { x, y, outward: written[i] };
}

function growing(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

function sameList(a: readonly number[], b: readonly number[] | undefined): boolean {
  return b !== undefined && a.length === b.length && a.every((one, i) => one === b[i]);
}

function told(face: string, places: readonly PlaceTaken[], stay: number): Message[] {
  const count = (kind: PlaceTaken["kind"]): number => places.filter((one) => one.kind === kind).length;
  const says = [
    ["new", count("new")],
    ["replaced", count("replaced")],
    ["same", count("same")],
    ["stay", stay],
  ] as const;
  return says
    .filter(([, many]) => many > 0)
    .map(([what, many]) => message(`intake.change.readings-${what}`, { face, count: many }));
}
