/** Level sections: a jamb, a junction and the corner of each wall; and a section across each soffit. */

import { turnDeg } from "../../../geometry/frame.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import type { Project } from "../../../project/schema/project.ts";
import type { Scene } from "../../../scene/model.ts";
import { heading } from "../../../scene/views/extent.ts";
import { withPlaceNames } from "../../../scene/views/place-name.ts";
import type { PlanPlace } from "../../../scene/views/plan-cut.ts";
import { planSection } from "../../../scene/views/plan-section.ts";
import type { SectionMark } from "../../../scene/views/section-marks.ts";
import type { FaceLayout, ZonePlane } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { oneByOne } from "../grouped.ts";
import { ownFace, ownPlanes } from "../of-face.ts";
import {
  BESIDE,
  cutsOnPlan,
  elevationOf,
  KEY_PLAN,
  type LevelCut,
  levelCuts,
  nextOf,
  soffitCuts,
} from "../section-places.ts";

export function planSectionSheets(facts: KindFacts): Drawing[] {
  const { facade, project } = facts.design;
  const { structure, claddings, corners } = project;
  const type = message("drawing.document-type.section");
  const isOnPlan = cutsOnPlan(facts.design).length > 0;
  const scenes = oneByOne(facade.faces, (face) => {
    const next = nextOf(face, { faces: facade.faces, corners });
    const shown = next ? [face, next] : [face];
    return facts.memo.recall(sectionsOf, {
      face,
      next,
      faces: shown.flatMap((one) => ownFace(facts, one) ?? []),
      planes: shown.flatMap((one) => ownPlanes(facts, one)),
      structure,
      claddings,
      isOnPlan,
    });
  });
  return [{ name: "plan-sections", type, scenes }];
}

interface From extends Pick<Project, "structure" | "claddings" | "faces"> {
  readonly face: FaceLayout;
  /** Round the corner at its right end. */
  readonly next: FaceLayout | undefined;
  readonly planes: readonly ZonePlane[];
  /** Whether the key plan points to it as well. */
  readonly isOnPlan: boolean;
}

function sectionsOf(from: From): Scene[] {
  const { face } = from;
  return face.frame.level === undefined
    ? levelCuts(face, from.next).flatMap((cut) => level(cut, from))
    : soffit(face, from);
}

function planeOf(face: FaceLayout, { planes }: From, zone: string | undefined): ZonePlane | undefined {
  return planes.find((one) => one.face === face.id && one.zone === zone);
}

function place(face: FaceLayout, { planes, structure, claddings, faces }: From, at: number): PlanPlace {
  return { facade: { planes }, project: { structure, claddings, faces }, face, along: "x", at };
}

/** A jamb, a junction, or the corner at the right end with the face that the project says begins there. */
function level(cut: LevelCut, from: From): Scene[] {
  const { face, next } = from;
  const { at, window, scene: id, zone, of } = cut;
  const plane = planeOf(face, from, zone);
  if (!plane) return [];
  const shown = { id, place: place(face, from, at), window, plane };
  if (of.kind !== "corner" || !next) {
    const values = { face: heading(face.id), y: at };
    const title =
      of.kind === "jamb"
        ? message("drawing.title.jamb", { ...values, opening: of.opening })
        : message("drawing.title.junction", { ...values, zone: zone ?? "" });
    return [named(planSection({ ...shown, title }), cut, from)];
  }
  const { sheathingThickness, studs } = from.structure;
  const outside = turnDeg(face.frame, next.frame) > 0;
  const section = planSection({
    ...shown,
    title: message("drawing.title.corner", { face: heading(face.id), next: heading(next.id), y: at }),
    beside: {
      ...place(next, from, at),
      ...(outside && { wallFrom: sheathingThickness + studs.depth }),
    },
    show: outside ? { before: 60, behind: BESIDE } : { before: BESIDE, behind: 60 },
  });
  return [named(section, cut, from)];
}

function named(scene: Scene, { mark }: SectionMark, { face, isOnPlan }: From): Scene {
  return withPlaceNames(scene, {
    section: [{ mark, on: elevationOf(face) }],
    detail: isOnPlan && face.frame.level === undefined ? [{ mark, on: KEY_PLAN }] : [],
  });
}

function soffit(face: FaceLayout, from: From): Scene[] {
  const { y } = polygonBounds(face.outline);
  return soffitCuts(face).flatMap((cut): Scene[] => {
    const { at, scene: id, zone } = cut;
    const plane = planeOf(face, from, zone);
    if (!plane) return [];
    const section = planSection({
      id,
      title: message("drawing.title.soffit-section", { face: heading(face.id), x: at }),
      place: { ...place(face, from, at), along: "y" },
      window: [y[0] - 60, y[1] + 60],
      plane,
    });
    return [named(section, cut, from)];
  });
}
