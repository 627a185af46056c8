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
  /** What the line answers to. */
  readonly answers: LevelAnswers;
}

export type LevelAnswers = "pin" | "head" | "sill" | "line" | "band" | "stock" | "bond" | "equal";

/** A third of the sheet: what neighbouring level joints keep apart in the offset pattern (common practice for bonds). */
export const OFFSET_SHARE = 1 / 3;

export function levelLines(zone: SheetZone, wishes: JointWishes): LevelLine[] {
  const { ground, cladding, lines } = zone;
  const [low, high] = ground.bounds.y;
  const heads = ground.keepOuts.map(({ headLine }) => headLine);
  const sills = ground.keepOuts.flatMap(({ sillLine }) => (sillLine === undefined ? [] : [sillLine]));
  const found = new Map<number, LevelLine>();
  const add = (at: number, answers: LevelAnswers): void => {
    const strip: Interval = [at, snap(at + cladding.joint)];
    const forced = answers === "pin";
    if (at <= low || strip[1] >= high || (!forced && isForbidden(strip, wishes.forbidden.y))) return;
    if (!found.has(at)) found.set(at, { at, cost: COSTS[answers], forced, answers });
  };
  for (const { at } of wishes.pins.y) add(at, "pin");
  for (const at of heads) add(at, "head");
  for (const at of sills) add(at, "sill");
  for (const at of lines) add(at, "line");
  for (const [from, to] of wishes.forbidden.y) {
    add(snap(from - cladding.joint), "band");
    add(to, "band");
  }
  // A step that leaves a sliver at either end serves nobody.
  const least = zone.sliver.floor * moduleOf(zone);
  for (const shape of shapesOf(zone)) {
    const starts = ground.zone.pattern === "offset" ? BOND_STARTS : [1];
    for (const start of starts) {
      for (const at of steps(shape, [low, high], { joint: cladding.joint, start })) {
        if (at - low < least || high - at - cladding.joint < least) continue;
        add(at, start === 1 ? "stock" : "bond");
      }
    }
  }
  return [...found.values()].sort((a, b) => a.at - b.at);
}

const COSTS: Readonly<Record<LevelAnswers, number>> = {
  pin: 0,
  head: 0,
  sill: WEIGHTS.sill,
  line: WEIGHTS.otherLine,
  band: WEIGHTS.offLine,
  stock: WEIGHTS.offLine,
  bond: WEIGHTS.offLine,
  equal: WEIGHTS.offLine,
};

/** In the offset pattern a column may begin with half a sheet or a third. */
const BOND_STARTS = [1, 1 / 2, 1 / 3, 2 / 3];

/** Lines a whole number of sheets from the base or the top, the first of them whole or a part. */
function steps(
  { height }: Shape,
  [low, high]: Interval,
  { joint, start }: { readonly joint: number; readonly start: number },
): number[] {
  const pitch = height + joint;
  const up: number[] = [];
  for (let at = low + start * height; at < high; at += pitch) up.push(snap(at));
  for (let at = high - start * height - joint; at > low; at -= pitch) up.push(snap(at));
  return up;
}
