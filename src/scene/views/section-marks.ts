/**
 * Where an elevation is cut: at both ends of each cut a heavy stroke with an arrow the way it is looked at (ISO 128-3), and at one
 * a circle with the section's mark over the number of its sheet (common practice). All of it stands outside what is drawn.
 */
import type { Point } from "../../geometry/point.ts";
import { type Message, message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { spread } from "../spread.ts";
import { textWidth } from "../text-widths.ts";
import { TEXT } from "./style.ts";

/** A section or detail, as the elevation that it is cut from points to it. */
export interface SectionMark {
  /** Alike on the elevation and at the section: the face's code and a letter. */
  readonly mark: string;
  /** Upright ones are looked at to the right, level ones downward. */
  readonly cut: "upright" | "level";
  /** Where along the face, or at which height, mm. */
  readonly at: number;
  /** Id of the section's scene. */
  readonly scene: string;
}

const LAYER = layerName("FRAME");
const WORDS = layerName("FRAME", "T");

/** Keeps the room for the number of a sheet until it is known. */
const WIDEST_NUMBER = "0000";

/** Millimetres on paper. */
const STROKE = 5;
const RADIUS = 5.5;
const GAP = 2;
const ARROW = 3;

/** The scene with these marks round it. */
export function withSectionMarks(scene: Scene, marks: readonly SectionMark[]): Scene {
  if (marks.length === 0) return scene;
  const paper = 1 / scene.scale;
  const radius = Math.max(RADIUS, ...marks.map(({ mark }) => widthOf(mark) / 2 + 1.2)) * paper;
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
  return withItems(scene, items);
}

/** Under a section, what it is called and which sheet shows where it is cut. @param elevation id of a scene or sheet */
export function withSectionName(
  scene: Scene,
  { mark, elevation }: { mark: string; elevation: string },
): Scene {
  const { x, y } = scene.bounds;
  const paper = 1 / scene.scale;
  return withItems(scene, [
    {
      kind: "text",
      layer: WORDS,
      at: [x[0] + 2 * paper, y[0] - paper],
      text: message("drawing.section-of", { mark, sheet: WIDEST_NUMBER }),
      height: TEXT,
      baseline: "top",
      weight: "bold",
      link: elevation,
    },
  ]);
}

function withItems(scene: Scene, items: readonly Item[]): Scene {
  const own = makeScene({ ...scene, items }).bounds;
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

/** Upright cuts have their circles over the drawing, level ones at its right. */
function cutItems({ bounds, scale }: Scene, marks: readonly SectionMark[], radius: number): Item[] {
  const paper = 1 / scale;
  const isUpright = marks[0]?.cut === "upright";
  const [low, high] = isUpright ? bounds.y : bounds.x;
  /** Along the edge that the circles stand at, and away from the drawing. */
  const point = (along: number, away: number): Point => (isUpright ? [along, away] : [away, along]);
  const places = spread(
    marks.map(({ at }) => at),
    { spacing: 2 * radius + GAP * paper },
  );
  const stroke = (at: number, from: number, to: number): Item => ({
    kind: "line",
    layer: LAYER,
    from: point(at, from),
    to: point(at, to),
    line: "cut",
  });
  return marks.flatMap((one, i): Item[] => {
    const { at } = one;
    const inner = high + GAP * paper;
    const outer = inner + STROKE * paper;
    const place = places[i] ?? at;
    const foot = outer + (ARROW + GAP) * paper;
    const centre = point(place, foot + radius);
    return [
      stroke(at, inner, outer),
      arrow(point(at, outer), { isUpright, paper }),
      { kind: "line", layer: LAYER, from: point(at, outer), to: point(place, foot), line: "leader" },
      ...bubble(one, { centre, radius, paper }),
      stroke(at, low - GAP * paper, low - (GAP + STROKE) * paper),
      arrow(point(at, low - (GAP + STROKE) * paper), { isUpright, paper }),
    ];
  });
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
  return { kind: "polygon", layer: LAYER, outline, fill: "ink" };
}

function bubble(
  { mark, scene }: SectionMark,
  { centre, radius, paper }: { centre: Point; radius: number; paper: number },
): Item[] {
  const [x, y] = centre;
  const text = (words: string | Message, up: number): Item => ({
    kind: "text",
    layer: WORDS,
    at: [x, y + up * paper],
    text: words,
    height: TEXT,
    anchor: "middle",
    baseline: "middle",
    weight: "bold",
    link: scene,
  });
  return [
    { kind: "circle", layer: LAYER, centre, radius, line: "visible" },
    { kind: "line", layer: LAYER, from: [x - radius, y], to: [x + radius, y], line: "visible" },
    text(mark, 2.2),
    text(message("drawing.sheet-number", { sheet: WIDEST_NUMBER }), -2.2),
  ];
}

function widthOf(mark: string): number {
  return textWidth({ text: mark, height: TEXT, weight: "bold" });
}
