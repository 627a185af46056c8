/**
 * Bucks: timber liners round an opening where insulation stands outside the sheathing. They are as deep as the insulation,
 * carry frame, flashing and the battens' ends, and give the membrane something to be stuck to (common practice).
 */
import { type Finding, finding } from "../../findings/finding.ts";
import { type Interval, intervalLength, overlaps, subtractIntervals } from "../../geometry/interval.ts";
import { counterClockwise, type Polygon, polygonBounds, sliceVertical } from "../../geometry/polygon.ts";
import { type Rect, rectOutline } from "../../geometry/rect.ts";
import { intersect } from "../../geometry/region.ts";
import { faceCode } from "../../project/lookup.ts";
import type { Face } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { POST_DEPTH_MM } from "../corner-backing.ts";
import { type FaceEnd, faceLength } from "../corners.ts";
import { NO_HOLES, type Piece, type Solid, SQUARE_ENDS } from "../facade.ts";
import { letter } from "../marks.ts";
import { massOf } from "../masses.ts";
import { screwed } from "./buck-screws.ts";
import { type Ground, holesOf, looseFrom, type Wall, zoneAt } from "./wall.ts";

const SIDES = ["left", "right", "head", "sill"] as const;
type Side = (typeof SIDES)[number];

/** Shorter pieces are packed out on site. */
const SHORTEST_MM = 20;

export function bucks(
  wall: Wall,
  solids: readonly Solid[],
): {
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
} {
  const pieces: Piece[] = [];
  const findings: Finding[] = [];
  for (const opening of wall.face.openings) {
    if (opening.kind === "recess") continue;
    const at = zoneAt(wall, (opening.x[0] + opening.x[1]) / 2);
    const z = at && insulationOf(at);
    if (!at || !z) continue;
    const full = wall.project.structure.studs.width;
    const box: Rect = { x: opening.x, y: opening.y };
    const room = roomRound(wall, box, full);
    const held = SIDES.flatMap((side) => sidePieces(wall, { at, z, of: opening.id, box, room, side })).map(
      (buck) => screwed(wall, at, { buck, solids }),
    );
    const own = held.map(({ buck }) => buck);
    pieces.push(...own);
    findings.push(told(wall, { of: opening.id, own, depth: intervalLength(z), full, room }));
    const loose = held.filter(({ isHeld }) => !isHeld).map(({ buck }) => buck.mark);
    if (loose.length > 0) findings.push(unheld(wall, opening.id, loose));
  }
  return { pieces, findings };
}

/** The insulation outside the sheathing as far as it is one body. */
function insulationOf({ plane: { layers } }: Ground): Interval | undefined {
  const first = layers.findIndex(({ kind }) => kind === "insulation");
  const from = layers[first]?.z[0];
  if (from === undefined) return undefined;
  let to = from;
  for (const { kind, z } of layers.slice(first)) {
    if (kind !== "insulation") break;
    to = z[1];
  }
  return [from, to];
}

type Room = Readonly<Record<Side, number>> & {
  /** Between what stands in the face's corners. */
  readonly wall: Interval;
};

/** How wide a liner can be on each side: half the wall to the next opening at most, and clear of what stands in corners. */
function roomRound({ face, ends, grounds }: Wall, box: Rect, full: number): Room {
  const openings = holesOf(face);
  const length = faceLength(face);
  const stops = ({ kind, neighbourCavityZ }: FaceEnd): number =>
    kind === "internal" ? neighbourCavityZ : kind === "external" ? POST_DEPTH_MM : 0;
  const bottom = Math.min(...grounds.map(({ bounds }) => bounds.y[0]));
  const top = Math.max(...grounds.map(({ bounds }) => bounds.y[1]));
  let left = Math.min(full, box.x[0] - stops(ends.left));
  let right = Math.min(full, length - stops(ends.right) - box.x[1]);
  let sill = Math.min(full, box.y[0] - bottom);
  let head = Math.min(full, Math.min(top, lowestOver(face.outline, box)) - box.y[1]);
  const wide = (span: Interval): Interval => [span[0] - 2 * full, span[1] + 2 * full];
  for (const other of openings) {
    if (overlaps(wide(box.y), other.y)) {
      if (other.x[1] <= box.x[0]) left = Math.min(left, (box.x[0] - other.x[1]) / 2);
      if (other.x[0] >= box.x[1]) right = Math.min(right, (other.x[0] - box.x[1]) / 2);
    }
    if (overlaps(wide(box.x), other.x)) {
      if (other.y[1] <= box.y[0]) sill = Math.min(sill, (box.y[0] - other.y[1]) / 2);
      if (other.y[0] >= box.y[1]) head = Math.min(head, (other.y[0] - box.y[1]) / 2);
    }
  }
  const kept = (room: number): number => snap(Math.max(0, room));
  return {
    left: kept(left),
    right: kept(right),
    head: kept(head),
    sill: kept(sill),
    wall: [stops(ends.left), snap(length - stops(ends.right))],
  };
}

/** The lowest that a face's upper edge comes over an opening. */
function lowestOver(outline: Face["outline"], { x, y }: Rect): number {
  const corners = outline.map(([at]) => at).filter((at) => at > x[0] && at < x[1]);
  const places = [
    x[0] + INSIDE_MM,
    ...corners.flatMap((at) => [at - INSIDE_MM, at + INSIDE_MM]),
    x[1] - INSIDE_MM,
  ];
  const tops = places.flatMap((at) => sliceVertical(outline as Polygon, at)).map(([, top]) => top);
  return snap(Math.min(...tops.filter((top) => top > y[0])));
}

/** Just inside, where a slice is certain to cut. */
const INSIDE_MM = 1 / 8000;

interface SideOf {
  readonly at: Ground;
  readonly z: Interval;
  readonly of: string;
  readonly box: Rect;
  readonly room: Room;
  readonly side: Side;
}

/** One side's liner, in two where a duct passes through it; head and sill run over the jambs' ends. */
function sidePieces({ project, face, rounds }: Wall, { at, z, of, box, room, side }: SideOf): Piece[] {
  const rect = sideRect(box, room, side);
  const level = side === "head" || side === "sill";
  const along = level ? rect.x : rect.y;
  const across = level ? rect.y : rect.x;
  if (intervalLength(across) < 1) return [];
  const ducts = rounds.flatMap(({ bounds }) =>
    overlaps(level ? bounds.y : bounds.x, across) ? [level ? bounds.x : bounds.y] : [],
  );
  const spans = subtractIntervals(along, ducts).filter((span) => intervalLength(span) >= SHORTEST_MM);
  const rects = spans.map((span): Rect => (level ? { x: span, y: across } : { x: across, y: span }));
  return rects.flatMap((one, i): Piece[] => {
    // A rake takes a corner off what passes it.
    const [part] = intersect(counterClockwise(face.outline as Polygon), rectOutline(one));
    if (!part) return [];
    const { x, y } = polygonBounds(part.outline);
    const draft = {
      mark: `${faceCode(face)}-Kb${side[0]}${spans.length > 1 ? letter(i) : ""}-${of}`,
      kind: "backing",
      face: face.id,
      zone: at.ground.zone.id,
      outline: part.outline,
      holes: NO_HOLES,
      z,
      ends: SQUARE_ENDS,
      grain: level ? "x" : "y",
      material: project.structure.studs.species,
      cut: {
        length: snap(intervalLength(level ? x : y)),
        width: snap(intervalLength(z)),
        thickness: snap(intervalLength(level ? y : x)),
      },
      why: { line: `${face.id} ${side} ${of}`, rule: message("setout.why.buck") },
    } as const;
    return [looseFrom({ massKg: massOf(project, draft), removeBefore: [], ...draft })];
  });
}

function sideRect({ x, y }: Rect, room: Room, side: Side): Rect {
  const wide: Interval = [
    Math.max(snap(x[0] - room.left), room.wall[0]),
    Math.min(snap(x[1] + room.right), room.wall[1]),
  ];
  if (side === "left") return { x: [wide[0], x[0]], y };
  if (side === "right") return { x: [x[1], wide[1]], y };
  return { x: wide, y: side === "head" ? [y[1], snap(y[1] + room.head)] : [snap(y[0] - room.sill), y[0]] };
}

function told(
  { face }: Wall,
  at: {
    readonly of: string;
    readonly own: readonly Piece[];
    readonly depth: number;
    readonly full: number;
    readonly room: Room;
  },
): Finding {
  // A door's sill may lie on the foundation: its liner is let go of where there is no wall under it.
  const least = Math.min(at.room.left, at.room.right, at.room.head);
  const whole = least >= at.full;
  return finding({
    code: "S021",
    outcome: whole ? "pass" : "attention",
    where: { face: face.id, opening: at.of, marks: at.own.map(({ mark }) => mark) },
    says: message(whole ? "setout.buck" : "setout.buck.narrow", {
      of: at.of,
      pieces: at.own.length,
      depth: at.depth,
      width: at.full,
      least,
    }),
    ...(!whole && { hint: message("setout.buck.narrow.hint") }),
    demand: least,
    limit: at.full,
    unit: "mm",
    source: { kind: "common practice" },
  });
}

function unheld({ face }: Wall, of: string, marks: readonly string[]): Finding {
  return finding({
    code: "S021",
    outcome: "fail",
    where: { face: face.id, opening: of, marks },
    says: message("setout.buck.loose", { of, pieces: marks.length }),
    hint: message("setout.buck.loose.hint"),
    source: { kind: "common practice" },
  });
}
