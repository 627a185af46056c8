/**
 * The drawing model. A scene is a drawing in model millimetres, y up, made for one scale; whatever has a size on paper
 * (text, strokes, symbols) says so. Texts are messages, so that a scene knows neither language nor units: `drawList`
 * settles both for a reader. Screen, print and exchange all draw from the same scene.
 */
import type { Outcome } from "../findings/finding.ts";
import type { Point } from "../geometry/point.ts";
import type { Polygon } from "../geometry/polygon.ts";
import type { Rect } from "../geometry/rect.ts";
import type { Message } from "../text/message.ts";
import type { FillRole, InkRole, LayerName, LineRole } from "./roles.ts";

/** A message, or a name that reads alike in every language (a mark, an id). */
export type SceneText = Message | string;

interface Common {
  readonly layer: LayerName;
  /** Mark or id of what this is a picture of, so that a page can find it. */
  readonly of?: string;
}

export interface LineItem extends Common {
  readonly kind: "line";
  readonly from: Point;
  readonly to: Point;
  readonly line: LineRole;
}

export interface PolylineItem extends Common {
  readonly kind: "polyline";
  readonly points: readonly Point[];
  readonly line: LineRole;
}

export interface PolygonItem extends Common {
  readonly kind: "polygon";
  readonly outline: Polygon;
  readonly holes?: readonly Polygon[];
  readonly line?: LineRole;
  readonly fill?: FillRole;
}

export interface CircleItem extends Common {
  readonly kind: "circle";
  readonly centre: Point;
  /** Model millimetres. */
  readonly radius: number;
  readonly line?: LineRole;
  readonly fill?: FillRole;
}

/** Counter-clockwise from one angle to the other, degrees from the x axis. */
export interface ArcItem extends Common {
  readonly kind: "arc";
  readonly centre: Point;
  readonly radius: number;
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly line: LineRole;
}

export interface TextStyle {
  /** Height of capitals, millimetres on paper (ISO 3098 nominal height). */
  readonly height: number;
  readonly anchor?: "start" | "middle" | "end";
  /** What of the (first) line stands at the point; `base` unless told. */
  readonly baseline?: "base" | "middle" | "top";
  /** Reading direction: 90 reads upwards, from the sheet's right edge. */
  readonly angleDeg?: 0 | 90;
  readonly weight?: "regular" | "bold";
  readonly ink?: InkRole;
}

export interface TextItem extends Common, TextStyle {
  readonly kind: "text";
  readonly at: Point;
  readonly text: SceneText;
  /** Left out where it would be longer than this (model mm). */
  readonly fitWidth?: number;
  /** Broken into lines no longer than this (model mm). */
  readonly wrapWidth?: number;
  /** A plate behind the text, so that lines do not run through it. */
  readonly plate?: FillRole;
  /**
   * Name of the sheet, or id of a scene on one, that the text leads to. Where the text is a message with a value `sheet`, that is put
   * in when the sheets have their numbers.
   */
  readonly link?: string;
}

/** Parallel narrow lines, crossed diagonals of end grain, or the loops of soft insulation in an upright layer. */
export interface HatchItem extends Common {
  readonly kind: "hatch";
  readonly outline: Polygon;
  readonly holes?: readonly Polygon[];
  readonly pattern: "diagonal" | "end-grain" | "soft" | "earth";
  /** Between lines, millimetres on paper. */
  readonly spacing: number;
}

/**
 * Dimensions (ISO 129-1) with oblique strokes at the ends and the figure above the line. `chain` measures between
 * neighbouring points, `running` from the first.
 */
export interface DimensionItem extends Common {
  readonly kind: "dimension";
  readonly style: "chain" | "running";
  /** Direction that is measured. */
  readonly along: "x" | "y";
  /** Place of the dimension line across that direction. */
  readonly at: number;
  /** Where the projection lines start, across; none are drawn where absent. */
  readonly from?: number;
  /** Places along it, rising. */
  readonly points: readonly number[];
  /** Where running dimensions count from; the first point unless told. */
  readonly origin?: number;
  /** Stretches of a chain that are not measured, by number from 0: its parts share their rows of figures. */
  readonly skip?: readonly number[];
  /** In place of the measured values, one a stretch (chain) or one a point (running). */
  readonly labels?: readonly SceneText[];
}

/** A line from a dot on the thing through its bends to the text at its end. */
export interface LeaderItem extends Common {
  readonly kind: "leader";
  readonly points: readonly Point[];
  readonly text: SceneText;
  /** Height of capitals, millimetres on paper. */
  readonly height: number;
  readonly anchor?: "start" | "end";
  readonly weight?: "regular" | "bold";
}

export type SymbolName = "fail" | "attention" | "cannot evaluate" | "provisional" | "pass";

/** ■ ▲ ◇ ◌ ✓ drawn as shapes, so that they need no font. */
export interface SymbolItem extends Common {
  readonly kind: "symbol";
  readonly at: Point;
  readonly symbol: SymbolName;
  /** Millimetres on paper. */
  readonly size: number;
}

export type Item =
  | LineItem
  | PolylineItem
  | PolygonItem
  | CircleItem
  | ArcItem
  | TextItem
  | HatchItem
  | DimensionItem
  | LeaderItem
  | SymbolItem;

export interface Scene {
  /** Letters, figures and hyphens: renderers make ids from it. */
  readonly id: string;
  readonly title: Message;
  /** Millimetres of paper for a millimetre of the model: 1/50. */
  readonly scale: number;
  /** False where nothing has a size in it: tables, lists. */
  readonly toScale?: false;
  /** Holds everything drawn, for every reader; model mm. */
  readonly bounds: Rect;
  readonly items: readonly Item[];
}

/** The symbol of an outcome; undefined for `not applicable`, which is not shown. */
export function symbolOf({
  outcome,
  provisional,
}: {
  outcome: Outcome;
  provisional: boolean;
}): SymbolName | undefined {
  if (outcome === "not applicable") return undefined;
  return outcome === "pass" && provisional ? "provisional" : outcome;
}
