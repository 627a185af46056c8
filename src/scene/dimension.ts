/**
 * Dimensions taken apart for one reader (ISO 129-1): dimension line, projection lines, oblique strokes, figures above the
 * line, readable from below or from the right. A figure too long for its stretch stands in a row beyond the line, away from the thing.
 */
import type { Point } from "../geometry/point.ts";
import { message } from "../text/message.ts";
import { positionMm } from "../units/rounding.ts";
import type { DimensionItem, SceneText } from "./model.ts";
import { type DrawContext, type Shape, sayText } from "./shapes.ts";
import { spread } from "./spread.ts";
import { textWidth } from "./text-widths.ts";

/** What a tape shows: dimensions are printed to the nearest half millimetre. */
const POSITION_STEP = 0.5;

/** Millimetres on paper. */
const DIMENSION_TEXT_HEIGHT = 2.5;
const STROKE = 1.2;
const OVERRUN = 1.5;
const PROJECTION_GAP = 1;
const TEXT_GAP = 0.9;
const SIDE_GAP = 1.2;
/** From one figure of a running dimension to the next: their capitals stand 1.5 mm clear of each other. */
const RUNNING_STEP = 4;
/** Of the leaders from strokes to figures, along the projection lines: longer where figures stand far from their strokes, to be told apart. */
const LEADER = { least: 2.2, most: 12, ofMove: 0.6 };

export function dimensionMarks(item: DimensionItem, context: DrawContext): Shape[] {
  const paper = 1 / context.scale;
  if (item.points.length < 2) return [];
  const lines = runs(item).map(([from, to]): Point[] => [
    place(item, from - OVERRUN * paper, 0),
    place(item, to + OVERRUN * paper, 0),
  ]);
  if (item.from !== undefined) {
    const side = Math.sign(item.from - item.at);
    const start = item.from - item.at - side * PROJECTION_GAP * paper;
    for (const point of item.points) {
      lines.push([place(item, point, start), place(item, point, -side * OVERRUN * paper)]);
    }
  }
  const strokes = item.points.map((point): Point[] => {
    const half = STROKE * paper;
    return [
      place(item, point - half, -turnSign(item) * half),
      place(item, point + half, turnSign(item) * half),
    ];
  });
  return [
    { shape: "path", parts: lines, closed: false, line: "dimension" },
    { shape: "path", parts: strokes, closed: false, line: "visible" },
    ...(item.style === "chain" ? chainTexts(item, context) : runningTexts(item, context)),
  ];
}

/** The ends of the dimension lines: one line, or one for each part between skipped stretches. */
function runs({ points, skip = [] }: DimensionItem): [number, number][] {
  const found: [number, number][] = [];
  let from = points[0] as number;
  points.forEach((to, i) => {
    if (i < points.length - 1 && !skip.includes(i)) return;
    found.push([from, to]);
    from = points[i + 1] ?? to;
  });
  return found;
}

/** A point `along` the measured direction and `across` from the dimension line (model mm, across to +y or +x). */
function place(item: DimensionItem, along: number, across: number): Point {
  return item.along === "x" ? [along, item.at + across] : [item.at + across, along];
}

/** Strokes rise to the right as they are read: across is +y along x, but −x is up for a reader of the y direction. */
function turnSign(item: DimensionItem): 1 | -1 {
  return item.along === "x" ? 1 : -1;
}

/** Whether what is measured lies under the dimension line, as the figures are read. */
function thingIsUnder(item: DimensionItem): boolean {
  return item.from !== undefined && (item.at - item.from) * turnSign(item) > 0;
}

function valueText(
  item: DimensionItem,
  { index, value, units }: { index: number; value: number; units: "mm" | "feet-inch" },
): SceneText {
  // Feet and inches round to their own fraction.
  const printed = units === "mm" ? positionMm(value, { step: POSITION_STEP }) : value;
  return item.labels?.[index] ?? message("drawing.length", { value: printed });
}

function chainTexts(item: DimensionItem, { scale, reader }: DrawContext): Shape[] {
  const paper = 1 / scale;
  const height = DIMENSION_TEXT_HEIGHT;
  const rowStep = height * 1.5;
  const rows: number[] = [];
  const shapes: Shape[] = [];
  for (let i = 0; i + 1 < item.points.length; i++) {
    if (item.skip?.includes(i)) continue;
    const from = item.points[i] as number;
    const to = item.points[i + 1] as number;
    const text = sayText(valueText(item, { index: i, value: to - from, units: reader.units }), reader);
    if (text === "") continue;
    const width = textWidth({ text, height, weight: "regular" });
    const centre = (from + to) / 2;
    let up = TEXT_GAP;
    if (width + 2 * SIDE_GAP > (to - from) * scale) {
      const start = centre * scale - width / 2;
      let row = rows.findIndex((end) => end + SIDE_GAP * 1.5 <= start);
      if (row < 0) row = rows.push(0) - 1;
      rows[row] = start + width;
      up = thingIsUnder(item)
        ? TEXT_GAP + (row + 1) * rowStep
        : -(OVERRUN + TEXT_GAP + height + row * rowStep);
    }
    shapes.push(
      figure(item, { text, at: place(item, centre, turnSign(item) * up * paper), anchor: "middle" }),
    );
  }
  return shapes;
}

/** Figures of a running dimension stand across the line, at the far end of their projection lines. */
function runningTexts(item: DimensionItem, { scale, reader }: DrawContext): Shape[] {
  const paper = 1 / scale;
  const height = DIMENSION_TEXT_HEIGHT;
  const origin = item.origin ?? (item.points[0] as number);
  const side = item.from === undefined ? -1 : -Math.sign(item.from - item.at);
  const places = spread(item.points, { spacing: RUNNING_STEP * paper });
  const moved = Math.max(...item.points.map((point, i) => Math.abs(point - (places[i] as number)))) * scale;
  const far = OVERRUN + Math.min(LEADER.most, Math.max(LEADER.least, moved * LEADER.ofMove));
  const kinks: Point[][] = [];
  const shapes = item.points.map((point, index): Shape => {
    const text = sayText(valueText(item, { index, value: point - origin, units: reader.units }), reader);
    const to = places[index] as number;
    kinks.push([place(item, point, side * OVERRUN * paper), place(item, to, side * far * paper)]);
    const half = (height / 2) * paper;
    const along = item.along === "x" ? to + half : to - half;
    const at = place(item, along, side * (far + TEXT_GAP) * paper);
    return {
      shape: "text",
      at,
      text,
      height,
      anchor: side < 0 ? "end" : "start",
      angleDeg: item.along === "x" ? 90 : 0,
      weight: "regular",
      ink: "ink",
    };
  });
  return [{ shape: "path", parts: kinks, closed: false, line: "dimension" }, ...shapes];
}

function figure(
  item: DimensionItem,
  { text, at, anchor }: { text: string; at: Point; anchor: "middle" },
): Shape {
  return {
    shape: "text",
    at,
    text,
    height: DIMENSION_TEXT_HEIGHT,
    anchor,
    angleDeg: item.along === "x" ? 0 : 90,
    weight: "regular",
    ink: "ink",
  };
}
