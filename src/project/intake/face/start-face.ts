/** A project to begin with: one wall with the outline and openings of a face that is taken in. */
import type { Finding } from "../../../findings/finding.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import type { Message } from "../../../text/message.ts";
import { applyPatch } from "../../edit.ts";
import { startWall, type Wall } from "../../editing/start.ts";
import { readDocument } from "../../read.ts";
import { replaceFace } from "./replace-face.ts";
import type { TakenFace } from "./shape.ts";

export type StartedFace =
  | { readonly ok: true; readonly document: unknown; readonly tells: readonly Message[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** @param file what the face comes from */
export function startFace(
  taken: TakenFace,
  { file, ...start }: Pick<Wall, "title" | "display"> & { readonly file: string },
): StartedFace {
  const { x, y } = polygonBounds(taken.outline);
  const document = startWall({ ...start, width: x[1], height: y[1] });
  const read = readDocument(document, file);
  if (!read.ok) return read;
  const id = read.project.faces[0]?.id ?? "";
  const replaced = replaceFace({ project: read.project, document }, { id, taken, file });
  if (!replaced.ok) return replaced;
  const patched = applyPatch(document, replaced.change.operations);
  if (!patched.ok) return patched;
  const again = readDocument(patched.document, file);
  return again.ok ? { ok: true, document: patched.document, tells: replaced.tells } : again;
}
