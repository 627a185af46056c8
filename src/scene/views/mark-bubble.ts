/**
 * A circle with a mark over the number of its sheet, as sections and details are pointed to (common practice; ISO 128-3 asks for the
 * mark alone).
 */
import type { Point } from "../../geometry/point.ts";
import { type Message, message } from "../../text/message.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { textWidth } from "../text-widths.ts";
import { TEXT } from "./style.ts";

export const MARK_LAYER = layerName("FRAME");
export const MARK_WORDS = layerName("FRAME", "T");

/** Keeps the room for the number of a sheet until it is known. */
export const WIDEST_NUMBER = "0000";

/** What a circle names, and leads to. */
export interface Marked {
  readonly mark: string;
  /** Id of the scene that the mark is of. */
  readonly scene: string;
}

/** Millimetres on paper. */
const LEAST_RADIUS = 5.5;

/** Of circles that hold these marks, mm on paper. */
export function bubbleRadius(marks: readonly Marked[]): number {
  return Math.max(LEAST_RADIUS, ...marks.map(({ mark }) => widthOf(mark) / 2 + 1.2));
}

/** @param radius model mm */
export function bubbleItems(
  { mark, scene }: Marked,
  { centre, radius, paper }: { centre: Point; radius: number; paper: number },
): Item[] {
  const [x, y] = centre;
  const text = (words: string | Message, up: number): Item => ({
    kind: "text",
    layer: MARK_WORDS,
    at: [x, y + up * paper],
    text: words,
    height: TEXT,
    anchor: "middle",
    baseline: "middle",
    weight: "bold",
    link: scene,
  });
  return [
    { kind: "circle", layer: MARK_LAYER, centre, radius, line: "visible" },
    { kind: "line", layer: MARK_LAYER, from: [x - radius, y], to: [x + radius, y], line: "visible" },
    text(mark, 2.2),
    text(message("drawing.sheet-number", { sheet: WIDEST_NUMBER }), -2.2),
  ];
}

function widthOf(mark: string): number {
  return textWidth({ text: mark, height: TEXT, weight: "bold" });
}
