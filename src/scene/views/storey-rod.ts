/** The storey rod as it stands beside the wall: every course at its height, every gap dark. */
import { rectOutline } from "../../geometry/rect.ts";
import type { RodResult } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { TEXT } from "./style.ts";

const LAYER = layerName("ROD");

/** Millimetres on paper. */
export const ROD_WIDTH = 4;

/** @param left the rod's left edge, model mm */
export function rodItems(rod: RodResult, { left, scale }: { left: number; scale: number }): Item[] {
  const right = left + ROD_WIDTH / scale;
  const first = rod.segments[0];
  const last = rod.segments.at(-1);
  if (!first || !last) return [];
  const courses = rod.segments.flatMap((segment) => segment.courses);
  return [
    {
      kind: "polygon",
      layer: LAYER,
      of: rod.id,
      outline: rectOutline({ x: [left, right], y: [first.from, last.to] }),
      fill: "membrane",
    },
    ...courses.map(
      (course, i): Item => ({
        kind: "polygon",
        layer: LAYER,
        of: rod.id,
        outline: rectOutline({ x: [left, right], y: [course.from, course.to] }),
        line: "gap",
        fill: i % 2 === 0 ? "board" : "board-alt",
      }),
    ),
    {
      kind: "text",
      layer: layerName("ROD", "T"),
      of: rod.id,
      at: [(left + right) / 2, last.to + 2 / scale],
      text: message("drawing.rod"),
      height: TEXT,
      anchor: "middle",
      ink: "second",
    },
  ];
}
