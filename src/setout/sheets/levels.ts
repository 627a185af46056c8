/**
 * The lines that level joints may lie on: heads and sills of the zone, other lines of the face, full sheets from the base
 * or the top, the steps of the offset pattern, and the user's pins. A line is the upper edge of the sheet below it.
 */
import type { Interval } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";
import { isForbidden, type JointWishes } from "./pins.ts";
import { WEIGHTS } from "./score.ts";
import { moduleOf, type Shape, shapesOf } from "./shapes.ts";
import type { SheetZone } from "./zone.ts";

export interface LevelLine {
  readonly at: number;
  /** What a joint costs here, for being off the lines that show. */
  readonly cost: number;
  /** Every sheet that it crosses is parted. */
  readonly forced: boolean;
}

/** A third of the sheet: what neighbouring level joints keep apart in the offset pattern (common practice for bonds). */
export const OFFSET_SHARE = 1 / 3;

export function levelLines(zone: SheetZone, wishes: JointWishes): LevelLine[] {
  const { ground, cladding, lines } = zone;
  const [low, high] = ground.bounds.y;
  const heads = ground.keepOuts.map(({ headLine }) => headLine);
  const sills = ground.keepOuts.flatMap(({ sillLine }) => (sillLine === undefined ? [] : [sillLine]));
  const found = new Map<number, LevelLine>();
  const add = (at: number, cost: number, forced = false): void => {
    const strip: Interval = [at, snap(at + cladding.joint)];
    if (at <= low || strip[1] >= high || (!forced && isForbidden(strip, wishes.forbidden.y))) return;
    if (!found.has(at)) found.set(at, { at, cost, forced });
  };
  for (const { at } of wishes.pins.y) add(at, 0, true);
  for (const at of heads) add(at, 0);
  for (const at of sills) add(at, WEIGHTS.sill);
  for (const at of lines) add(at, WEIGHTS.otherLine);
  for (const [from, to] of wishes.forbidden.y) {
    add(snap(from - cladding.joint), WEIGHTS.offLine);
    add(to, WEIGHTS.offLine);
  }
  // A step that leaves a sliver at either end serves nobody.
  const least = zone.sliver.floor * moduleOf(zone);
  for (const shape of shapesOf(zone)) {
    for (const at of steps(shape, [low, high], cladding.joint, ground.zone.pattern === "offset")) {
      if (at - low >= least && high - at - cladding.joint >= least) add(at, WEIGHTS.offLine);
    }
  }
  return [...found.values()].sort((a, b) => a.at - b.at);
}

/** Lines a whole number of sheets from the base or the top; in the offset pattern halves and thirds of a sheet too. */
function steps({ height }: Shape, [low, high]: Interval, joint: number, offset: boolean): number[] {
  const starts = offset ? [1, 1 / 2, 1 / 3, 2 / 3] : [1];
  const pitch = height + joint;
  return starts.flatMap((start) => {
    const up: number[] = [];
    for (let at = low + start * height; at < high; at += pitch) up.push(snap(at));
    for (let at = high - start * height - joint; at > low; at -= pitch) up.push(snap(at));
    return up;
  });
}
