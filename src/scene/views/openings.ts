/** Openings and penetrations in elevation. */
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
const FRAME_WIDTH = 60;

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

/** The ids of the openings, to be drawn over the control lines. */
export function openingNames(face: FaceLayout, scale: number): Item[] {
  return face.openings.map(({ id, kind, region }): Item => {
    const room = (region.x[1] - region.x[0] - 2 * FRAME_WIDTH) * scale;
    const wide = (height: number): number => textWidth({ text: id, height, weight: "bold" }) + height;
    const height = wide(NAME) * 2 <= room ? NAME : TEXT;
    return {
      kind: "text",
      layer: TEXT_LAYER,
      of: id,
      at: [(region.x[0] + region.x[1]) / 2, (region.y[0] + region.y[1]) / 2],
      text: id,
      height,
      weight: "bold",
      anchor: "middle",
      baseline: "middle",
      // In a small opening the plate would cut the frame.
      ...(wide(height) <= room ? { plate: kind === "recess" ? ("paper" as const) : ("glass" as const) } : {}),
    };
  });
}

function inset({ x, y }: Rect, by: number): Rect | undefined {
  const inner: Rect = { x: [x[0] + by, x[1] - by], y: [y[0] + by, y[1] - by] };
  return inner.x[0] < inner.x[1] && inner.y[0] < inner.y[1] ? inner : undefined;
}

/** Ducts, taps and lamps: the hole in the cladding is drawn by the pieces, this is what comes through. */
export function penetrationItems(project: Project, faceId: string): Item[] {
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
