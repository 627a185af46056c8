/** What is picked on the sheet, and where it lies. */
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import { type Rect, rectOutline } from "../../geometry/rect.ts";
import type { Ref } from "../../project/editing/change.ts";
import { faceById } from "../../project/lookup.ts";
import { heading } from "../../scene/views/extent.ts";
import type { FaceLayout, Joint, Piece } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import { jointById } from "./joint-id.ts";

export type Pick =
  | { readonly kind: "face"; readonly face: string }
  | { readonly kind: "zone"; readonly face: string; readonly id: string }
  | {
      readonly kind: "opening";
      readonly face: string;
      readonly id: string;
      /** Openings that are moved and aligned with it. */
      readonly with?: readonly Ref[];
    }
  | { readonly kind: "penetration"; readonly face: string; readonly id: string }
  /** A control line of the project's own. */
  | { readonly kind: "line"; readonly face: string; readonly id: string }
  | { readonly kind: "piece"; readonly face: string; readonly id: string }
  /** A joint has no mark: its place stands for one. */
  | { readonly kind: "joint"; readonly face: string; readonly id: string };

/** What the drawing is asked to bring into view; a new object each time it is asked. */
export interface Jump {
  readonly pick: Pick;
  /** A place on its face to be ringed while it is picked, as of a screw. */
  readonly at?: Point;
}

export function pickKey(pick: Pick): string {
  return pick.kind === "face" ? `face/${pick.face}` : `${pick.kind}/${pick.face}/${pick.id}`;
}

export function faceOf(design: Design, id: string | undefined): FaceLayout | undefined {
  return design.facade.faces.find((face) => face.id === id);
}

export function pieceOf(design: Design, pick: Pick): Piece | undefined {
  return pick.kind === "piece"
    ? faceOf(design, pick.face)?.pieces.find(({ mark }) => mark === pick.id)
    : undefined;
}

/** The joint that is picked, or where another layout has none just there, the nearest that runs the same way. */
export function jointOf(design: Design, pick: Pick): Joint | undefined {
  const face = pick.kind === "joint" ? faceOf(design, pick.face) : undefined;
  return face && pick.kind === "joint" ? jointById(face, pick.id) : undefined;
}

type OpeningPick = Extract<Pick, { kind: "opening" }>;

/** The opening that is picked first, then those with it that the design still has. */
export function openingsOf({ project }: Design, pick: OpeningPick): Ref[] {
  const others = (pick.with ?? []).filter(({ face, id }) =>
    faceById(project, face)?.openings.some((one) => one.id === id),
  );
  return [{ face: pick.face, id: pick.id }, ...others];
}

/** One opening more with those that are picked, or one of them less; the one added leads. */
export function pickedWith(pick: OpeningPick, { face, id }: Ref): OpeningPick {
  const same = (one: Ref): boolean => one.face === face && one.id === id;
  const others = pick.with ?? [];
  if (same(pick)) return pick;
  if (others.some(same)) return { ...pick, with: others.filter((one) => !same(one)) };
  return { kind: "opening", face, id, with: [{ face: pick.face, id: pick.id }, ...others] };
}

export function penetrationOf(design: Design, pick: Pick) {
  return pick.kind === "penetration"
    ? faceById(design.project, pick.face)?.penetrations?.find(({ id }) => id === pick.id)
    : undefined;
}

export function ownLineOf({ project }: Design, { face, id }: Ref) {
  return faceById(project, face)?.lines?.find((line) => line.id === id);
}

/** The zone that a pick lies in. */
export function zoneIdOf(design: Design, pick: Pick): string | undefined {
  if (pick.kind === "zone") return pick.id;
  return pieceOf(design, pick)?.zone ?? jointOf(design, pick)?.zone;
}

/** Its outline in the face frame; undefined when the design no longer has it. */
export function outlineOf(design: Design, pick: Pick): Polygon | undefined {
  const face = faceOf(design, pick.face);
  switch (pick.kind) {
    case "face":
      return face?.outline;
    case "zone":
      return face?.zones.find(({ id }) => id === pick.id)?.region;
    case "opening": {
      const region = face?.openings.find(({ id }) => id === pick.id)?.region;
      return region && rectOutline(region);
    }
    case "penetration": {
      const one = penetrationOf(design, pick);
      const r = (one?.diameter ?? 0) / 2;
      return one && rectOutline({ x: [one.x - r, one.x + r], y: [one.y - r, one.y + r] });
    }
    case "line": {
      const line = ownLineOf(design, pick);
      return line && face && rectOutline({ x: polygonBounds(face.outline).x, y: [line.y, line.y] });
    }
    case "piece":
      return pieceOf(design, pick)?.outline;
    case "joint":
      return jointOf(design, pick)?.region;
  }
}

export function boxOf(design: Design, pick: Pick): Rect | undefined {
  const outline = outlineOf(design, pick);
  return outline && polygonBounds(outline);
}

/** What a pick is called where its face is known. */
export function pickName(design: Design, pick: Pick): Message | string {
  if (pick.kind === "face") return heading(pick.face);
  if (pick.kind !== "joint") return pick.id;
  const joint = jointOf(design, pick);
  return message("page.name.joint", { kind: joint?.kind ?? "edge", width: joint?.width ?? 0 });
}

/** The largest window that has a sill, else the first opening: the section stands there until something is picked. */
export function leadOpening(design: Design): Pick | undefined {
  const given = new Map(
    design.project.faces.flatMap((face) =>
      face.openings.map((one) => [`${face.id}/${one.id}`, one.toBase === true]),
    ),
  );
  const all = design.facade.faces.flatMap((face) =>
    face.openings.map((opening) => {
      const { x, y } = opening.region;
      const sill = opening.kind === "window" && given.get(`${face.id}/${opening.id}`) !== true;
      return { face: face.id, id: opening.id, area: sill ? (x[1] - x[0]) * (y[1] - y[0]) : 0 };
    }),
  );
  const lead = all.reduce<(typeof all)[number] | undefined>(
    (best, one) => (best && best.area >= one.area ? best : one),
    undefined,
  );
  return lead && { kind: "opening", face: lead.face, id: lead.id };
}

export function pickOfMark(design: Design, mark: string): Pick | undefined {
  const face = design.facade.faces.find(({ pieces }) => pieces.some((piece) => piece.mark === mark));
  return face && { kind: "piece", face: face.id, id: mark };
}

/** Where a finding lies on the drawing; undefined when it is about the whole, or about what is not drawn. */
export function placeOfFinding(design: Design, { where }: Finding): Pick | undefined {
  for (const mark of where.marks ?? []) {
    const piece = pickOfMark(design, mark);
    if (piece) return piece;
  }
  const face = faceOf(design, where.face);
  if (!face) return undefined;
  if (face.openings.some(({ id }) => id === where.opening)) {
    return { kind: "opening", face: face.id, id: where.opening as string };
  }
  if (face.zones.some(({ id }) => id === where.zone)) {
    return { kind: "zone", face: face.id, id: where.zone as string };
  }
  return { kind: "face", face: face.id };
}

/** Whether a finding speaks of what is picked, or of the zone that it lies in. */
export function concerns(design: Design, pick: Pick): (finding: Finding) => boolean {
  const zone = zoneIdOf(design, pick);
  return ({ where }) => {
    if ((pick.kind === "piece" || pick.kind === "penetration") && where.marks?.includes(pick.id)) return true;
    if (where.face !== pick.face) return false;
    if (pick.kind === "face") return true;
    if (pick.kind === "opening") return where.opening === pick.id;
    return where.opening === undefined && where.zone !== undefined && where.zone === zone;
  };
}
