/** Level control lines of the project's own: drawn, moved, and taken out. */
import { polygonBounds } from "../../geometry/polygon.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { valueAt } from "../pointer.ts";
import { type Added, type Change, faceAt, likeWritten, nextId, type Ref, type Source } from "./change.ts";
import { takeOut } from "./taking-out.ts";

/** @param y height on the face, mm; half its height where absent */
export function addLine(
  source: Source,
  { face: id, y }: { readonly face: string; readonly y?: number },
): Added | undefined {
  const at = faceAt(source, id);
  if (!at) return undefined;
  const [low, high] = polygonBounds(at.face.outline).y;
  const taken = source.project.faces.flatMap(({ lines = [] }) => lines.map((one) => one.id));
  const line = { id: nextId(source, "L", taken), y: y ?? snap((low + high) / 2) };
  return {
    operations: [
      at.face.lines
        ? { op: "add", path: `${at.path}/lines/-`, value: line }
        : { op: "add", path: `${at.path}/lines`, value: [line] },
    ],
    says: message("project.edit.add", { kind: "line", id: line.id }),
    added: { face: id, id: line.id },
  };
}

export function moveLine(source: Source, ref: Ref, y: number): Change | undefined {
  const path = linePath(source, ref);
  return path === undefined
    ? undefined
    : {
        operations: [
          {
            op: "replace",
            path: `${path}/y`,
            value: likeWritten(y, valueAt(source.document, `${path}/y`.slice(1).split("/"))),
          },
        ],
        says: message("project.edit.place", { id: ref.id }),
      };
}

export function removeLine(source: Source, ref: Ref): Change | undefined {
  return linePath(source, ref) === undefined
    ? undefined
    : {
        operations: takeOut(source, { lines: [ref] }),
        says: message("project.edit.take-out", { id: ref.id }),
      };
}

function linePath(source: Source, { face, id }: Ref): string | undefined {
  const at = faceAt(source, face);
  const j = at?.face.lines?.findIndex((line) => line.id === id) ?? -1;
  return j < 0 ? undefined : `${at?.path}/lines/${j}`;
}
