/**
 * Where an elevation is cut: at both ends of each cut a heavy stroke with an arrow the way it is looked at (ISO 128-3), and at one
 * a circle with the section's mark over the number of its sheet (common practice). All of it stands outside what is drawn.
 */
import type { Point } from "../../geometry/point.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { spread } from "../spread.ts";
import { bubbleItems, bubbleRadius, MARK_LAYER, type Marked } from "./mark-bubble.ts";

/** A section, as the elevation that it is cut from points to it. Its mark is the face's code and a letter, alike on both. */
export interface SectionMark extends Marked {
  /** Upright ones are looked at to the right, level ones downward. */
  readonly cut: "upright" | "level";
  /** Where along the face, or at which height, mm. */
  readonly at: number;
}

/** Millimetres on paper. */
const STROKE = 4;
const GAP = 2;
const ARROW = 3;
/** From one arrow to the next: an arrow and a gap. */
const ARROW_STEP = ARROW + GAP;
/** From the arrow to the circle. */
const TO_CIRCLE = 2.5;
/** Round the outermost of it: a sheet keeps its drawings apart by itself. */
const MARGIN = 0.5;
/** Of the leaders from strokes to arrows that had to be led apart: longer where arrows stand far from their strokes. */
const LEADER = { least: 2.2, most: 12, ofMove: 0.6 };

/** The scene with these marks round it. */
export function withSectionMarks(scene: Scene, marks: readonly SectionMark[]): Scene {
  if (marks.length === 0) return scene;
  const radius = bubbleRadius(marks) / scene.scale;
  const items = [
    ...cutItems(
      scene,
      marks.filter(({ cut }) => cut === "upright"),
      radius,
    ),
    ...cutItems(
      scene,
      marks.filter(({ cut }) => cut === "level"),
      radius,
    ),
  ];
  const own = makeScene({ ...scene, items, margin: MARGIN }).bounds;
  const { x, y } = scene.bounds;
  return {
    ...scene,
    items: [...scene.items, ...items],
    bounds: {
      x: [Math.min(x[0], own.x[0]), Math.max(x[1], own.x[1])],
      y: [Math.min(y[0], own.y[0]), Math.max(y[1], own.y[1])],
    },
  };
}

/**
 * Upright cuts have their circles over the drawing, level ones at its right. Each stroke stands where it cuts; where arrows would
 * stand in one another they are led apart from their strokes, as running figures are, alike at both ends.
 */
function cutItems({ bounds, scale }: Scene, marks: readonly SectionMark[], radius: number): Item[] {
  const paper = 1 / scale;
  const isUpright = marks[0]?.cut === "upright";
  const [low, high] = isUpright ? bounds.y : bounds.x;
  /** Along the edge that the circles stand at, and away from the drawing. */
  const point = (along: number, away: number): Point => (isUpright ? [along, away] : [away, along]);
  const cuts = marks.map(({ at }) => at);
  const arrows = spread(cuts, { spacing: ARROW_STEP * paper });
  const circles = spread(cuts, { spacing: 2 * radius + GAP * paper });
  const moved = Math.max(...cuts.map((at, i) => Math.abs(at - (arrows[i] as number)))) * scale;
  const led = moved < 0.01 ? 0 : Math.min(LEADER.most, Math.max(LEADER.least, moved * LEADER.ofMove));
  return marks.flatMap((one, i): Item[] => {
    const [at, arrowAt, circleAt] = [one.at, arrows[i] as number, circles[i] as number];
    /** A stroke and its arrow, from the edge of the drawing outward. */
    const end = (edge: number, out: 1 | -1): Item[] => {
      const away = (by: number): number => edge + out * by * paper;
      return [
        {
          kind: "line",
          layer: MARK_LAYER,
          from: point(at, away(GAP)),
          to: point(at, away(GAP + STROKE)),
          line: "cut",
        },
        ...(led === 0
          ? []
          : [leader(point(at, away(GAP + STROKE)), point(arrowAt, away(GAP + STROKE + led)))]),
        arrow(point(arrowAt, away(GAP + STROKE + led)), { isUpright, paper }),
      ];
    };
    const foot = high + (GAP + STROKE + led) * paper;
    const rim = foot + TO_CIRCLE * paper;
    return [
      ...end(high, 1),
      leader(point(arrowAt, foot), point(circleAt, rim)),
      ...bubbleItems(one, { centre: point(circleAt, rim + radius), radius, paper }),
      ...end(low, -1),
    ];
  });
}

function leader(from: Point, to: Point): Item {
  return { kind: "line", layer: MARK_LAYER, from, to, line: "leader" };
}

/** From the stroke the way that the section is looked at. */
function arrow([x, y]: Point, { isUpright, paper }: { isUpright: boolean; paper: number }): Item {
  const [long, half] = [ARROW * paper, (ARROW / 3) * paper];
  const outline: Point[] = isUpright
    ? [
        [x, y + half],
        [x, y - half],
        [x + long, y],
      ]
    : [
        [x - half, y],
        [x, y - long],
        [x + half, y],
      ];
  return { kind: "polygon", layer: MARK_LAYER, outline, fill: "ink" };
}
