/**
 * What to take off to reach a place: the fewest pieces, outermost first, with the screws of each. Open-joint cladding comes
 * off singly, so most places need one piece; a batten needs everything that it carries to come off before it.
 */
import type { Point } from "../../geometry/point.ts";
import { polygonBounds, polygonContains } from "../../geometry/polygon.ts";
import type { Facade, FaceLayout, Piece } from "../facade.ts";

export interface RemovalStep {
  readonly mark: string;
  readonly kind: Piece["kind"];
  /** Screws to draw, by screw id, most first. */
  readonly screws: readonly { readonly screw: string; readonly count: number }[];
  readonly massKg: number;
}

export interface Removal {
  readonly steps: readonly RemovalStep[];
  readonly screws: number;
  readonly massKg: number;
}

/** The way to a piece itself: everything in front of it in order, and it last; undefined for an unknown mark. */
export function removalOf(facade: Facade, mark: string): Removal | undefined {
  const face = facade.faces.find(({ pieces }) => pieces.some((piece) => piece.mark === mark));
  return face && removal(face, [mark]);
}

/**
 * The way to a point of a face as deep as `depth`: `membrane` clears everything in front of it, `batten` stops at the
 * battens. In a joint nothing lies in front; the nearer piece beside it is named, since a hand needs room.
 * Undefined for an unknown face or a point that no cladding is near.
 */
export function reach(
  facade: Facade,
  at: { readonly face: string; readonly point: Point; readonly depth: "membrane" | "batten" },
): Removal | undefined {
  const face = facade.faces.find(({ id }) => id === at.face);
  if (!face) return undefined;
  const covering = face.pieces.filter((piece) => liesInFront(piece, at.depth) && covers(piece, at.point));
  if (covering.length > 0)
    return removal(
      face,
      covering.map(({ mark }) => mark),
    );
  const beside = face.pieces
    .filter(isCladding)
    .map((piece) => ({ piece, away: distanceTo(piece, at.point) }))
    .filter(({ away }) => away <= BESIDE_MM);
  if (beside.length === 0) return undefined;
  const ways = beside.map(({ piece, away }) => ({ away, way: removal(face, [piece.mark]) }));
  ways.sort(
    (a, b) => a.way.steps.length - b.way.steps.length || a.way.screws - b.way.screws || a.away - b.away,
  );
  return ways[0]?.way;
}

/** A joint is never wider than this; further off, the point lies in an opening or off the wall. */
const BESIDE_MM = 40;

function isCladding({ kind }: Piece): boolean {
  return kind === "sheet" || kind === "board";
}

const BEHIND: readonly Piece["kind"][] = ["backing", "membrane", "flashing", "sleeve"];

function liesInFront(piece: Piece, depth: "membrane" | "batten"): boolean {
  return depth === "batten" ? isCladding(piece) : !BEHIND.includes(piece.kind) && !isJointStrip(piece);
}

/** A strip behind a joint hangs on no batten: it comes away with the sheet over it. */
function isJointStrip({ kind, supports }: Piece): boolean {
  return kind === "gasket" && supports.length === 0;
}

function covers({ outline, holes }: Piece, point: Point): boolean {
  return polygonContains(outline, point) && !holes.some((hole) => polygonContains(hole, point));
}

function distanceTo({ outline }: Piece, [x, y]: Point): number {
  const box = polygonBounds(outline);
  return Math.hypot(Math.max(box.x[0] - x, 0, x - box.x[1]), Math.max(box.y[0] - y, 0, y - box.y[1]));
}

/** All that must come off before the wanted pieces, each after what lies before it, outermost first. */
function removal(face: FaceLayout, wanted: readonly string[]): Removal {
  const byMark = new Map(face.pieces.map((piece) => [piece.mark, piece]));
  const order: Piece[] = [];
  const seen = new Set<string>();
  const visit = (mark: string): void => {
    const piece = byMark.get(mark);
    if (!piece || seen.has(mark)) return;
    seen.add(mark);
    for (const before of piece.removeBefore) visit(before);
    order.push(piece);
  };
  const outermostFirst = [...wanted].sort((a, b) => (byMark.get(b)?.z[1] ?? 0) - (byMark.get(a)?.z[1] ?? 0));
  for (const mark of outermostFirst) visit(mark);
  const steps = order.map(step);
  return {
    steps,
    screws: order.reduce((sum, { fixings }) => sum + fixings.length, 0),
    massKg: Math.round(order.reduce((sum, piece) => sum + piece.massKg, 0) * 1000) / 1000,
  };
}

function step({ mark, kind, fixings, massKg }: Piece): RemovalStep {
  return { mark, kind, screws: counted(fixings.map(({ screw }) => ({ screw, count: 1 }))), massKg };
}

/** The screws of a whole way by their id, most first. */
export function screwsOf({ steps }: Removal): RemovalStep["screws"] {
  return counted(steps.flatMap(({ screws }) => screws));
}

function counted(screws: RemovalStep["screws"]): RemovalStep["screws"] {
  const counts = new Map<string, number>();
  for (const { screw, count } of screws) counts.set(screw, (counts.get(screw) ?? 0) + count);
  return [...counts]
    .map(([screw, count]) => ({ screw, count }))
    .sort((a, b) => b.count - a.count || a.screw.localeCompare(b.screw, "en"));
}
