/** An opening of the project file, moved or given another size. */
import type { PatchOperation } from "../../findings/finding.ts";
import type { Rect } from "../../geometry/rect.ts";
import { valueAt } from "../../project/pointer.ts";
import { parseLength, printLength } from "../../units/feet-inch.ts";

export interface OpeningRef {
  readonly face: string;
  readonly id: string;
}

/** The operations that give an opening its place; none where the document does not have it. */
export function placeOpening(document: unknown, ref: OpeningRef, { x, y }: Rect): PatchOperation[] {
  const at = placeOf(document, ref);
  if (!at) return [];
  const path = `/faces/${at.face}/openings/${at.opening}`;
  const old = valueAt(document, ["faces", at.face, "openings", at.opening]) as Record<string, unknown>;
  return [
    { op: "replace", path: `${path}/x`, value: likeOld(x, old.x) },
    { op: "replace", path: `${path}/y`, value: likeOld(y, old.y) },
  ];
}

function placeOf(document: unknown, { face, id }: OpeningRef): { face: number; opening: number } | undefined {
  const faces = listAt(document, "faces");
  const i = faces.findIndex((one) => valueAt(one, ["id"]) === face);
  const j = listAt(faces[i], "openings").findIndex((one) => valueAt(one, ["id"]) === id);
  return i < 0 || j < 0 ? undefined : { face: i, opening: j };
}

function listAt(value: unknown, key: string): readonly unknown[] {
  const list = valueAt(value, [key]);
  return Array.isArray(list) ? list : [];
}

/** A file written in feet and inches stays so, where that is exact. */
function likeOld(span: readonly [number, number], old: unknown): (number | string)[] {
  return span.map((mm, end) => {
    if (typeof (Array.isArray(old) ? old[end] : undefined) !== "string") return mm;
    const text = printLength(mm, { display: "feet-inch", denominator: 32 });
    const again = parseLength(text, "in");
    return again.ok && again.value === mm ? text : mm;
  });
}
