/** The vertical section through what is picked, with a window as high as there is room for. */
import type { Design } from "../../design.ts";
import type { Interval } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import { verticalSection } from "../../scene/views/vertical-section.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import { boxOf, faceOf, jointOf, type Pick, pieceOf } from "../picks/pick.ts";
import { type SceneBody, sceneBody } from "./scene-body.ts";

export interface Section {
  readonly body: SceneBody;
  /** Of what: `W2, sill`. */
  readonly title: Message;
  /** 5 for 1 : 5. */
  readonly timesSmaller: number;
}

/** The scales tried, the largest first. */
const SCALES: readonly number[] = [5, 10, 20];

/** Heights shown at least and at most at 1 : 5, mm of paper. */
const LEAST_WINDOW = 22;
const MOST_WINDOW = 90;

export interface SectionOptions {
  readonly reader: Reader;
  /** Millimetres of paper. */
  readonly room: { readonly width: number; readonly height: number };
}

export function sectionAt(design: Design, pick: Pick, { reader, room }: SectionOptions): Section | undefined {
  const place = placeOf(design, pick);
  if (!place) return undefined;
  let smallest: Section | undefined;
  for (const timesSmaller of SCALES) {
    const found = fitted(design, { place, timesSmaller, reader, room });
    if (!found) continue;
    smallest = found.section;
    if (found.fits) return found.section;
  }
  return smallest;
}

interface SectionPlace {
  readonly face: string;
  /** Places along the face where the section may stand, the best first. */
  readonly xs: readonly number[];
  /** Height in the middle of the window. */
  readonly y: number;
  readonly title: Message;
}

function fitted(
  design: Design,
  { place, timesSmaller, reader, room }: { place: SectionPlace; timesSmaller: number } & SectionOptions,
): { section: Section; fits: boolean } | undefined {
  const draw = (high: number): SceneBody | undefined => {
    const half = (high * timesSmaller) / 2;
    const y: Interval = [place.y - half, place.y + half];
    for (const x of place.xs) {
      const scene = verticalSection(design.facade, design.project, {
        face: place.face,
        x,
        y,
        scale: 1 / timesSmaller,
      });
      if (scene) return sceneBody(scene, reader);
    }
    return undefined;
  };
  const tried = draw(LEAST_WINDOW);
  if (!tried) return undefined;
  const paper = (span: Interval): number => (span[1] - span[0]) / timesSmaller;
  // What stands over and under the window takes the same room however high the window is.
  const besides = paper(tried.bounds.y) - LEAST_WINDOW;
  const window = Math.min(Math.max(room.height - besides, LEAST_WINDOW), MOST_WINDOW);
  const body = draw(window) ?? tried;
  const fits = paper(tried.bounds.x) <= room.width && LEAST_WINDOW + besides <= room.height;
  return { section: { body, title: place.title, timesSmaller }, fits };
}

/** Where along the pick the section may stand: the middle first. */
const SHARES: readonly number[] = [0.5, 0.42, 0.58, 0.3, 0.7, 0.1, 0.9];

/** How near to the middle of the window cladding must be cut, mm. */
const NEAR = 120;

/** Whether a section there cuts a board or sheet, and does not run down a joint between two. */
function isCladAt(face: FaceLayout, { x, y }: { x: number; y: number }): boolean {
  return face.pieces.some(({ kind, outline }) => {
    if (kind !== "board" && kind !== "sheet") return false;
    const box = polygonBounds(outline);
    return box.x[0] < x && x < box.x[1] && box.y[0] - NEAR < y && y < box.y[1] + NEAR;
  });
}

function placeOf(design: Design, pick: Pick): SectionPlace | undefined {
  const box = boxOf(design, pick);
  const face = faceOf(design, pick.face);
  if (!box || !face) return undefined;
  const middle = (span: Interval): number => (span[0] + span[1]) / 2;
  const along = SHARES.map((share) => box.x[0] + share * (box.x[1] - box.x[0]));
  const place = (y: number, title: Message): SectionPlace => {
    const clad = along.filter((x) => isCladAt(face, { x, y }));
    return { face: pick.face, xs: clad.length > 0 ? clad : along, y, title };
  };
  switch (pick.kind) {
    case "opening":
      return hasSill(design, pick)
        ? place(box.y[0], message("page.section.sill", { id: pick.id }))
        : place(box.y[1], message("page.section.head", { id: pick.id }));
    case "piece": {
      const upright = box.y[1] - box.y[0] > 500;
      const sheet = pieceOf(design, pick)?.kind === "sheet";
      return place(upright && sheet ? box.y[0] : middle(box.y), message("page.section.of", { id: pick.id }));
    }
    case "joint": {
      const joint = jointOf(design, pick);
      return place(middle(box.y), message("page.section.joint", { kind: joint?.kind ?? "edge" }));
    }
    case "line":
    case "penetration":
      return place(middle(box.y), message("page.section.of", { id: pick.id }));
    case "zone":
    case "face":
      return place(
        box.y[0],
        message("page.section.base", { id: pick.kind === "face" ? pick.face : pick.id }),
      );
  }
}

/** Whether cladding lies under an opening. */
function hasSill(design: Design, pick: Pick): boolean {
  if (pick.kind !== "opening") return false;
  const given = design.project.faces
    .find(({ id }) => id === pick.face)
    ?.openings.find(({ id }) => id === pick.id);
  return given?.kind === "window" && given.toBase !== true;
}

/** The room of a drawing on paper, mm. */
export function paperSize({ scene, bounds }: SceneBody): { width: number; height: number } {
  const size = ({ x, y }: Rect) => ({
    width: (x[1] - x[0]) * scene.scale,
    height: (y[1] - y[0]) * scene.scale,
  });
  return size(bounds);
}
