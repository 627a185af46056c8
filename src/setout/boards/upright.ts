/**
 * Lays out a zone of upright boards: battens on the studs, rails across them, level and along rakes, boards on the rails.
 * Boards and level rails are laid out in the turned frame, where they are courses and battens like any others. A rail that
 * would cross fewer than two battens, as in the tip under a rake, is left out: it would turn about its one screw.
 */
import type { Finding } from "../../findings/finding.ts";
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { intersect } from "../../geometry/region.ts";
import type { BoardCladding } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { degreesToRadians } from "../../units/angle.ts";
import { snap } from "../../units/length.ts";
import { CLOSURE_ROOM_MM, type DraftBatten, placeBattens } from "../battens.ts";
import { battenLines, boardPoints, type CladdingPoint } from "../cladding-screws.ts";
import { cutLength, endsAt, type FaceEnd, faceLength, isSlanted, longerBehind } from "../corners.ts";
import type { BattenWish, DraftPiece } from "../draft.ts";
import type { Joint } from "../facade.ts";
import type { ZoneGround } from "../ground-plan.ts";
import { battenStock } from "../resolve.ts";
import {
  endsOfTurned,
  turnedBatten,
  turnedGround,
  turnedJoint,
  turnedPiece,
  turnedPointOn,
} from "../transpose.ts";
import type { ZoneTask } from "../zone-layout-task.ts";
import { boardBattenWishes } from "./battens.ts";
import { layCourses } from "./courses.ts";
import { clearOfRakes, rakeCrossings, rakePoints, rakeRails } from "./rake-rails.ts";
import { uprightRod } from "./upright-rod.ts";
import { widestBoard } from "./widest-board.ts";
import type { BoardZone } from "./zone.ts";

export interface UprightDraft {
  readonly boards: readonly { readonly piece: DraftPiece; readonly points: readonly CladdingPoint[] }[];
  readonly rails: readonly { readonly rail: DraftBatten; readonly points: readonly CladdingPoint[] }[];
  readonly battens: readonly DraftBatten[];
  readonly joints: readonly Joint[];
  readonly findings: readonly Finding[];
}

/** Rails keep a board's span within this and within twenty-five thicknesses (common practice). */
const RAIL_SPACING_MM = 600;
const SPAN_IN_THICKNESSES = 25;
/** A rail's screw from the edge of the batten that holds it (common practice). */
const FROM_BATTEN_EDGE_MM = 8;

export function layUpright(
  task: ZoneTask,
  cladding: BoardCladding,
  {
    studs,
    battensFor,
  }: {
    readonly studs: readonly number[];
    readonly battensFor: (wishes: readonly BattenWish[]) => DraftBatten[];
  },
): UprightDraft {
  const { ground, plane, ends, project, demands } = task;
  const railStock = battenStock(project, plane.layers.find(({ kind }) => kind === "rail")?.stock ?? "");
  const battenWidth = battenStock(
    project,
    plane.layers.find(({ kind }) => kind === "batten")?.stock ?? "",
  ).width;
  const corners = endsAt(ground.bounds.x, ends);
  const widest = widestBoard(project, cladding);
  const { rod, runnerUp, narrowed, findings } = uprightRod(ground, cladding, {
    project,
    asked: demands.boards[cladding.id] ?? { gapBand: cladding.gapBand },
    corners: {
      behind: [
        longerBehind(corners.left, cladding.thickness),
        longerBehind(corners.right, cladding.thickness),
      ],
      widest,
    },
  });
  const turned = turnedGround(ground);
  const spacing = Math.min(RAIL_SPACING_MM, SPAN_IN_THICKNESSES * cladding.thickness);
  const zone: BoardZone = {
    ground: turned,
    cladding,
    plane,
    ends: endsOfTurned(turned),
    rod,
    ...(runnerUp && { runnerUp }),
    studs: railLines(ground.bounds.y, { spacing, width: railStock.width }),
    studSpacing: spacing,
    battenWidth: railStock.width,
  };
  const laid = layCourses(zone);
  const battens = battensFor(
    boardBattenWishes({ ...zone, ground, ends, studs, battenWidth }).filter(
      ({ reason }) => reason !== "short",
    ),
  );
  const bay = project.structure.studs.spacing;
  const railed = railGround(task);
  const railZ = plane.layers.find(({ kind }) => kind === "rail")?.z ?? [0, 0];
  const species = project.structure.studs.species;
  const behind = (y: Interval): Interval[] =>
    battens
      .filter((batten) => overlaps(batten.y, y))
      .map(({ x }): Interval => [snap(x[0] + FROM_BATTEN_EDGE_MM), snap(x[1] - FROM_BATTEN_EDGE_MM)]);
  const rakes = rakeRails({ ground: railed, stock: railStock, species, z: railZ, behind }).filter(
    (rail) => rakeCrossings(rail, battens).length >= 2,
  );
  const level = placeBattens({
    ground: turnedGround(railed),
    wishes: laid.wishes.map((wish) => overABay(clearOfClosures(wish, turned), bay)),
    z: railZ,
    stock: railStock,
    species,
    kind: "rail",
    // Turned: a rail's height is its strip, and battens lie across it.
    holds: ({ x }) => behind(x),
  }).map(turnedBatten);
  const rails = clearOfRakes(level, rakes).filter((rail) => crossings(rail, battens).length >= 2);
  const byMark = new Map(rails.map((rail) => [rail.mark, rail]));
  const railLinesOf = battenLines(rails.map(turnedBatten));
  const boards = laid.pieces.map((piece) => ({
    piece: edged(turnedPiece(piece), ends, { thickness: cladding.thickness, narrowed, widest }),
    points: [
      ...boardPoints(piece, cladding, railLinesOf).map((point) => turnedPointOn(point, byMark)),
      ...(rakes.length > 0 ? rakePoints(turnedPiece(piece), cladding, rakes) : []),
    ],
  }));
  return {
    boards,
    rails: [
      ...rails.map((rail) => ({ rail, points: crossings(rail, battens) })),
      ...rakes.map((rail) => ({ rail, points: rakeCrossings(rail, battens) })),
    ],
    battens,
    joints: laid.joints.map(turnedJoint),
    findings: [...findings, ...laid.findings],
  };
}

/** A short rail beside a duct still has to reach two battens. */
function overABay(wish: BattenWish, bay: number): BattenWish {
  return wish.y ? { ...wish, y: [snap(wish.y[0] - bay), snap(wish.y[1] + bay)] } : wish;
}

/** Even lines between the lowest and the highest rail. */
function railLines([from, to]: Interval, { spacing, width }: { spacing: number; width: number }): number[] {
  const [first, last] = [from + width / 2, to - width / 2];
  const spans = Math.max(1, Math.ceil((last - first) / spacing - 1e-9));
  return Array.from({ length: Math.max(0, spans - 1) }, (_, i) =>
    snap(first + ((last - first) * (i + 1)) / spans),
  );
}

/**
 * Rails reach past an outside corner to where the neighbour's cavity begins, to hold the boards there, and no further:
 * beyond it the neighbour's own battens and rails may stand. At a corner that is not square they end on the mitre.
 */
function railGround({ ground, ends, plane }: ZoneTask): ZoneGround {
  const length = faceLength(ground.face);
  const back = plane.layers.find(({ kind }) => kind === "rail")?.z[0] ?? plane.backZ;
  const mitre = ({ cut }: FaceEnd): number => (plane.faceZ - back) * Math.tan(degreesToRadians(cut.angleDeg));
  const reach = (end: FaceEnd, at: number, outward: 1 | -1): number => {
    if (end.kind !== "external") return outward > 0 ? ground.bounds.x[1] : ground.bounds.x[0];
    return snap(isSlanted(end) ? end.x - outward * mitre(end) : at + outward * end.neighbourCavityZ);
  };
  const from = reach(ends.left, 0, -1);
  const to = reach(ends.right, length, 1);
  const x: Interval = [Math.max(from, ground.bounds.x[0]), Math.min(to, ground.bounds.x[1])];
  const region =
    intersect(ground.region, rectOutline({ x, y: ground.bounds.y }))[0]?.outline ?? ground.region;
  return { ...ground, region, bounds: polygonBounds(region) };
}

/** A rail along an edge of the zone or of an opening leaves the room in which the closure's mesh passes. */
function clearOfClosures(wish: BattenWish, turned: ZoneGround): BattenWish {
  const [from, to] = wish.x;
  const atStart = from === turned.bounds.x[0] || turned.keepOuts.some(({ rect }) => rect.x[1] === from);
  const atEnd = to === turned.bounds.x[1] || turned.keepOuts.some(({ rect }) => rect.x[0] === to);
  const by = atStart ? CLOSURE_ROOM_MM : atEnd ? -CLOSURE_ROOM_MM : 0;
  return { ...wish, x: [snap(from + by), snap(to + by)] };
}

/**
 * The boards that end a face take the corner's cut along their long edge; an inside corner's makes them wider behind.
 * @param how `narrowed`: whether they are seen narrower for it, since no board is wider than `widest`
 */
function edged(
  piece: DraftPiece,
  face: ZoneTask["ends"],
  how: { readonly thickness: number; readonly narrowed: boolean; readonly widest: number | undefined },
): DraftPiece {
  const { x } = polygonBounds(piece.outline);
  const ends = endsAt(x, face);
  const width = cutLength(x, ends, how.thickness);
  const edgedPiece = { ...piece, ends, cut: { ...piece.cut, width } };
  const seen = piece.cut.width;
  if (!how.narrowed || width <= seen) return edgedPiece;
  return {
    ...edgedPiece,
    why: {
      rule: message("setout.why.upright.corner", { seen, width }),
      runnerUp: message("setout.why.upright.corner.too-wide", {
        seen: width,
        width: snap(2 * width - seen),
        widest: how.widest ?? width,
      }),
    },
  };
}

/** Where a rail crosses the battens behind it: its screws. */
function crossings(rail: DraftBatten, battens: readonly DraftBatten[]): CladdingPoint[] {
  return battens
    .filter((batten) => overlaps(batten.x, rail.x) && overlaps(batten.y, rail.y))
    .map((batten) => ({ x: middle(batten.x, rail.x), y: middle(batten.y, rail.y), batten }))
    .sort((a, b) => a.x - b.x);
}

function middle(a: Interval, b: Interval): number {
  return snap((Math.max(a[0], b[0]) + Math.min(a[1], b[1])) / 2);
}
