/** Texts as lines of marks. */
import type { Point } from "../geometry/point.ts";
import type { TextItem } from "./model.ts";
import { type DrawContext, type Shape, sayText } from "./shapes.ts";
import { textWidth, wrapText } from "./text-widths.ts";

/** From base line to base line, in heights of capitals. */
const LEADING = 1.75;

/** Space beside a text on its plate, and over and under it, in heights of capitals. */
const PLATE_BESIDE = 0.4;
const PLATE_OVER = 0.05;

export function textMarks(item: TextItem, { scale, reader }: DrawContext): Shape[] {
  const { height, anchor = "start", baseline = "base", angleDeg = 0, weight = "regular", ink = "ink" } = item;
  const said = sayText(item.text, reader);
  const paper = 1 / scale;
  const lines =
    item.wrapWidth === undefined
      ? [said]
      : wrapText({ text: said, width: item.wrapWidth * scale, height, weight });
  const widest = Math.max(...lines.map((text) => textWidth({ text, height, weight })));
  if (item.fitWidth !== undefined && widest > item.fitWidth * scale) return [];
  const drop = (baseline === "base" ? 0 : baseline === "middle" ? height / 2 : height) * paper;
  const shapes: Shape[] = [];
  if (item.plate) {
    const beside = PLATE_BESIDE * height * paper;
    const over = PLATE_OVER * height * paper;
    const long = widest * paper;
    const start = anchor === "start" ? 0 : anchor === "middle" ? -long / 2 : -long;
    const top = height * paper - drop + over;
    const bottom = -drop - (lines.length - 1) * LEADING * height * paper - over;
    const corner = (along: number, up: number): Point => turned(item.at, { along, up, angleDeg });
    shapes.push({
      shape: "path",
      closed: true,
      fill: item.plate,
      parts: [
        [
          corner(start - beside, bottom),
          corner(start + long + beside, bottom),
          corner(start + long + beside, top),
          corner(start - beside, top),
        ],
      ],
    });
  }
  lines.forEach((text, i) => {
    const up = -drop - i * LEADING * height * paper;
    const at = turned(item.at, { along: 0, up, angleDeg });
    const link = item.link === undefined ? {} : { link: item.link };
    shapes.push({ shape: "text", at, text, height, anchor, angleDeg, weight, ink, ...link });
  });
  return shapes;
}

/** A point along and up from `at` in the text's own direction. */
function turned(at: Point, { along, up, angleDeg }: { along: number; up: number; angleDeg: 0 | 90 }): Point {
  return angleDeg === 0 ? [at[0] + along, at[1] + up] : [at[0] - up, at[1] + along];
}
