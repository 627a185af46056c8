/** What passes through the wall: ducts, taps, lamp boxes. Added, placed, and taken out. */
import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { faceCode } from "../lookup.ts";
import { valueAt } from "../pointer.ts";
import type { Face } from "../schema/project.ts";
import { type Added, type Change, faceAt, likeWritten, nextId, type Ref, type Source } from "./change.ts";
import { roomOn } from "./room.ts";
import { takeOut } from "./taking-out.ts";

/** How wide one starts, and how high its middle (mm); common practice. */
export const PENETRATION_SIZES = {
  duct: { diameter: 160, height: 1900 },
  "lamp box": { diameter: 100, height: 1900 },
  tap: { diameter: 40, height: 450 },
} as const;

export type NewPenetration = keyof typeof PENETRATION_SIZES;

/** Middle and diameter (mm). */
export interface Round {
  readonly at: Point;
  readonly diameter: number;
}

/** Where a new one goes when no place is told: the middle of the face, or beside what stands there. */
export function roomForPenetration(face: Face, kind: NewPenetration, diameter: number): Point {
  const { x } = polygonBounds(face.outline);
  const wished = [
    snap((x[0] + x[1] - diameter) / 2),
    snap(PENETRATION_SIZES[kind].height - diameter / 2),
  ] as const;
  const rect = roomOn(face, { width: diameter, height: diameter }, wished);
  return [snap(rect.x[0] + diameter / 2), snap(rect.y[0] + diameter / 2)];
}

export function addPenetration(
  source: Source,
  { face: id, kind, round }: { face: string; kind: NewPenetration; round: Round },
): Added | undefined {
  const at = faceAt(source, id);
  if (!at) return undefined;
  const taken = source.project.faces.flatMap(({ penetrations = [] }) => penetrations.map((one) => one.id));
  const one = {
    id: nextId(source, `${faceCode(at.face)}P`, taken),
    kind,
    x: round.at[0],
    y: round.at[1],
    diameter: round.diameter,
  };
  return {
    operations: [
      at.face.penetrations
        ? { op: "add", path: `${at.path}/penetrations/-`, value: one }
        : { op: "add", path: `${at.path}/penetrations`, value: [one] },
    ],
    says: message("project.edit.add", { kind, id: one.id }),
    added: { face: id, id: one.id },
  };
}

function penetrationAt(source: Source, { face: id, id: wanted }: Ref) {
  const at = faceAt(source, id);
  const index = at?.face.penetrations?.findIndex((one) => one.id === wanted) ?? -1;
  const one = at?.face.penetrations?.[index];
  const path = `${at?.path}/penetrations/${index}`;
  return one && { path, written: valueAt(source.document, path.slice(1).split("/")) };
}

export function placePenetration(
  source: Source,
  ref: Ref,
  { at: [x, y], diameter }: Round,
): Change | undefined {
  const at = penetrationAt(source, ref);
  if (!at) return undefined;
  const fields = { x, y, diameter };
  return {
    operations: Object.entries(fields).map(([key, mm]) => ({
      op: "replace",
      path: `${at.path}/${key}`,
      value: likeWritten(mm, valueAt(at.written, [key])),
    })),
    says: message("project.edit.place", { id: ref.id }),
  };
}

export function removePenetration(source: Source, ref: Ref): Change | undefined {
  const at = penetrationAt(source, ref);
  return (
    at && {
      operations: takeOut(source, { penetrations: [ref] }),
      says: message("project.edit.take-out", { id: ref.id }),
    }
  );
}
