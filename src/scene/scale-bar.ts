/** A bar that a rule laid on the paper can be held against: fields in turn filled, and what the whole is long. */

import type { Point } from "../geometry/point.ts";
import { rectOutline } from "../geometry/rect.ts";
import { message } from "../text/message.ts";
import type { Reader } from "../text/say.ts";
import type { Item } from "./model.ts";
import { layerName } from "./roles.ts";

const INCH = 25.4;
const LENGTHS = {
  mm: [5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000],
  "feet-inch": [1 / 4, 1 / 2, 1, 2, 4, 6, 12, 24, 48, 120, 240, 480].map((inches) => inches * INCH),
} as const;

/** Millimetres of paper: after the words of the scale, the bar at most, its words. */
const AFTER = 22;
const LONGEST = 30;
const WORDS = 24;
const HIGH = 1.4;
const FIELDS = 4;

/** What scale, bar and words take beside one another, mm of paper. */
export const SCALE_BAR_WIDTH = AFTER + LONGEST + WORDS;

/** @param at the lower left of the words of the scale that it follows, mm of the sheet */
export function scaleBarItems({
  at: [x, y],
  scale,
  units,
  of,
}: {
  at: Point;
  scale: number;
  units: Reader["units"];
  of: string;
}): Item[] {
  const length = LENGTHS[units].filter((one) => one * scale <= LONGEST).at(-1);
  if (length === undefined) return [];
  const layer = layerName("FRAME");
  const left = x + AFTER;
  const field = (length * scale) / FIELDS;
  const bar = Array.from({ length: FIELDS }, (_, i): Item => {
    const across = [left + i * field, left + (i + 1) * field] as const;
    const outline = rectOutline({ x: across, y: [y, y + HIGH] });
    return { kind: "polygon", layer, of, outline, line: "detail", fill: i % 2 === 0 ? "ink" : "paper" };
  });
  return [
    ...bar,
    {
      kind: "text",
      layer: layerName("FRAME", "T"),
      of,
      at: [left + length * scale + 2, y],
      text: message("drawing.sheet.bar", { length }),
      height: 2.5,
      ink: "second",
    },
  ];
}
