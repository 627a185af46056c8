/**
 * How each end of a batten or rail is made: what it meets there, the gap left before that for water and air, what its last screw holds in
 * and how far that is from the end. A tee is an end on, or up to, a member that runs across it: a rail on the upright beside an opening,
 * at a corner or a junction, a level rail up to the one along a rake.
 */
import { type Interval, overlaps } from "../geometry/interval.ts";
import { type Polygon, polygonBounds } from "../geometry/polygon.ts";
import { type Rect, rectOutline } from "../geometry/rect.ts";
import { intersect } from "../geometry/region.ts";
import { snap } from "../units/length.ts";
import type { FaceEnds } from "./corners.ts";
import type { BattenEnd, Fixing, Piece } from "./facade.ts";
import type { ZoneGround } from "./ground-plan.ts";

/** What lies no farther than this before an end is what it meets. */
const NEAR_MM = 60;

interface Zone {
  readonly ground: ZoneGround;
  readonly ends: FaceEnds;
  /** Battens, rails and closures of the zone. */
  readonly pieces: readonly Piece[];
}

interface Boxed {
  readonly piece: Piece;
  readonly box: Rect;
}

interface Met {
  readonly at: BattenEnd["at"];
  readonly meets?: string;
  readonly gap: number;
  readonly isAcross?: boolean;
}

/** The zone's pieces, each batten and rail with its two ends told. */
export function withEndsTold({ ground, ends, pieces }: Zone): Piece[] {
  const boxed = pieces.map((piece): Boxed => ({ piece, box: polygonBounds(piece.outline) }));
  const sticks = boxed.filter(({ piece }) => isStick(piece));
  const closures = boxed.filter(({ piece }) => piece.kind === "closure");
  return boxed.map(({ piece, box }) => {
    if (!isStick(piece)) return piece;
    const stick = { piece, box };
    return {
      ...piece,
      endings: ([0, 1] as const).map((end) => endOf({ ground, ends, sticks, closures }, stick, end)),
    };
  });
}

function isStick({ kind }: Piece): boolean {
  return kind === "batten" || kind === "rail";
}

interface Around {
  readonly ground: ZoneGround;
  readonly ends: FaceEnds;
  readonly sticks: readonly Boxed[];
  readonly closures: readonly Boxed[];
}

function endOf(around: Around, stick: Boxed, end: 0 | 1): BattenEnd {
  const { piece, box } = stick;
  const axis = piece.kind === "rail" ? "x" : "y";
  const edge = box[axis][end];
  const met = nearest([
    ...otherSticks(around, stick, { axis, end }),
    ...openingsAndDucts(around, stick, { axis, end }),
    edgeOfZone(around, stick, { axis, end }),
  ]);
  const last = lastScrew(piece.fixings, axis, end);
  const holder = last && around.sticks.find((one) => one.piece.mark === last.into);
  const borneAcross =
    holder !== undefined && piece.kind === "rail" && edge >= holder.box.x[0] && edge <= holder.box.x[1];
  return {
    end: axis === "x" ? (end === 0 ? "left" : "right") : end === 0 ? "lower" : "upper",
    shape: met.at === "length" ? "butt" : met.isAcross || borneAcross ? "tee" : "stopped",
    at: met.at,
    ...(met.meets !== undefined && { meets: met.meets }),
    gap: snap(met.gap),
    ...(last && { bearsOn: last.into, screwFromEnd: snap(Math.abs(last[axis] - edge)) }),
  };
}

interface Side {
  readonly axis: "x" | "y";
  readonly end: 0 | 1;
}

/** How far something lies before the end; below 0 where the end has passed it. */
function before({ box }: Boxed, other: Interval, { axis, end }: Side): number {
  return end === 0 ? box[axis][0] - other[1] : other[0] - box[axis][1];
}

/** Other battens or rails of the same layer: the next length in line, or one that runs across. */
function otherSticks({ sticks }: Around, stick: Boxed, side: Side): Met[] {
  const across = side.axis === "x" ? "y" : "x";
  const own = stick.box[across];
  return sticks.flatMap((other): Met[] => {
    if (other.piece === stick.piece || !overlaps(other.piece.z, stick.piece.z)) return [];
    const part = within({ outline: other.piece.outline, box: other.box }, own, across);
    if (!part) return [];
    const gap = before(stick, part[side.axis], side);
    if (gap < 0 || gap > NEAR_MM) return [];
    const inLine = other.box[across][0] === own[0] && other.box[across][1] === own[1];
    const meets = other.piece.mark;
    return [inLine ? { at: "length", meets, gap } : { at: "rake", meets, gap, isAcross: true }];
  });
}

/** The bounds of what of a piece lies in a strip: less than its box where it runs along a rake. */
function within(
  { outline, box }: { readonly outline: Polygon; readonly box: Rect },
  strip: Interval,
  across: "x" | "y",
): Rect | undefined {
  if (!overlaps(box[across], strip)) return undefined;
  if (!isSloping(outline)) return box;
  const clip = rectOutline(across === "y" ? { x: box.x, y: strip } : { x: strip, y: box.y });
  const [part] = intersect(outline, clip);
  return part && polygonBounds(part.outline);
}

function isSloping(outline: Polygon): boolean {
  return outline.some(([x, y], i) => {
    const next = outline[(i + 1) % outline.length];
    return next !== undefined && x !== next[0] && y !== next[1];
  });
}

function openingsAndDucts({ ground, closures }: Around, stick: Boxed, side: Side): Met[] {
  const across = side.axis === "x" ? "y" : "x";
  const met = (rect: Rect, of: string, at: BattenEnd["at"]): Met[] => {
    const gap = before(stick, rect[side.axis], side);
    if (!overlaps(rect[across], stick.box[across]) || gap < 0 || gap > NEAR_MM) return [];
    return [{ at, ...toClosure(closures, stick, side, { meets: of, gap }) }];
  };
  return [
    ...ground.keepOuts.flatMap(({ of, rect }) =>
      met(rect, of, side.axis === "x" ? "jamb" : side.end === 0 ? "head" : "sill"),
    ),
    ...ground.rounds.flatMap(({ of, bounds }) => met(bounds, of, "duct")),
  ];
}

/** The edge of the zone, whatever lies between: a corner where the face ends in one, a junction where another zone goes on. */
function edgeOfZone({ ground, ends, closures }: Around, stick: Boxed, side: Side): Met {
  const { box } = stick;
  const strip = side.axis === "x" ? box.y : box.x;
  const inside = within({ outline: ground.region, box: ground.bounds }, strip, side.axis === "x" ? "y" : "x");
  const edge = (inside ?? ground.bounds)[side.axis][side.end];
  const gap = Math.max(0, side.end === 0 ? box[side.axis][0] - edge : edge - box[side.axis][1]);
  if (side.axis === "y") {
    const rake = !ground.rectangular && side.end === 1 && isSlopingOver(ground.region, strip);
    const at = side.end === 0 ? "base" : rake ? "rake" : "top";
    return gap > NEAR_MM ? { at: "free", gap } : { at, ...toClosure(closures, stick, side, { gap }) };
  }
  const faceEnd = side.end === 0 ? ends.left : ends.right;
  if (ground.bounds.x[side.end] !== faceEnd.x) return { at: "junction", gap };
  return { at: faceEnd.kind === "free" ? "free" : "corner", gap };
}

function isSlopingOver(region: Polygon, strip: Interval): boolean {
  return region.some(([x, y], i) => {
    const next = region[(i + 1) % region.length];
    return next !== undefined && x > next[0] && y !== next[1] && overlaps([next[0], x], strip);
  });
}

/** Where a closure's mesh stands before the end, that is what it meets. */
function toClosure(
  closures: readonly Boxed[],
  stick: Boxed,
  side: Side,
  otherwise: { readonly meets?: string; readonly gap: number },
): { readonly meets?: string; readonly gap: number } {
  const across = side.axis === "x" ? "y" : "x";
  const found = closures
    .map(({ piece, box }) => ({ meets: piece.mark, gap: before(stick, box[side.axis], side), box }))
    .filter(({ box, gap }) => overlaps(box[across], stick.box[across]) && gap >= 0 && gap <= NEAR_MM)
    .sort((a, b) => a.gap - b.gap)[0];
  return found ? { meets: found.meets, gap: found.gap } : otherwise;
}

function nearest(all: readonly Met[]): Met {
  return all.reduce((best, one) => (one.gap < best.gap ? one : best));
}

function lastScrew(fixings: readonly Fixing[], axis: "x" | "y", end: 0 | 1): Fixing | undefined {
  return fixings.reduce<Fixing | undefined>(
    (last, one) => (!last || (end === 0 ? one[axis] < last[axis] : one[axis] > last[axis]) ? one : last),
    undefined,
  );
}
