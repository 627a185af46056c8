/** Openings and penetrations in elevation. */
import type { Point } from "../../geometry/point.ts";
import { type Rect, rectOutline } from "../../geometry/rect.ts";
import type { Project } from "../../project/schema/project.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { textWidth } from "../text-widths.ts";
import { NAME, TEXT } from "./style.ts";

const LAYER = layerName("OPENNG");
const TEXT_LAYER = layerName("OPENNG", "T");

/** How wide a frame looks, model mm: no project tells its profile, so it is a picture only. */
export const FRAME_WIDTH = 60;

export function openingItems(face: FaceLayout): Item[] {
  return face.openings.flatMap(({ id, kind, region }): Item[] => {
    const inner = inset(region, FRAME_WIDTH);
    const outer: Item = {
      kind: "polygon",
      layer: LAYER,
      of: id,
      outline: rectOutline(region),
      line: "visible",
      fill: "paper",
    };
    if (!inner) return [outer];
    const fill = kind === "recess" ? "paper" : "glass";
    return [
      outer,
      { kind: "polygon", layer: LAYER, of: id, outline: rectOutline(inner), line: "detail", fill },
    ];
  });
}

type Opening = FaceLayout["openings"][number];

interface OpeningName {
  readonly height: number;
  readonly angleDeg: 0 | 90;
  /** Whether a plate behind the name stays inside the frame. */
  readonly plate: boolean;
  readonly box: Rect;
}

function openingName({ id, region }: Opening, scale: number): OpeningName {
  const [wide, high] = [region.x, region.y].map(([from, to]) => (to - from) * scale) as [number, number];
  const glass = wide - 2 * FRAME_WIDTH * scale;
  const length = (height: number): number => textWidth({ text: id, height, weight: "bold" });
  const height = (length(NAME) + NAME) * 2 <= glass ? NAME : TEXT;
  const long = length(height);
  // A slim opening is named upwards.
  const angleDeg = long > wide && high > wide ? 90 : 0;
  const [halfX, halfY] = (angleDeg === 0 ? [long, height] : [height, long]).map(
    (size) => size / 2 / scale,
  ) as [number, number];
  const [x, y] = middle(region);
  return {
    height,
    angleDeg,
    plate: angleDeg === 0 && long + height <= glass,
    box: { x: [x - halfX, x + halfX], y: [y - halfY, y + halfY] },
  };
}

/** The ids of the openings, to be drawn over the control lines. */
export function openingNames(face: FaceLayout, scale: number): Item[] {
  return face.openings.map((opening): Item => {
    const { height, angleDeg, plate } = openingName(opening, scale);
    return {
      kind: "text",
      layer: TEXT_LAYER,
      of: opening.id,
      at: middle(opening.region),
      text: opening.id,
      height,
      angleDeg,
      weight: "bold",
      anchor: "middle",
      baseline: "middle",
      ...(plate ? { plate: opening.kind === "recess" ? ("paper" as const) : ("glass" as const) } : {}),
    };
  });
}

/** Where the names stand, for what is written near them. */
export function openingNameBoxes(face: FaceLayout, scale: number): Rect[] {
  return face.openings.map((opening) => openingName(opening, scale).box);
}

function middle({ x, y }: Rect): Point {
  return [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2];
}

export function inset({ x, y }: Rect, by: number): Rect | undefined {
  const inner: Rect = { x: [x[0] + by, x[1] - by], y: [y[0] + by, y[1] - by] };
  return inner.x[0] < inner.x[1] && inner.y[0] < inner.y[1] ? inner : undefined;
}

/** Ducts, taps and lamps: the hole in the cladding is drawn by the pieces, this is what comes through. */
export function penetrationItems(project: Pick<Project, "faces">, faceId: string): Item[] {
  const face = project.faces.find((one) => one.id === faceId);
  return (face?.penetrations ?? []).map(
    (one): Item => ({
      kind: "circle",
      layer: LAYER,
      of: one.id,
      centre: [one.x, one.y],
      radius: one.diameter / 2,
      line: "detail",
      fill: "paper",
    }),
  );
}
