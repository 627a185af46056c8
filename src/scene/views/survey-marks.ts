/** A surveyed face painted over its elevation: the places that were read, and the packing behind its battens. */
import type { Point } from "../../geometry/point.ts";
import { type Rect, rectsOverlap } from "../../geometry/rect.ts";
import type { PackedCrossing, Packing } from "../../site/survey/packing.ts";
import type { Spot } from "../../site/survey/reading.ts";
import { type Message, message } from "../../text/message.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { BESIDE, crossingItems, FIGURE } from "./packing-map.ts";
import { LABEL_STEP, TEXT, tenth } from "./style.ts";

const SURVEY = layerName("SURVEY");
const SURVEY_TEXT = layerName("SURVEY", "T");

/** Half of a cross at a place that was read, mm on paper. */
const ARM = 0.9;
/** What is planed off is written bold and with its unit: it needs so much beside its screw, mm on paper. */
const PLANED = 17;

export interface SurveyedWall {
  readonly face: string;
  readonly spots: readonly Spot[];
  /** Undefined where no crossing of a batten was read. */
  readonly packing: Packing | undefined;
}

type Side = "left" | "right";

/**
 * In the face's own frame. Figures that would cover one another are left out, those of readings first; what is planed off is
 * always told.
 */
export function surveyItems({ spots, packing }: SurveyedWall, scale: number): Item[] {
  const crossings = packing?.crossings ?? [];
  const figures: Rect[] = [];
  const marks = [...crossings, ...spots].map(({ x, y }) => box([x, y], ARM / scale));
  const beside = (
    { x, y }: { readonly x: number; readonly y: number },
    { width, sides, clearOf }: { width: number; sides: readonly Side[]; clearOf: readonly Rect[] },
  ): Side | undefined => {
    for (const side of sides) {
      const [near, far] = [BESIDE / scale, (BESIDE + width) / scale];
      const place: Rect = {
        x: side === "right" ? [x + near, x + far] : [x - far, x - near],
        y: [y - LABEL_STEP / 2 / scale, y + LABEL_STEP / 2 / scale],
      };
      const meets = (one: Rect): boolean => rectsOverlap(one, place);
      if (figures.some(meets) || clearOf.some(meets)) continue;
      figures.push(place);
      return side;
    }
    return undefined;
  };
  // Over another's screw it would be read as that one's.
  const room = (one: { readonly x: number; readonly y: number }): Side | undefined =>
    beside(one, { width: FIGURE[0], sides: ["right", "left"], clearOf: marks });
  const crossing = (one: PackedCrossing, figure: Side | undefined): Item[] => [
    plate([one.x, one.y], 0.8 / scale),
    ...crossingItems(one, { scale, figure, element: "SURVEY" }),
  ];
  const planed = crossings
    .filter(({ planeOff }) => planeOff > 0)
    // Two at most, from the left: the first to its left and the second to its right never meet.
    .flatMap((one) =>
      crossing(one, beside(one, { width: PLANED, sides: ["left", "right"], clearOf: [] }) ?? "right"),
    );
  const packed = crossings
    .filter(({ planeOff }) => planeOff === 0)
    .flatMap((one) => crossing(one, room(one)));
  const read = spots.flatMap((spot) => [...cross(spot, scale), ...figureOf(spot, room(spot), scale)]);
  // What is planed off lies over all else.
  return [...read, ...packed, ...planed];
}

function box([x, y]: Point, half: number): Rect {
  return { x: [x - half, x + half], y: [y - half, y + half] };
}

/** Under marks in ink, which would not be seen on dark boards. */
function plate(centre: Point, radius: number): Item {
  return { kind: "circle", layer: SURVEY, centre, radius, fill: "paper" };
}

function cross({ x, y }: Spot, scale: number): Item[] {
  const arm = ARM / scale;
  return [
    plate([x, y], 1.3 * arm),
    { kind: "line", layer: SURVEY, from: [x - arm, y], to: [x + arm, y], line: "visible" },
    { kind: "line", layer: SURVEY, from: [x, y - arm], to: [x, y + arm], line: "visible" },
  ];
}

function figureOf({ x, y, outward }: Spot, side: Side | undefined, scale: number): Item[] {
  if (!side) return [];
  return [
    {
      kind: "text",
      layer: SURVEY_TEXT,
      at: [x + ((side === "left" ? -1 : 1) * BESIDE) / scale, y],
      anchor: side === "left" ? "end" : "start",
      text: readingFigure(outward),
      height: TEXT,
      baseline: "middle",
      ink: "second",
      plate: "paper",
    },
  ];
}

/** Millimetres with their sign, so that they are not taken for packing; to a tenth, as means of repeated readings need it. */
function readingFigure(outward: number): Message {
  const by = tenth(outward);
  return message(by > 0 ? "survey.map.out" : "survey.map.in", { by });
}
