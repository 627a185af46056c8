/** Level sections: a jamb, a junction and the corner of each wall; and a section across each soffit. */

import { turnDeg } from "../../../geometry/frame.ts";
import type { Interval } from "../../../geometry/interval.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import type { Project } from "../../../project/schema/project.ts";
import type { Scene } from "../../../scene/model.ts";
import { heading } from "../../../scene/views/extent.ts";
import { type PlanPlace, stretchesOf } from "../../../scene/views/plan-cut.ts";
import { planSection } from "../../../scene/views/plan-section.ts";
import type { FaceLayout, ZonePlane } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { ownFace, ownPlanes } from "../of-face.ts";

/** To each side of what a section shows, mm. */
const BESIDE = 260;

export function planSectionSheets(facts: KindFacts): Drawing[] {
  const { project, facade } = facts.design;
  const { structure, claddings, corners } = project;
  const type = message("drawing.document-type.section");
  const scenes = facade.faces.flatMap((face) => {
    const right = corners?.find(({ left }) => left === face.id)?.right;
    const next = facade.faces.find(({ id }) => id === right);
    const shown = next ? [face, next] : [face];
    return facts.memo.recall(sectionsOf, {
      face,
      next,
      faces: shown.flatMap((one) => ownFace(facts, one) ?? []),
      planes: shown.flatMap((one) => ownPlanes(facts, one)),
      structure,
      claddings,
    });
  });
  return scenes.length === 0 ? [] : [{ name: "plan-sections", type, scenes }];
}

interface From extends Pick<Project, "structure" | "claddings" | "faces"> {
  readonly face: FaceLayout;
  /** Round the corner at its right end. */
  readonly next: FaceLayout | undefined;
  readonly planes: readonly ZonePlane[];
}

function sectionsOf(from: From): Scene[] {
  const { face } = from;
  return face.frame.level === undefined
    ? [...jamb(face, from), ...junctions(face, from), ...corner(face, from)]
    : soffit(face, from);
}

function planeOf(face: FaceLayout, { planes }: From, zone: string | undefined): ZonePlane | undefined {
  return planes.find((one) => one.face === face.id && one.zone === zone);
}

/** The zone that reaches a place of the face. */
function zoneAt(face: FaceLayout, [x, y]: readonly [number, number]): string | undefined {
  return face.zones.find(({ region }) =>
    stretchesOf(region, { along: "x", at: y }).some(([from, to]) => from <= x && x <= to),
  )?.id;
}

/** A height near the wished one at which a board is cut, not the gap between two. */
function clearHeight(face: FaceLayout, wished: number, x: Interval): number {
  const cutBy = (at: number): number =>
    face.pieces.filter(
      ({ kind, outline }) =>
        (kind === "board" || kind === "sheet") &&
        stretchesOf(outline, { along: "x", at }).some(([from, to]) => from < x[1] && to > x[0]),
    ).length;
  const tries = [0, 35, -35, 70, -70].map((off) => wished + off);
  return tries.reduce((best, at) => (cutBy(at) > cutBy(best) ? at : best), wished);
}

function place(face: FaceLayout, { planes, ...project }: From, at: number): PlanPlace {
  return { facade: { planes }, project, face, along: "x", at };
}

function jamb(face: FaceLayout, from: From): Scene[] {
  const [opening] = face.openings.filter(({ kind }) => kind !== "recess");
  if (!opening) return [];
  const { x, y } = opening.region;
  const window: Interval = [x[0] - BESIDE, x[0] + BESIDE / 2];
  const at = clearHeight(face, (y[0] + y[1]) / 2, [x[0] - BESIDE, x[0]]);
  const plane = planeOf(face, from, zoneAt(face, [x[0] - BESIDE / 2, at]));
  if (!plane) return [];
  return [
    planSection({
      id: `jamb-${face.id}-${opening.id}`,
      title: message("drawing.title.jamb", { face: heading(face.id), opening: opening.id, y: at }),
      place: place(face, from, at),
      window,
      plane,
    }),
  ];
}

/** Where a zone ends and another begins. */
function junctions(face: FaceLayout, from: From): Scene[] {
  return face.zones.slice(1).flatMap((zone): Scene[] => {
    const box = polygonBounds(zone.region);
    const x = box.x[0];
    const before = face.zones.some((one) => Math.abs(polygonBounds(one.region).x[1] - x) < BESIDE / 4);
    const plane = planeOf(face, from, zone.id);
    if (!before || !plane) return [];
    const open = face.openings.filter(({ region }) => region.x[0] < x + BESIDE && region.x[1] > x - BESIDE);
    const low = box.y[0] + (box.y[1] - box.y[0]) * 0.3;
    const wished = open.some(({ region }) => region.y[0] < low && region.y[1] > low)
      ? box.y[1] - (box.y[1] - box.y[0]) * 0.1
      : low;
    const window: Interval = [x - BESIDE, x + BESIDE];
    const at = clearHeight(face, wished, window);
    return [
      planSection({
        id: `junction-${face.id}-${zone.id}`,
        title: message("drawing.title.junction", { face: heading(face.id), zone: zone.id, y: at }),
        place: place(face, from, at),
        window,
        plane,
      }),
    ];
  });
}

/** The corner at the right end, with the face that the project says begins there. */
function corner(face: FaceLayout, from: From): Scene[] {
  const { next } = from;
  if (!next) return [];
  const { origin, along } = face.frame;
  const [dx, dy] = [next.frame.origin[0] - origin[0], next.frame.origin[1] - origin[1]];
  const end = dx * along[0] + dy * along[1];
  const box = polygonBounds(face.outline);
  const window: Interval = [end - BESIDE, end + BESIDE];
  const at = clearHeight(face, box.y[0] + (box.y[1] - box.y[0]) * 0.4, [end - BESIDE, end]);
  const plane = planeOf(face, from, zoneAt(face, [end - BESIDE, at]) ?? face.zones.at(-1)?.id);
  if (!plane) return [];
  const { sheathingThickness, studs } = from.structure;
  const outside = turnDeg(face.frame, next.frame) > 0;
  return [
    planSection({
      id: `corner-${face.id}-${next.id}`,
      title: message("drawing.title.corner", { face: heading(face.id), next: heading(next.id), y: at }),
      place: place(face, from, at),
      window,
      plane,
      beside: {
        ...place(next, from, at),
        ...(outside && { wallFrom: sheathingThickness + studs.depth }),
      },
      show: outside ? { before: 60, behind: BESIDE } : { before: BESIDE, behind: 60 },
    }),
  ];
}

function soffit(face: FaceLayout, from: From): Scene[] {
  const { x, y } = polygonBounds(face.outline);
  const [zone] = face.zones;
  const plane = planeOf(face, from, zone?.id);
  if (!plane) return [];
  const clad = face.pieces.filter(({ kind }) => kind === "board" || kind === "sheet");
  const cutBy = (at: number): number =>
    clad.filter(({ outline }) => stretchesOf(outline, { along: "y", at }).length > 0).length;
  const shares = [0.5, 0.46, 0.54, 0.4, 0.6].map((share) => x[0] + (x[1] - x[0]) * share);
  const at = shares.reduce((best, one) => (cutBy(one) > cutBy(best) ? one : best));
  return [
    planSection({
      id: `soffit-${face.id}`,
      title: message("drawing.title.soffit-section", { face: heading(face.id), x: at }),
      place: { ...place(face, from, at), along: "y" },
      window: [y[0] - 60, y[1] + 60],
      plane,
    }),
  ];
}
