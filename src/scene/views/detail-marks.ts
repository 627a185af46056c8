/**
 * Places of a small drawing that another shows larger: a narrow frame round each (ISO 128-3), led to a circle with the detail's mark
 * over the number of its sheet (common practice).
 */
import type { Interval } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { Item } from "../model.ts";
import { spread } from "../spread.ts";
import { bubbleItems, bubbleRadius, MARK_LAYER, type Marked } from "./mark-bubble.ts";

/** A detail of a section: the heights that it shows, mm. */
export interface DetailMark extends Marked {
  readonly y: Interval;
}

/** Millimetres on paper. */
const CORNER = 2;
const GAP = 2;
const LEADER = 5;

/** @param x what the section shows across, mm: the frames reach from side to side of it, the circles stand at its left */
export function detailItems(
  details: readonly DetailMark[],
  { x, scale }: { readonly x: Interval; readonly scale: number },
): Item[] {
  const paper = 1 / scale;
  const radius = bubbleRadius(details) * paper;
  const middles = details.map(({ y }) => (y[0] + y[1]) / 2);
  const places = spread(middles, { spacing: 2 * radius + GAP * paper });
  return details.flatMap((detail, i): Item[] => {
    const rim = x[0] - LEADER * paper;
    const place = places[i] as number;
    return [
      ...frameItems({ x, y: detail.y }, CORNER * paper),
      {
        kind: "line",
        layer: MARK_LAYER,
        from: [x[0], middles[i] as number],
        to: [rim, place],
        line: "leader",
      },
      ...bubbleItems(detail, { centre: [rim - radius, place], radius, paper }),
    ];
  });
}

/** A frame with round corners, of lines and arcs. */
function frameItems({ x, y }: Rect, wished: number): Item[] {
  const round = Math.min(wished, (x[1] - x[0]) / 2, (y[1] - y[0]) / 2);
  const [left, right, low, high] = [x[0] + round, x[1] - round, y[0] + round, y[1] - round];
  const line = (from: Point, to: Point): Item => ({
    kind: "line",
    layer: MARK_LAYER,
    from,
    to,
    line: "detail",
  });
  const arc = (centre: Point, fromDeg: number): Item => ({
    kind: "arc",
    layer: MARK_LAYER,
    centre,
    radius: round,
    fromDeg,
    toDeg: fromDeg + 90,
    line: "detail",
  });
  return [
    line([left, y[0]], [right, y[0]]),
    arc([right, low], 270),
    line([x[1], low], [x[1], high]),
    arc([right, high], 0),
    line([right, y[1]], [left, y[1]]),
    arc([left, high], 90),
    line([x[0], high], [x[0], low]),
    arc([left, low], 180),
  ];
}
