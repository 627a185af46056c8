/** Outlines of faces: level, raked, gabled or stepped at the top, level or stepped with the ground at the base. */
import fc from "fast-check";
import { millimetres, share } from "./numbers.ts";

type Point = [number, number];

export interface OutlineSeed {
  readonly top: "level" | "rake" | "gable" | "step" | "notch";
  readonly base: "level" | "step";
  /** Heights at the left, at the middle and at the right. */
  readonly heights: readonly [number, number, number];
  readonly at: number;
  readonly drop: number;
}

export const outlineSeed: fc.Arbitrary<OutlineSeed> = fc.record({
  top: fc.constantFrom("level", "level", "rake", "gable", "step", "notch"),
  base: fc.constantFrom("level", "level", "level", "step"),
  heights: fc.tuple(millimetres(2150, 3000, 10), millimetres(2150, 3600, 10), millimetres(2150, 3000, 10)),
  at: share(25, 75),
  drop: millimetres(-300, 300, 10),
});

const BASE_MM = -50;

/** From a step to the right end: a notch beside it and some wall. */
const ROOM_MM = 330;

/** Counter-clockwise from the left end of the base; `length` is written as the plan has it, to the grid or to the millimetre. */
export function outlineOf({ top, base, heights, at, drop }: OutlineSeed, length: number): Point[] {
  const x = Math.min(Math.max(200, Math.round((length * at) / 10) * 10), length - ROOM_MM);
  const [left, middle, right] = heights;
  const low: Point[] =
    base === "step" && drop !== 0
      ? [
          [0, BASE_MM],
          [x, BASE_MM],
          [x, BASE_MM + drop],
          [length, BASE_MM + drop],
        ]
      : [
          [0, BASE_MM],
          [length, BASE_MM],
        ];
  return [...low, ...high()];

  function high(): Point[] {
    if (top === "level") {
      return [
        [length, left],
        [0, left],
      ];
    }
    if (top === "rake") {
      return [
        [length, right],
        [0, left],
      ];
    }
    if (top === "gable") {
      return [
        [length, left],
        [x, Math.max(middle, left + 100)],
        [0, left],
      ];
    }
    // A step's riser stands beside the base's, so that the two never meet.
    const over = x + 70;
    const other = right === left ? right + 200 : right;
    if (top === "step") {
      return [
        [length, other],
        [over, other],
        [over, left],
        [0, left],
      ];
    }
    const sunk = left - 350;
    return [
      [length, left],
      [over + 200, left],
      [over + 200, sunk],
      [over - 200, sunk],
      [over - 200, left],
      [0, left],
    ];
  }
}

/** The lowest top and the highest base of an outline: between them everything lies in it. */
export function sureHeights(outline: readonly Point[]): [number, number] {
  const heights = outline.map(([, y]) => y);
  const bases = heights.filter((y) => y < 1000);
  const tops = heights.filter((y) => y >= 1000);
  return [Math.max(...bases), Math.min(...tops)];
}
