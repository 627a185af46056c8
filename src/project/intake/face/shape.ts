/** A face as it is taken in from elsewhere: what is to be clad, and its openings, before they have a place in a project. */
import type { Point } from "../../../geometry/point.ts";
import type { Rect } from "../../../geometry/rect.ts";
import type { Opening } from "../../schema/project.ts";

export interface TakenOpening extends Rect {
  /** Where the source tells it; else its height over the foot says. */
  readonly kind?: Extract<Opening["kind"], "window" | "door">;
  /** What the source calls it: its name here where that is one, else a note. */
  readonly name?: string;
}

/** Face frame, mm on the grid: the left end at x = 0, the lowest point at y = 0; counter-clockwise from the lowest left. */
export interface TakenFace {
  readonly outline: readonly Point[];
  /** From left to right, then upwards. */
  readonly openings: readonly TakenOpening[];
}
