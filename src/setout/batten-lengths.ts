/**
 * Battens and rails longer than their stock, in lengths butted over timber, so that a screw holds each of the two ends: uprights over
 * studs, plates, rims, headers or a block set for it, rails over a batten. Lengths beside one another are joined a screw's spacing apart.
 *
 * A lap or a splice would thicken the strip or shut the cavity beside it, and each length is screwed near its ends in any case: where
 * timber can stand behind the joint, the butt over it is the usual craft (common practice; as roof battens, which BS 5534 butts over a
 * support and staggers: from memory).
 */
import { type Interval, intervalLength } from "../geometry/interval.ts";
import { snap } from "../units/length.ts";

/** Between two lengths of one batten. */
export const BATTEN_JOINT_MM = 5;
/** Joints of battens side by side keep this apart, a screw's spacing (common practice). */
export const STAGGER_MM = 600;
/** A shorter length would be held by two screws close together. */
const SHORT_MM = 600;

export interface StripLengths {
  readonly longest: number;
  /** Where along the strip a screw finds timber behind it. */
  readonly holds: readonly Interval[];
  /** A screw from a length's sawn end. */
  readonly fromEnd: number;
  /** Joints of the strips beside it. */
  readonly beside: readonly number[];
  /** Whether a block can be set behind a joint that nothing bears. */
  readonly blocks: boolean;
}

export interface StripJoint {
  /** Middle of the joint. */
  readonly at: number;
  /** Whether timber holds a screw at each side of it. */
  readonly borne: boolean;
  /** Whether the joints beside it keep their distance. */
  readonly staggered: boolean;
}

const PIECE_COST = 300;
const UNBORNE_COST = 1000;
/** Such a strip takes blocks between the timbers in any case: one more costs less than joints in a row. */
const BLOCK_COST = 60;
const BESIDE_COST = 100;
const SHORT_COST = 50;

/** The joints of a strip that is longer than its stock, the fewest that are borne and staggered; exact over the places that matter. */
export function stripJoints(strip: Interval, rules: StripLengths): StripJoint[] {
  if (intervalLength(strip) <= rules.longest) return [];
  const nodes = placesOf(strip, rules);
  const best = nodes.map(() => ({ cost: Number.POSITIVE_INFINITY, back: -1 }));
  best[0] = { cost: 0, back: -1 };
  for (let j = 1; j < nodes.length; j += 1) {
    for (let i = j - 1; i >= 0; i -= 1) {
      const length = lengthBetween(nodes, i, j);
      if (length > rules.longest + 1e-9) break;
      const cost = (best[i]?.cost ?? 0) + pieceCost(length, rules) + jointCost(nodes[j], rules);
      if (length > 0 && cost < (best[j]?.cost ?? 0) - 1e-9) best[j] = { cost, back: i };
    }
  }
  const joints: StripJoint[] = [];
  for (let j = best.at(-1)?.back ?? 0; j > 0; j = best[j]?.back ?? 0) {
    const place = nodes[j];
    if (place)
      joints.unshift({ at: place.at, borne: place.borne, staggered: besideOf(place.at, rules) === 0 });
  }
  return joints;
}

/** A strip cut at its joints. */
export function cutAtJoints([from, to]: Interval, joints: readonly StripJoint[]): Interval[] {
  const half = BATTEN_JOINT_MM / 2;
  const cuts = [from, ...joints.flatMap(({ at }) => [snap(at - half), snap(at + half)]), to];
  return cuts.flatMap((cut, i): Interval[] => (i % 2 === 0 ? [[cut, cuts[i + 1] ?? to]] : []));
}

interface Place {
  readonly at: number;
  readonly borne: boolean;
  readonly isEnd: boolean;
}

/**
 * Both ends, and between them where a joint could best lie: as far as whole lengths reach, at equal shares, at the edges of what bears it
 * and a stagger off the joints beside.
 */
function placesOf([from, to]: Interval, { longest, holds, fromEnd, beside }: StripLengths): Place[] {
  const room = BATTEN_JOINT_MM / 2 + fromEnd;
  const bearings = holds
    .map(([low, high]): Interval => [low + room, high - room])
    .filter(([low, high]) => low <= high);
  const pitch = longest + BATTEN_JOINT_MM;
  const parts = Math.ceil((to - from + BATTEN_JOINT_MM) / pitch - 1e-9);
  const reached = Array.from({ length: parts }, (_, i) => [
    from + (i + 1) * pitch - BATTEN_JOINT_MM / 2,
    to - (i + 1) * pitch + BATTEN_JOINT_MM / 2,
    ...[parts, parts + 1].map((all) => from + ((to - from) * (i + 1)) / all),
  ]).flat();
  const fixed = [
    ...reached,
    ...bearings.flat(),
    ...beside.flatMap((at) => [at - STAGGER_MM, at + STAGGER_MM]),
  ];
  // Whole lengths on from each of these too: a joint may hang on how far the one before it reaches.
  const wished = fixed.flatMap((at) =>
    Array.from({ length: 2 * parts - 1 }, (_, i) => at + (i - parts + 1) * pitch),
  );
  const isBorne = (at: number): boolean =>
    bearings.some(([low, high]) => at >= low - 1e-9 && at <= high + 1e-9);
  const inside = [...new Set(wished.map((at) => Math.round(at * 8000) / 8000))]
    .filter((at) => at > from + room && at < to - room)
    .sort((a, b) => a - b);
  return [
    { at: from, borne: true, isEnd: true },
    ...inside.map((at) => ({ at, borne: isBorne(at), isEnd: false })),
    { at: to, borne: true, isEnd: true },
  ];
}

function lengthBetween(nodes: readonly Place[], i: number, j: number): number {
  const half = BATTEN_JOINT_MM / 2;
  const low = (nodes[i]?.at ?? 0) + (nodes[i]?.isEnd ? 0 : half);
  return (nodes[j]?.at ?? 0) - (nodes[j]?.isEnd ? 0 : half) - low;
}

/** Equal lengths where nothing else tells them apart. */
function pieceCost(length: number, { longest }: StripLengths): number {
  return PIECE_COST + 10 * (length / longest) ** 2 + (length < SHORT_MM ? SHORT_COST : 0);
}

function jointCost(place: Place | undefined, rules: StripLengths): number {
  if (!place || place.isEnd) return 0;
  const unborne = rules.blocks ? BLOCK_COST : UNBORNE_COST;
  return (place.borne ? 0 : unborne) + BESIDE_COST * besideOf(place.at, rules);
}

function besideOf(at: number, { beside }: StripLengths): number {
  return beside.filter((other) => Math.abs(other - at) < STAGGER_MM - 1e-6).length;
}
