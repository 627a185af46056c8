/** What was measured of openings and ends, typed; and cladding laid again for it, taken into the file. */
import type { PatchOperation } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { valueAt } from "../pointer.ts";
import type { LaidPiece, LaidRecord } from "../schema/as-built.ts";
import { type Change, faceAt, likeWritten, type Source, spanLikeWritten } from "./change.ts";

export const MEASURES = ["left", "width", "sill", "height"] as const;

/** One measure of an opening (mm, face frame); undefined takes it out again. A diagonal alone says nothing: both are kept together. */
export function setMeasured(
  { project, document }: Source,
  { face, opening }: { readonly face: string; readonly opening: string },
  measures: Readonly<Partial<Record<(typeof MEASURES)[number], number | undefined>>> & {
    readonly diagonals?: readonly [number, number] | undefined;
  },
): Change | undefined {
  const on = project.faces.find(({ id }) => id === face);
  if (!on?.openings.some(({ id }) => id === opening)) return undefined;
  const list = project.asBuilt?.openings;
  const index = list?.findIndex((one) => one.face === face && one.opening === opening) ?? -1;
  const old = index < 0 ? {} : (valueAt(document, ["asBuilt", "openings", index]) as Record<string, unknown>);
  const next: Record<string, unknown> = { face, opening, ...old };
  for (const [key, value] of Object.entries(measures)) {
    if (value === undefined) delete next[key];
    else next[key] = typeof value === "number" ? likeWritten(value, old[key]) : value;
  }
  return {
    operations: listed(project, "openings", { index, value: next }),
    says: message("project.edit.measured", { face, opening }),
  };
}

/** Where the sheathing of a face ends (mm, face frame); undefined takes it out again. */
export function setEnd(
  { project, document }: Source,
  { face, end }: { readonly face: string; readonly end: "left" | "right" },
  at: number | undefined,
): Change | undefined {
  const list = project.asBuilt?.ends;
  const index = list?.findIndex((one) => one.face === face && one.end === end) ?? -1;
  const says = message("project.edit.measured-end", { face });
  if (at === undefined) {
    return index < 0 ? undefined : { operations: [{ op: "remove", path: `/asBuilt/ends/${index}` }], says };
  }
  const old = index < 0 ? undefined : valueAt(document, ["asBuilt", "ends", index, "at"]);
  return {
    operations: listed(project, "ends", { index, value: { face, end, at: likeWritten(at, old) } }),
    says,
  };
}

function listed(
  { asBuilt }: Source["project"],
  key: "openings" | "ends" | "laid",
  { index, value }: { readonly index: number; readonly value: unknown },
): PatchOperation[] {
  if (!asBuilt) return [{ op: "add", path: "/asBuilt", value: { [key]: [value] } }];
  if (!asBuilt[key]) return [{ op: "add", path: `/asBuilt/${key}`, value: [value] }];
  return index < 0
    ? [{ op: "add", path: `/asBuilt/${key}/-`, value }]
    : [{ op: "replace", path: `/asBuilt/${key}/${index}`, value }];
}

export interface TakenFace {
  readonly face: string;
  /** Where openings were measured to be: sides that were not keep their place. */
  readonly openings: readonly {
    readonly opening: string;
    readonly x: readonly [number, number];
    readonly y: readonly [number, number];
  }[];
  /** Edges of pieces, from where the design has them. */
  readonly pieces: readonly {
    readonly mark: string;
    readonly x: readonly (readonly [number, number])[];
    readonly y: readonly (readonly [number, number])[];
  }[];
}

/** Puts openings where they were measured, and pieces where they were laid again; undefined where nothing changes. */
export function takeLaid(source: Source, faces: readonly TakenFace[]): Change | undefined {
  const { project, document } = source;
  const operations: PatchOperation[] = [];
  const records: LaidRecord[] = [...(project.asBuilt?.laid ?? [])];
  for (const { face: id, openings, pieces } of faces) {
    const found = faceAt(source, id);
    const index = records.findIndex((one) => one.face === id);
    const record = records[index];
    const on = found?.face;
    for (const { opening, x, y } of found ? openings : []) {
      const i = on?.openings.findIndex((one) => one.id === opening) ?? -1;
      const old = on?.openings[i];
      const path = `${found?.path}/openings/${i}`;
      const written = (axis: "x" | "y") =>
        valueAt(document, ["faces", project.faces.findIndex((one) => one.id === id), "openings", i, axis]);
      if (!old) continue;
      if (x.some((at, end) => at !== old.x[end]))
        operations.push({ op: "replace", path: `${path}/x`, value: spanLikeWritten(x, written("x")) });
      if (y.some((at, end) => at !== old.y[end]))
        operations.push({ op: "replace", path: `${path}/y`, value: spanLikeWritten(y, written("y")) });
    }
    if (!on && !record) continue;
    const next: LaidRecord = {
      face: id,
      drawn: record?.drawn ?? (on?.openings ?? []).map(({ id: opening, x, y }) => ({ opening, x, y })),
      pieces: composed(record?.pieces ?? [], pieces),
    };
    if (index < 0) records.push(next);
    else records[index] = next;
  }
  const laid = records.map((record) => ({ ...record }));
  if (operations.length === 0 && JSON.stringify(laid) === JSON.stringify(project.asBuilt?.laid ?? []))
    return undefined;
  operations.push(
    project.asBuilt
      ? { op: project.asBuilt.laid ? "replace" : "add", path: "/asBuilt/laid", value: laid }
      : { op: "add", path: "/asBuilt", value: { laid } },
  );
  const count = faces.reduce((sum, { pieces }) => sum + pieces.length, 0);
  return { operations, says: message("project.edit.laid", { faces: faces.map(({ face }) => face), count }) };
}

/** Moves after moves: from where a piece was set out to where it is now. */
function composed(before: readonly LaidPiece[], after: TakenFace["pieces"]): LaidPiece[] {
  const then = new Map(after.map((one) => [one.mark, one]));
  const carried = before.map(({ mark, x, y }): LaidPiece => {
    const next = then.get(mark);
    return { mark, x: carriedOn(x, next?.x), y: carriedOn(y, next?.y) };
  });
  const known = new Set(before.map(({ mark }) => mark));
  const fresh = after
    .filter(({ mark }) => !known.has(mark))
    .map(({ mark, x, y }): LaidPiece => ({ mark, x: x.map(pair), y: y.map(pair) }));
  return [...carried, ...fresh]
    .filter(({ x, y }) => [...x, ...y].some(([from, to]) => from !== to))
    .sort((a, b) => (a.mark < b.mark ? -1 : 1));
}

function pair([from, to]: readonly [number, number]): [number, number] {
  return [from, to];
}

function carriedOn(
  moves: LaidPiece["x"],
  next: readonly (readonly [number, number])[] | undefined,
): LaidPiece["x"] {
  return moves.map(([from, to]) => [from, next?.find(([at]) => at === to)?.[1] ?? to]);
}
