/** Openings: added, copied, placed, made another kind, and taken out. */
import type { Interval } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { isGroup, valueAt } from "../pointer.ts";
import type { Face, Opening } from "../schema/project.ts";
import { type Added, type Change, faceAt, nextId, type Ref, type Source, spanLikeWritten } from "./change.ts";
import { roomOn } from "./room.ts";
import { takeOut } from "./taking-out.ts";

/** How large one starts, and how high its sill (mm); common practice. */
export const OPENING_SIZES = {
  window: { width: 900, height: 1200, sill: 900 },
  door: { width: 900, height: 2100, sill: 0 },
} as const;

export type NewOpening = keyof typeof OPENING_SIZES;

/** A threshold no higher over the cladding's lower end than a step stands on it (mm); common practice. */
const STEP_MM = 200;

const STEMS: Readonly<Record<Opening["kind"], string>> = { window: "W", door: "D", recess: "R", other: "O" };

function freeId(source: Source, kind: Opening["kind"]): string {
  return openingIdAfter(source, kind, []);
}

/** The next free id of a kind, where `given` are taken besides those of the file. */
export function openingIdAfter(source: Source, kind: Opening["kind"], given: readonly string[]): string {
  const taken = source.project.faces.flatMap(({ openings }) => openings.map(({ id }) => id));
  return nextId(source, STEMS[kind], [...taken, ...given]);
}

/** Where a new one goes when no place is told: the middle of the face, or beside what stands there. */
export function roomForOpening(
  face: Face,
  { kind, width, height }: { kind: NewOpening; width: number; height: number },
): Rect {
  const { x } = polygonBounds(face.outline);
  return roomOn(face, { width, height }, [snap((x[0] + x[1] - width) / 2), OPENING_SIZES[kind].sill]);
}

export function addOpening(
  source: Source,
  { face: id, kind, rect }: { face: string; kind: NewOpening; rect: Rect },
): Added | undefined {
  const at = faceAt(source, id);
  if (!at) return undefined;
  const opening = {
    id: freeId(source, kind),
    kind,
    x: rect.x,
    y: rect.y,
    ...(kind === "door" && standsLow(at.face, rect.y) && { toBase: true }),
  };
  return {
    operations: [{ op: "add", path: `${at.path}/openings/-`, value: opening }],
    says: message("project.edit.add", { kind, id: opening.id }),
    added: { face: id, id: opening.id },
  };
}

/** A threshold hardly above the lower end of what is clad: no cladding goes under it. */
export function standsLow({ outline }: Face, [threshold]: Interval): boolean {
  return threshold - polygonBounds(outline).y[0] <= STEP_MM;
}

function openingAt(source: Source, { face: id, id: wanted }: Ref) {
  const at = faceAt(source, id);
  const index = at?.face.openings.findIndex((one) => one.id === wanted) ?? -1;
  const opening = at?.face.openings[index];
  const path = `${at?.path}/openings/${index}`;
  const steps = path.slice(1).split("/");
  return at && opening && { face: at.face, opening, path, written: valueAt(source.document, steps) };
}

/** The same again where there is room; what lines a recess, and its own code, are not taken twice. */
export function copyOpening(source: Source, ref: Ref): Added | undefined {
  const at = openingAt(source, ref);
  if (!at || !isGroup(at.written)) return undefined;
  const { x, y, kind } = at.opening;
  const id = freeId(source, kind);
  const size = { width: snap(x[1] - x[0]), height: snap(y[1] - y[0]) };
  const rect = roomOn(at.face, size, [x[1], y[0]]);
  const { linedBy, soffit, ...same } = at.written;
  const copy = { ...same, id, x: rect.x, y: rect.y };
  return {
    operations: [{ op: "add", path: at.path.replace(/\d+$/, "-"), value: copy }],
    says: message("project.edit.copy", { id: ref.id, copy: id }),
    added: { face: ref.face, id },
  };
}

export function placeOpening(source: Source, ref: Ref, { x, y }: Rect): Change | undefined {
  const at = openingAt(source, ref);
  return (
    at && {
      operations: [
        { op: "replace", path: `${at.path}/x`, value: spanLikeWritten(x, valueAt(at.written, ["x"])) },
        { op: "replace", path: `${at.path}/y`, value: spanLikeWritten(y, valueAt(at.written, ["y"])) },
      ],
      says: message("project.edit.place", { id: ref.id }),
    }
  );
}

export function removeOpening(source: Source, ref: Ref): Change | undefined {
  const at = openingAt(source, ref);
  return (
    at && {
      operations: takeOut(source, { openings: [ref] }),
      says: message("project.edit.remove", { kind: at.opening.kind, id: ref.id }),
    }
  );
}

/** Its id stays: marks, notes and waivers speak of it. */
export function changeOpeningKind(source: Source, ref: Ref, kind: Opening["kind"]): Change | undefined {
  const at = openingAt(source, ref);
  return (
    at && {
      operations: [{ op: "replace", path: `${at.path}/kind`, value: kind }],
      says: message("project.edit.kind", { id: ref.id, kind }),
    }
  );
}

/** Whether no cladding lies under it. */
export function standOpeningOnBase(source: Source, ref: Ref, toBase: boolean): Change | undefined {
  const at = openingAt(source, ref);
  if (!at || (at.opening.toBase ?? false) === toBase) return undefined;
  return {
    operations: [
      toBase
        ? { op: "add", path: `${at.path}/toBase`, value: true }
        : { op: "remove", path: `${at.path}/toBase` },
    ],
    says: message("project.edit.to-base", { id: ref.id }),
  };
}
