/** Holes at the inner corners of notched sheets: a ring round each, and under the drawing what they are. */
import type { FaceLayout, Relief } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { LABEL_STEP, TEXT } from "./style.ts";

/** Least radius of a ring, mm on paper: at usual scales the hole itself is smaller than a dot. */
const RING_RADIUS = 0.9;
const RING = layerName("SHEET");

export function reliefItems(face: FaceLayout, scale: number): Item[] {
  return face.pieces.flatMap(({ mark, reliefs = [] }) =>
    reliefs.map(({ x, y, diameter }) => ring({ x, y, diameter }, { of: mark, scale })),
  );
}

/** A line for each size of hole; none where no sheet is notched. */
export function reliefNotes(
  face: FaceLayout,
  { x, y, scale }: { x: number; y: number; scale: number },
): Item[] {
  const counts = new Map<number, number>();
  for (const { reliefs = [] } of face.pieces)
    for (const { diameter } of reliefs) counts.set(diameter, (counts.get(diameter) ?? 0) + 1);
  return [...counts]
    .sort(([a], [b]) => a - b)
    .flatMap(([diameter, count], i): Item[] => {
      const at = y - ((i + 0.5) * LABEL_STEP) / scale;
      return [
        ring({ x: x + RING_RADIUS / scale, y: at, diameter: 0 }, { scale }),
        {
          kind: "text",
          layer: layerName("SHEET", "T"),
          at: [x + (2 * RING_RADIUS + 1) / scale, at],
          text: message("drawing.reliefs", { count, diameter }),
          height: TEXT,
          baseline: "middle",
        },
      ];
    });
}

function ring({ x, y, diameter }: Relief, { of, scale }: { of?: string; scale: number }): Item {
  const radius = Math.max(diameter / 2, RING_RADIUS / scale);
  return { kind: "circle", layer: RING, ...(of && { of }), centre: [x, y], radius, line: "visible" };
}
