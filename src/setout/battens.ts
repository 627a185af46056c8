/**
 * Battens of a zone: the wishes of its cladding sorted by weight, cut to the free height between openings, broken to
 * stock lengths, and screwed through every layer into timber.
 */
import { common, type Interval, intervalLength, overlaps, subtractIntervals } from "../geometry/interval.ts";
import { rectOutline } from "../geometry/rect.ts";
import { message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import { cutAtJoints, type StripJoint, stripJoints } from "./batten-lengths.ts";
import type { BattenWish, DraftPiece } from "./draft.ts";
import { NO_HOLES, SQUARE_ENDS, type Why } from "./facade.ts";
import { freeUpright, type ZoneGround } from "./ground-plan.ts";
import { letter, markOf } from "./marks.ts";

export interface DraftBatten extends DraftPiece {
  readonly zone: string;
  readonly grain: "x" | "y";
  readonly stock: string;
  readonly x: Interval;
  readonly y: Interval;
  readonly reason: BattenWish["reason"];
  /** Its joint with the next length, to the right or above. */
  readonly joint?: StripJoint;
}

export interface BattenZone {
  readonly ground: ZoneGround;
  readonly wishes: readonly BattenWish[];
  readonly z: Interval;
  readonly stock: {
    readonly id: string;
    readonly thickness: number;
    readonly width: number;
    readonly lengths: readonly number[];
  };
  readonly species: string;
  readonly kind: "batten" | "rail";
  /** Where along a strip there is timber behind to hold a screw. */
  readonly holds: (strip: { readonly x: Interval; readonly y: Interval }) => readonly Interval[];
}

const WEIGHT: readonly BattenWish["reason"][] = [
  "post",
  "corner",
  "end",
  "joint",
  "jamb",
  "butt",
  "middle",
  "stud",
  "short",
];

/** A batten may be ripped down to this where another stands close (common practice: furring of 38 mm). */
const NARROWEST_MM = 38;
/** Battens end this short of a closure's place, so that its mesh passes in front of their ends. */
export const CLOSURE_ROOM_MM = 2;
const SHORTEST_MM = 60;

export function placeBattens(zone: BattenZone): DraftBatten[] {
  let from = Number.NaN;
  let beside: readonly number[] = [];
  let own: number[] = [];
  return chooseStrips(zone).flatMap((strip, column) => {
    // Strips that start at one place are one line, broken by an opening or a duct.
    if (strip.x[0] !== from) [from, beside, own] = [strip.x[0], own, []];
    const { battens, joints } = cutStrip(zone, strip, { column, beside });
    own.push(...joints);
    return battens;
  });
}

/** A strip that a batten fills, and the first wish of another kind that gave way to it. */
interface Taken extends BattenWish {
  passedOver?: BattenWish;
}

/** Takes wishes by weight; one that another covers is dropped, one that it covers in part is ripped to the rest. */
function chooseStrips(zone: BattenZone): Taken[] {
  const taken: Taken[] = [];
  const sorted = [...zone.wishes].sort(
    (a, b) =>
      WEIGHT.indexOf(a.reason) - WEIGHT.indexOf(b.reason) ||
      a.x[0] - b.x[0] ||
      (a.y?.[0] ?? 0) - (b.y?.[0] ?? 0),
  );
  for (const wish of sorted) {
    const inTheWay = taken.filter((other) => overlaps(other.x, wish.x) && sameHeight(other, wish));
    for (const other of inTheWay) if (other.reason !== wish.reason) other.passedOver ??= wish;
    if (inTheWay.length === 0) taken.push({ ...wish });
    else if (wish.reason !== "stud") {
      const rest = subtractIntervals(
        wish.x,
        inTheWay.map(({ x }) => x),
      ).sort((a, b) => intervalLength(b) - intervalLength(a))[0];
      if (rest && intervalLength(rest) >= NARROWEST_MM)
        taken.push({ ...wish, x: [snap(rest[0]), snap(rest[1])] });
    }
  }
  return taken.sort((a, b) => a.x[0] - b.x[0] || (a.y?.[0] ?? 0) - (b.y?.[0] ?? 0));
}

function sameHeight(a: BattenWish, b: BattenWish): boolean {
  return !a.y || !b.y || overlaps(a.y, b.y);
}

/** Screws keep this from a batten's sawn ends (mm); of a rail, which is drilled, less (common practice). */
const FROM_END_MM = { batten: 25, rail: 20 } as const;

function cutStrip(
  zone: BattenZone,
  strip: Taken,
  { column, beside }: { readonly column: number; readonly beside: readonly number[] },
): { readonly battens: DraftBatten[]; readonly joints: readonly number[] } {
  const { ground, stock } = zone;
  const rounds = ground.rounds
    .filter(({ bounds }) => overlaps(bounds.x, strip.x))
    .map(({ bounds }) => bounds.y);
  const stretches = freeUpright(
    ground,
    zone.kind === "rail" ? withClosureRoom(strip.x, ground.bounds.x) : strip.x,
  )
    .flatMap((y) => subtractIntervals(y, rounds))
    .flatMap((y): Interval[] => {
      const asked = strip.y ? common(y, strip.y) : y;
      return asked ? [asked] : [];
    })
    .map(([from, to]): Interval => [snap(from + CLOSURE_ROOM_MM), snap(to - CLOSURE_ROOM_MM)])
    .filter((y) => intervalLength(y) >= SHORTEST_MM);
  const longest = Math.max(...stock.lengths);
  const why = whyOf(strip);
  const joints: number[] = [];
  let index = 0;
  const battens = stretches.flatMap((y) => {
    const joined =
      intervalLength(y) > longest
        ? stripJoints(y, {
            longest,
            holds: zone.holds({ x: strip.x, y }),
            fromEnd: FROM_END_MM[zone.kind],
            blocks: zone.kind === "batten",
            beside,
          })
        : [];
    joints.push(...joined.map(({ at }) => at));
    return cutAtJoints(y, joined).map((part, i): DraftBatten => {
      const joint = joined[i];
      const mark = markOf({
        face: ground.face,
        zone: ground.zone.id,
        kind: zone.kind,
        number: `${column + 1}${letter(index)}`,
      });
      index += 1;
      const width = snap(strip.x[1] - strip.x[0]);
      return {
        mark,
        kind: zone.kind,
        face: ground.face.id,
        zone: ground.zone.id,
        outline: rectOutline({ x: strip.x, y: part }),
        holes: NO_HOLES,
        z: zone.z,
        ends: SQUARE_ENDS,
        grain: "y",
        material: zone.species,
        stock: stock.id,
        cut: { length: snap(part[1] - part[0]), width, thickness: stock.thickness },
        why,
        x: strip.x,
        y: part,
        reason: strip.reason,
        ...(joint && { joint }),
      };
    });
  });
  return { battens, joints };
}

/** What it answers to, and the batten beside it that it stands instead of. */
function whyOf({ reason, x, passedOver }: Taken): Why {
  const rule = message(`setout.why.batten.${reason}`);
  const by = snap((passedOver?.x[0] ?? x[0]) - x[0]);
  if (!passedOver || by === 0) return { rule };
  return {
    rule,
    runnerUp: message(`setout.why.batten.instead.${by < 0 ? "left" : "right"}`, {
      other: message(`setout.why.batten.${passedOver.reason}`),
      by: Math.abs(by),
    }),
  };
}

/** A rail under a rake runs along the sloping closure; room is kept beside it, not at its ends alone. */
function withClosureRoom([from, to]: Interval, [least, most]: Interval): Interval {
  return [Math.max(least, snap(from - CLOSURE_ROOM_MM)), Math.min(most, snap(to + CLOSURE_ROOM_MM))];
}
