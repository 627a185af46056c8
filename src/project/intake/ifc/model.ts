/** Walls of an IFC file as what a face can be made of, and what is wrong with each: nothing is refused before it is chosen. */
import type { Point } from "../../../geometry/point.ts";
import type { Fault } from "./reading.ts";
import type { WallSide } from "./wall-side.ts";

export interface ModelWall {
  /** `#12`, unlike any other of the file. */
  readonly entity: string;
  readonly type: string;
  /** What the file calls it; its tag or entity where it has no name, and with its entity where others are called the same. */
  readonly name: string;
  /** What it may be chosen by besides: its own name, tag and global id. */
  readonly called: readonly string[];
  /** Whether the file says that it stands outside; undefined where it says nothing. */
  readonly external: boolean | undefined;
  readonly faults: readonly Fault[];
  /** Its two sides, with their openings; absent where it is not read. The first is the one that looks outside. */
  readonly sides?: readonly [WallSide, WallSide];
  /** Whether the other walls of the file tell which side looks outside. */
  readonly sideTold: boolean;
  /** Taken for an outer wall, by what the file says or by what it looks out on. */
  readonly outer: boolean;
}

export interface WallModel {
  /** Of the file, as the messages say it. */
  readonly name: string;
  /** In plan; +Y where it is not told. */
  readonly north: Point;
  readonly northTold: boolean;
  readonly walls: readonly ModelWall[];
}
