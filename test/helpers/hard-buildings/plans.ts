/** Plans: rows of walls that turn out and in, squarely or at a slant, and closed ones; seen from outside they run to the right. */
import fc from "fast-check";
import { millimetres } from "./numbers.ts";

type Point = readonly [number, number];

export interface PlanSeed {
  readonly kind: "wall" | "corner" | "jog" | "alcove" | "bay" | "box" | "ell";
  /** Lengths of walls, used in turn. */
  readonly walls: readonly number[];
  /** How far a jog or an alcove goes in, or a bay comes out. */
  readonly deep: number;
  readonly slantDeg: number;
  readonly turnsIn: boolean;
}

export interface Plan {
  readonly points: readonly Point[];
  /** Whether the last wall meets the first. */
  readonly closed: boolean;
}

export const planSeed = (longest: number): fc.Arbitrary<PlanSeed> =>
  fc.record({
    kind: fc.oneof(
      { arbitrary: fc.constantFrom<PlanSeed["kind"]>("wall", "corner"), weight: 5 },
      { arbitrary: fc.constantFrom<PlanSeed["kind"]>("jog", "alcove", "bay"), weight: 4 },
      { arbitrary: fc.constantFrom<PlanSeed["kind"]>("box", "ell"), weight: 1 },
    ),
    walls: fc.array(millimetres(1200, longest, 10), { minLength: 3, maxLength: 3 }),
    deep: millimetres(900, 1800, 10),
    slantDeg: fc.integer({ min: 20, max: 75 }),
    turnsIn: fc.boolean(),
  });

export function planOf({ kind, walls, deep, slantDeg, turnsIn }: PlanSeed): Plan {
  const [a = 0, b = 0, c = 0] = walls;
  const open = (...points: Point[]): Plan => ({ points, closed: false });
  switch (kind) {
    case "wall":
      return open([0, 0], [a, 0]);
    case "corner":
      return open([0, 0], [a, 0], [a, turnsIn ? -b : b]);
    case "jog":
      return open([0, 0], [a, 0], [a, turnsIn ? deep : -deep], [a + b, turnsIn ? deep : -deep]);
    case "alcove": {
      const wide = Math.max(b, 1500);
      const y = turnsIn ? deep : -deep;
      return open([0, 0], [a, 0], [a, y], [a + wide, y], [a + wide, 0], [a + wide + c, 0]);
    }
    case "bay": {
      // Set on the millimetre, so that the slanted walls' lengths are not whole.
      const x = Math.round(deep * Math.cos((slantDeg * Math.PI) / 180));
      const y = Math.round(deep * Math.sin((slantDeg * Math.PI) / 180)) * (turnsIn ? 1 : -1);
      return open([0, 0], [x, y], [x + a, y], [2 * x + a, 0]);
    }
    case "box":
      return {
        points: [
          [0, 0],
          [a, 0],
          [a, b],
          [0, b],
        ].map(pair),
        closed: true,
      };
    case "ell": {
      const [w, d] = [a + 1200, b + 1200];
      return {
        points: [
          [0, 0],
          [w, 0],
          [w, b],
          [a, b],
          [a, d],
          [0, d],
        ].map(pair),
        closed: true,
      };
    }
  }
}

function pair([x = 0, y = 0]: readonly number[]): Point {
  return [x, y];
}
