/**
 * How each end of a batten or rail is made: what it meets there, the gap left before that for water and air, what its last screw holds in
 * and how far that is from the end. A tee is an end on, or up to, a member that runs across it: a rail on the upright beside an opening,
 * at a corner or a junction, a level rail up to the one along a rake.
 */
import { type Interval, overlaps } from "../geometry/interval.ts";
import { type Polygon, polygonBounds } from "../geometry/polygon.ts";
import type { Rect } from "../geometry/rect.ts";
import { snap } from "../units/length.ts";
import { bandWithin } from "./behind/strip-shape.ts";
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
  const sticks: Boxed[] = [];
  const closures: Boxed[] = [];
  for (const piece of pieces) {
    if (isStick(piece)) sticks.push({ piece, box: polygonBounds(piece.outline) });
    else if (piece.kind === "closure") closures.push({ piece, box: polygonBounds(piece.outline) });
  }
  const around = {
    ground,
    ends,
    sticks,
    closures,
    byMark: new Map(sticks.map((one) => [one.piece.mark, one])),
  };
  return pieces.map((piece) => {
    const stick = around.byMark.get(piece.mark);
    return stick ? { ...piece, endings: [endOf(around, stick, 0), endOf(around, stick, 1)] } : piece;
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
  readonly byMark: ReadonlyMap<string, Boxed>;
}

function endOf(around: Around, stick: Boxed, end: 0 | 1): BattenEnd {
  const { piece, box } = stick;
  const side: Side =
    piece.kind === "rail" ? { axis: "x", across: "y", end } : { axis: "y", across: "x", end };
  const { axis } = side;
  const edge = box[axis][end];
  const met = whatItMeets(around, stick, side);
  const last = lastScrew(piece.fixings, axis, end);
  const holder = last && around.byMark.get(last.into);
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

/** Which end: along a batten's or rail's axis, and across it. */
interface Side {
  readonly axis: "x" | "y";
  readonly across: "x" | "y";
  readonly end: 0 | 1;
}

/** How far something lies before the end; below 0 where the end has passed it. */
function before({ box }: Boxed, other: Interval, { axis, end }: Side): number {
  return end === 0 ? box[axis][0] - other[1] : other[0] - box[axis][1];
}

/** The nearest of other battens and rails of its layer, openings, ducts and the zone's edge, with the mesh that stands before it. */
function whatItMeets(around: Around, stick: Boxed, side: Side): Met {
  const { ground } = around;
  let met = edgeOfZone(around, stick, side);
  const nearer = (other: Interval): number | undefined => {
    const gap = before(stick, other, side);
    return gap >= 0 && gap <= NEAR_MM && gap < met.gap ? gap : undefined;
  };
  const own = stick.box[side.across];
  for (const { of, rect } of ground.keepOuts) {
    const gap = overlaps(rect[side.across], own) ? nearer(rect[side.axis]) : undefined;
    if (gap !== undefined)
      met = { at: side.axis === "x" ? "jamb" : side.end === 0 ? "head" : "sill", meets: of, gap };
  }
  for (const { of, bounds } of ground.rounds) {
    const gap = overlaps(bounds[side.across], own) ? nearer(bounds[side.axis]) : undefined;
    if (gap !== undefined) met = { at: "duct", meets: of, gap };
  }
  if (met.gap <= NEAR_MM && met.at !== "corner" && met.at !== "junction")
    met = { ...met, ...toClosure(around.closures, stick, side) };
  for (const other of around.sticks) {
    if (other === stick || !overlaps(other.box[side.across], own) || !overlaps(other.piece.z, stick.piece.z))
      continue;
    const part = within({ outline: other.piece.outline, box: other.box }, own, side.across);
    const gap = part && nearer(part[side.axis]);
    if (gap === undefined) continue;
    const inLine = other.box[side.across][0] === own[0] && other.box[side.across][1] === own[1];
    const meets = other.piece.mark;
    met = inLine ? { at: "length", meets, gap } : { at: "rake", meets, gap, isAcross: true };
  }
  return met;
}

/** The bounds of what of a piece lies in a strip: less than its box where it runs along a rake. */
function within(
  { outline, box }: { readonly outline: Polygon; readonly box: Rect },
  strip: Interval,
  across: "x" | "y",
): Rect | undefined {
  if (!overlaps(box[across], strip)) return undefined;
  if (!isSloping(outline)) return box;
  const [part] = bandWithin(outline, across === "y" ? { x: box.x, y: strip } : { x: strip, y: box.y });
  return part && polygonBounds(part.outline);
}

function isSloping(outline: Polygon): boolean {
  return outline.some(([x, y], i) => {
    const next = outline[(i + 1) % outline.length];
    return next !== undefined && x !== next[0] && y !== next[1];
  });
}

/** The edge of the zone, whatever lies between: a corner where the face ends in one, a junction where another zone goes on. */
function edgeOfZone({ ground, ends }: Around, { box }: Boxed, { axis, across, end }: Side): Met {
  const strip = box[across];
  const inside = within({ outline: ground.region, box: ground.bounds }, strip, across) ?? ground.bounds;
  const edge = inside[axis][end];
  const gap = Math.max(0, end === 0 ? box[axis][0] - edge : edge - box[axis][1]);
  if (axis === "y") {
    if (gap > NEAR_MM) return { at: "free", gap };
    const rake = !ground.rectangular && end === 1 && isSlopingOver(ground.region, strip);
    return { at: end === 0 ? "base" : rake ? "rake" : "top", gap };
  }
  const faceEnd = end === 0 ? ends.left : ends.right;
  if (ground.bounds.x[end] !== faceEnd.x) return { at: "junction", gap };
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
): { readonly meets: string; readonly gap: number } | undefined {
  let nearest: { readonly meets: string; readonly gap: number } | undefined;
  for (const { piece, box } of closures) {
    if (!overlaps(box[side.across], stick.box[side.across])) continue;
    const gap = before(stick, box[side.axis], side);
    if (gap >= 0 && gap <= NEAR_MM && (!nearest || gap < nearest.gap)) nearest = { meets: piece.mark, gap };
  }
  return nearest;
}

function lastScrew(fixings: readonly Fixing[], axis: "x" | "y", end: 0 | 1): Fixing | undefined {
  return fixings.reduce<Fixing | undefined>(
    (last, one) => (!last || (end === 0 ? one[axis] < last[axis] : one[axis] > last[axis]) ? one : last),
    undefined,
  );
}
