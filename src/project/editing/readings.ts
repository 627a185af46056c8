/** Readings of a wall as the file keeps them: a grid for a face, typed place by place. */
import { polygonBounds } from "../../geometry/polygon.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { pointerOf, valueAt } from "../pointer.ts";
import type { Face } from "../schema/project.ts";
import { type Change, faceAt, likeWritten, type Source } from "./change.ts";

/** Readings stand no further apart than this (mm), common practice. */
const APART_MM = 1200;

/** A grid for a face that has none, each reading nothing until it is taken. */
export function startSurvey(source: Source, { face: id }: { readonly face: string }): Change | undefined {
  const face = faceAt(source, id)?.face;
  if (!face || source.project.survey?.some((one) => one.face === id)) return undefined;
  const { x, y } = evenGrid(face);
  const value = { face: id, x, y, outward: y.map(() => x.map(() => 0)) };
  const operations = source.project.survey
    ? [{ op: "add" as const, path: "/survey/-", value }]
    : [{ op: "add" as const, path: "/survey", value: [value] }];
  return { operations, says: message("project.edit.survey", { face: id }) };
}

/** Places to read a face at, evenly from end to end and from its lowest point to its highest (mm). */
export function evenGrid({ outline }: Pick<Face, "outline">): {
  readonly x: readonly number[];
  readonly y: readonly number[];
} {
  const { x, y } = polygonBounds(outline);
  return { x: evenly(x), y: evenly(y) };
}

function evenly([from, to]: readonly [number, number]): number[] {
  const steps = Math.max(1, Math.ceil((to - from) / APART_MM));
  return Array.from({ length: steps + 1 }, (_, i) => snap(Math.round(from + ((to - from) * i) / steps)));
}

/** One reading of a face's grid, by its column and row. */
export function setReading(
  { project, document }: Source,
  { face, column, row }: { readonly face: string; readonly column: number; readonly row: number },
  outward: number,
): Change | undefined {
  const index = project.survey?.findIndex((one) => one.face === face) ?? -1;
  const grid = project.survey?.[index];
  if (!grid || grid.outward[row]?.[column] === undefined) return undefined;
  const old = valueAt(document, ["survey", index, "outward", row, column]);
  return {
    operations: [
      {
        op: "replace",
        path: `/survey/${index}/outward/${row}/${column}`,
        value: likeWritten(outward, old),
      },
    ],
    says: message("project.edit.reading", { face, x: grid.x[column] ?? 0, y: grid.y[row] ?? 0 }),
  };
}

/** One reading off a face's grid, by its place in the list of these. */
export function setPlace(
  { project, document }: Source,
  { face, at }: { readonly face: string; readonly at: number },
  outward: number,
): Change | undefined {
  const index = project.survey?.findIndex((one) => one.face === face) ?? -1;
  const place = project.survey?.[index]?.places?.[at];
  if (!place) return undefined;
  const path = ["survey", index, "places", at, "outward"];
  return {
    operations: [
      {
        op: "replace",
        path: pointerOf(path),
        value: likeWritten(outward, valueAt(document, path)),
      },
    ],
    says: message("project.edit.reading", { face, x: place.x, y: place.y }),
  };
}

/** The same place read once more. */
export function readAgain(
  { project }: Source,
  {
    face,
    x,
    y,
    outward,
  }: { readonly face: string; readonly x: number; readonly y: number; readonly outward: number },
): Change | undefined {
  const index = project.survey?.findIndex((one) => one.face === face) ?? -1;
  const grid = project.survey?.[index];
  if (!grid) return undefined;
  const value = { x, y, outward };
  return {
    operations: grid.again
      ? [{ op: "add", path: `/survey/${index}/again/-`, value }]
      : [{ op: "add", path: `/survey/${index}/again`, value: [value] }],
    says: message("project.edit.read-again", { face, x, y }),
  };
}
