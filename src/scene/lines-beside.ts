/** Lines of text beside a drawing, in columns no higher than they may be. */
import type { Point } from "../geometry/point.ts";
import { READERS } from "./bounds.ts";
import type { Item, SceneText, TextStyle } from "./model.ts";
import { layerName } from "./roles.ts";
import { sayText } from "./shapes.ts";
import { textWidth } from "./text-widths.ts";

export interface BesideLine extends Pick<TextStyle, "weight" | "ink"> {
  readonly text: SceneText;
}

const TEXT = 2.5;
export const LINE_STEP = 4.4;
const BETWEEN_COLUMNS = 4;

/**
 * @param at upper left corner, model mm
 * @param height that a column may have, mm on paper; at least one line
 */
export function linesBeside(
  lines: readonly BesideLine[],
  { at: [x, y], height, scale }: { at: Point; height: number; scale: number },
): Item[] {
  const paper = 1 / scale;
  const inColumn = Math.max(1, Math.floor(height / LINE_STEP));
  let left = x;
  const items: Item[] = [];
  for (let first = 0; first < lines.length; first += inColumn) {
    const own = lines.slice(first, first + inColumn);
    own.forEach(({ text, weight, ink }, i) => {
      items.push({
        kind: "text",
        layer: layerName("FRAME", "T"),
        at: [left, y - i * LINE_STEP * paper],
        text,
        height: TEXT,
        baseline: "top",
        ...(weight && { weight }),
        ...(ink && { ink }),
      });
    });
    left += (Math.max(...own.map(widthOf)) + BETWEEN_COLUMNS) * paper;
  }
  return items;
}

function widthOf({ text, weight = "regular" }: BesideLine): number {
  const said = typeof text === "string" ? [text] : READERS.map((reader) => sayText(text, reader));
  return Math.max(...said.map((one) => textWidth({ text: one, height: TEXT, weight })));
}
