/** A face of a project given the outline and openings of one that is taken in; what stays in place keeps its name and what is said of it. */
import { type Finding, finding, type PatchOperation } from "../../../findings/finding.ts";
import type { Point } from "../../../geometry/point.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import { commonRect, type Rect, rectArea } from "../../../geometry/rect.ts";
import { type Message, message } from "../../../text/message.ts";
import { snap } from "../../../units/length.ts";
import { PLAN_TOLERANCE_MM, planLength } from "../../check/outlines.ts";
import { type Change, faceAt, type Source } from "../../editing/change.ts";
import { reshapeFace, setFaceWidth } from "../../editing/faces.ts";
import { openingIdAfter, placeOpening, standsLow } from "../../editing/openings.ts";
import { takeOut } from "../../editing/taking-out.ts";
import type { Face, Opening } from "../../schema/project.ts";
import "../texts.ts";
import type { TakenFace, TakenOpening } from "./shape.ts";

export type ReplaceFace =
  /** `tells`: what will be otherwise, a sentence each. */
  | { readonly ok: true; readonly change: Change; readonly tells: readonly Message[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** An opening is the same one where they share at least so much of the area that they cover together. */
const SAME_SHARE = 0.25;

/** What may name an opening in the file. */
const NAME = /^[A-Za-z][A-Za-z0-9-]{0,23}$/;

/** @param file what the face comes from, as the step to take back says it */
export function replaceFace(
  source: Source,
  { id, taken, file }: { readonly id: string; readonly taken: TakenFace; readonly file: string },
): ReplaceFace {
  const at = faceAt(source, id);
  if (!at) return { ok: false, findings: [refused(message("intake.face.missing", { face: id }))] };
  const { face, path } = at;
  const foot = polygonBounds(face.outline).y[0];
  const outline = taken.outline.map(([x, y]): Point => [x, snap(y + foot)]);
  const width = polygonBounds(outline).x[1];
  const length = planLength(face);
  const wider = Math.abs(width - length) > PLAN_TOLERANCE_MM;
  const plan = wider ? setFaceWidth(source, id, width) : undefined;
  if (wider && !plan) {
    const says = message("intake.face.closed", { face: id, width, length });
    return { ok: false, findings: [refused(says, message("intake.hint.face.closed", { length }))] };
  }
  const openings = taken.openings.map(
    (one): TakenOpening => ({ ...one, y: [snap(one.y[0] + foot), snap(one.y[1] + foot)] }),
  );
  const { kept, fresh, gone } = matched(face, openings);
  const added = named(source, face, fresh);
  const moved = kept.filter(({ was, is }) => !sameRect(was, is));
  const operations: PatchOperation[] = [
    // The outline comes whole with the next; ends and ground move with the plan.
    ...(plan?.operations.filter((one) => one.path !== `${path}/outline`) ?? []),
    ...(reshapeFace(source, id, outline)?.operations ?? []),
    ...moved.flatMap(({ was, is }) => placeOpening(source, { face: id, id: was.id }, is)?.operations ?? []),
    ...added.map((value): PatchOperation => ({ op: "add", path: `${path}/openings/-`, value })),
    ...(gone.length > 0 ? takeOut(source, { openings: gone.map((one) => ({ face: id, id: one.id })) }) : []),
  ];
  return {
    ok: true,
    change: { operations, says: message("project.edit.face-drawn", { face: id, file }) },
    tells: [
      sizes(face, outline),
      ...moved.map(({ was, is }) => tell("moved", was, is)),
      ...added.map((one) => tell("new", one)),
      ...gone.map((one) => tell("out", one)),
      ...(kept.length > moved.length
        ? [message("intake.change.stay", { count: kept.length - moved.length })]
        : []),
    ],
  };
}

function refused(says: Message, hint?: Message): Finding {
  return finding({ code: "F035", outcome: "fail", where: {}, says, ...(hint && { hint }) });
}

function sameRect(a: Rect, b: Rect): boolean {
  return [0, 1].every((end) => a.x[end] === b.x[end] && a.y[end] === b.y[end]);
}

/** Each opening of the face with the one taken in that covers most of it. */
function matched(face: Face, openings: readonly TakenOpening[]) {
  const pairs = face.openings
    .flatMap((was) => openings.map((is) => ({ was, is, share: shareOf(was, is) })))
    .filter(({ share }) => share >= SAME_SHARE)
    .sort((a, b) => b.share - a.share);
  const kept: { was: Opening; is: TakenOpening }[] = [];
  for (const { was, is } of pairs) {
    if (!kept.some((one) => one.was === was || one.is === is)) kept.push({ was, is });
  }
  return {
    kept,
    fresh: openings.filter((is) => !kept.some((one) => one.is === is)),
    gone: face.openings.filter((was) => !kept.some((one) => one.was === was)),
  };
}

function shareOf(a: Rect, b: Rect): number {
  const common = commonRect(a, b);
  const shared = common ? rectArea(common) : 0;
  return shared / (rectArea(a) + rectArea(b) - shared);
}

/** What stands low is a door, with no cladding under it; anything else a window. */
function named(source: Source, face: Face, fresh: readonly TakenOpening[]) {
  const borne = new Set(source.project.retired ?? []);
  for (const one of source.project.faces) for (const { id } of one.openings) borne.add(id);
  // Names that the source tells come first: a number that follows the others must not be one of them.
  const own = fresh.map(({ name }) => {
    const free = name !== undefined && NAME.test(name) && !borne.has(name);
    if (free) borne.add(name);
    return free ? name : undefined;
  });
  const ids = own.flatMap((id) => id ?? []);
  return fresh.map(({ x, y, kind: told, name }, i) => {
    const kind = told ?? (standsLow(face, y) ? "door" : "window");
    const id = own[i] ?? openingIdAfter(source, kind, ids);
    if (own[i] === undefined) ids.push(id);
    const note = name !== undefined && name !== id ? { note: name } : {};
    return { id, ...note, kind, x, y, ...(kind === "door" && standsLow(face, y) ? { toBase: true } : {}) };
  });
}

function sizes(face: Face, outline: readonly Point[]): Message {
  const [was, is] = [polygonBounds(face.outline), polygonBounds(outline)];
  const same =
    face.outline.length === outline.length &&
    face.outline.every((point, i) => point[0] === outline[i]?.[0] && point[1] === outline[i]?.[1]);
  return same
    ? message("intake.change.outline-stays", { face: face.id })
    : message("intake.change.outline", {
        face: face.id,
        wasWidth: was.x[1] - was.x[0],
        wasHeight: was.y[1] - was.y[0],
        width: is.x[1] - is.x[0],
        height: is.y[1] - is.y[0],
        corners: outline.length,
      });
}

function tell(
  what: "moved" | "new" | "out",
  { id, kind, x, y }: Rect & Pick<Opening, "id" | "kind">,
  to: Rect = { x, y },
): Message {
  return message(`intake.change.${what}`, {
    id,
    kind,
    left: to.x[0],
    sill: to.y[0],
    width: snap(to.x[1] - to.x[0]),
    height: snap(to.y[1] - to.y[0]),
  });
}
