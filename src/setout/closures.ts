/** What closes the open ends of a zone's cavity against animals, and the air that still passes. */
import { mesh } from "../catalogue/meshes.ts";
import { common, type Interval, intervalLength } from "../geometry/interval.ts";
import type { Point } from "../geometry/point.ts";
import { type Polygon, polygonBounds } from "../geometry/polygon.ts";
import { rectOutline, rectsOverlap } from "../geometry/rect.ts";
import { intersect, type Region, subtract } from "../geometry/region.ts";
import { message } from "../text/message.ts";
import { degreesToRadians } from "../units/angle.ts";
import { snap } from "../units/length.ts";
import type { DraftBatten } from "./battens.ts";
import { type FaceEnds, isSlanted } from "./corners.ts";
import type { DraftPiece } from "./draft.ts";
import { SQUARE, SQUARE_ENDS, type Vent, type ZonePlane } from "./facade.ts";
import { freeWithin, type ZoneGround } from "./ground-plan.ts";
import { markOf } from "./marks.ts";
import { cavityBack } from "./planes.ts";

/** Woven stainless mesh, 3 mm opening, 0.5 mm wire: keeps most insects out and passes most of the air. */
const CLOSURE_MESH = "3-0.5";
const MESH_THICKNESS_MM = 1;

interface OpenEnd {
  readonly position: Vent["position"];
  readonly region: Region;
  /** Outer side of the mesh, where it is not the back of the cladding. */
  readonly front?: number;
}

export function closuresOf(zone: {
  readonly ground: ZoneGround;
  readonly plane: ZonePlane;
  readonly ends: FaceEnds;
  readonly battens: readonly DraftBatten[];
}): { readonly pieces: readonly DraftPiece[]; readonly vents: readonly Vent[] } {
  const { ground, plane } = zone;
  const ends = openEnds(ground)
    .flatMap((end) => withinWall(end, zone))
    .flatMap((end) => behindPost(end, zone));
  const limits = limitsOf(zone);
  const pieces = ends.map(
    ({ region, position, front = plane.backZ }, i): DraftPiece => ({
      mark: markOf({ face: ground.face, zone: ground.zone.id, kind: "closure", number: String(i + 1) }),
      kind: "closure",
      face: ground.face.id,
      zone: ground.zone.id,
      outline: region.outline,
      holes: region.holes,
      z: [cavityBack(plane), front],
      ends: cutAt(region, limits, zone.ends),
      material: `mesh ${CLOSURE_MESH}`,
      cut: {
        length: snap(intervalLength(polygonBounds(region.outline).x)),
        width: snap(front - cavityBack(plane)),
        thickness: MESH_THICKNESS_MM,
      },
      why: { rule: message(`setout.why.closure.${position.replace(" ", "-")}`) },
    }),
  );
  const vents = ends.map(({ region, position }, i) =>
    vent(zone, { region, position }, pieces[i]?.mark ?? ""),
  );
  return { pieces, vents };
}

function openEnds(ground: ZoneGround): OpenEnd[] {
  const edges = edgeEnds(ground);
  // Where a rake comes down on an opening's head, the mesh of the one closes the other.
  const round = openingEnds(ground).flatMap((end): OpenEnd[] => {
    const box = polygonBounds(end.region.outline);
    const taken = edges
      .map(({ region }) => region.outline)
      .filter((one) => rectsOverlap(polygonBounds(one), box));
    return taken.length === 0
      ? [end]
      : subtract(end.region.outline, taken).map((region) => ({ ...end, region }));
  });
  return [...edges, ...round];
}

/** The lower and upper edges of the region; counter-clockwise, lower edges run to the right. */
function edgeEnds(ground: ZoneGround): OpenEnd[] {
  return ground.region.flatMap((from, i): OpenEnd[] => {
    const to = ground.region[(i + 1) % ground.region.length] as Point;
    if (from[0] === to[0]) return [];
    const lower = to[0] > from[0];
    const lift = (p: Point): Point => [p[0], snap(p[1] + (lower ? MESH_THICKNESS_MM : -MESH_THICKNESS_MM))];
    const strip: Polygon = lower ? [from, to, lift(to), lift(from)] : [lift(to), lift(from), from, to];
    const box = polygonBounds(strip);
    const outs = ground.keepOuts.filter(({ rect }) => rectsOverlap(rect, box));
    const parts =
      outs.length === 0
        ? [{ outline: strip, holes: [] }]
        : subtract(
            strip,
            outs.map(({ rect }) => rectOutline(rect)),
          );
    return parts.map((region) => ({ position: lower ? "base" : "top", region }));
  });
}

function openingEnds(ground: ZoneGround): OpenEnd[] {
  return ground.keepOuts.flatMap(({ rect, sillLine, headLine }): OpenEnd[] => [
    ...(sillLine === undefined
      ? []
      : freeWithin(ground, { x: rect.x, y: [snap(sillLine - MESH_THICKNESS_MM), sillLine] }).map(
          (region): OpenEnd => ({ position: "under opening", region }),
        )),
    ...freeWithin(ground, { x: rect.x, y: [headLine, snap(headLine + MESH_THICKNESS_MM)] }).map(
      (region): OpenEnd => ({ position: "over opening", region }),
    ),
  ]);
}

interface Corners {
  readonly ground: ZoneGround;
  readonly plane: ZonePlane;
  readonly ends: FaceEnds;
}

/**
 * At an outside corner two cavities meet: the face on the left of the corner closes it to the other's cladding, the one
 * on its right starts at its own sheathing, so that the two never lie in one place. Where the corner is not square both
 * end on the mitre.
 */
function limitsOf({ ground, plane, ends: { left, right } }: Corners): Interval {
  const mitre = (angleDeg: number): number =>
    (plane.faceZ - plane.backZ) * Math.tan(degreesToRadians(angleDeg));
  const wallEnd = Math.max(...ground.face.outline.map(([x]) => x));
  const from = isSlanted(left) ? snap(left.x + mitre(left.cut.angleDeg)) : 0;
  const to = isSlanted(right)
    ? snap(right.x - mitre(right.cut.angleDeg))
    : snap(wallEnd + right.neighbourFreeZ);
  return [
    left.kind === "external" ? from : Number.NEGATIVE_INFINITY,
    right.kind === "external" ? to : Number.POSITIVE_INFINITY,
  ];
}

function withinWall(end: OpenEnd, zone: Corners): OpenEnd[] {
  const [from, to] = limitsOf(zone);
  const box = polygonBounds(end.region.outline);
  if (box.x[0] >= from && box.x[1] <= to) return [end];
  if (box.x[1] <= from || box.x[0] >= to) return [];
  const keep = rectOutline({ x: [Math.max(from, box.x[0]), Math.min(to, box.x[1])], y: box.y });
  return intersect(end.region.outline, keep).map((region) => ({ ...end, region }));
}

/** A post stands on the battens: where rails lie between them and the cladding, the mesh behind it is shallower. */
function behindPost(end: OpenEnd, { plane, ends: { right } }: Corners): OpenEnd[] {
  const { x, y } = polygonBounds(end.region.outline);
  const front = right.post?.z[0] ?? plane.backZ;
  if (front === plane.backZ || x[1] <= right.x) return [end];
  const within = (from: number, to: number): Region[] =>
    from < to ? intersect(end.region.outline, rectOutline({ x: [from, to], y })) : [];
  return [
    ...within(x[0], Math.min(x[1], right.x)).map((region): OpenEnd => ({ ...end, region })),
    ...within(Math.max(x[0], right.x), x[1]).map((region): OpenEnd => ({ ...end, region, front })),
  ];
}

function cutAt({ outline }: Region, limits: Interval, { left, right }: FaceEnds): DraftPiece["ends"] {
  const { x } = polygonBounds(outline);
  const atLeft = isSlanted(left) && x[0] === limits[0];
  const atRight = isSlanted(right) && x[1] === limits[1];
  if (!atLeft && !atRight) return SQUARE_ENDS;
  return { left: atLeft ? left.cut : SQUARE, right: atRight ? right.cut : SQUARE };
}

const CM2_PER_M_OF_MM = 10;

function vent(
  { ground, plane, battens }: { ground: ZoneGround; plane: ZonePlane; battens: readonly DraftBatten[] },
  { region, position }: OpenEnd,
  closure: string,
): Vent {
  const box = polygonBounds(region.outline);
  const length = intervalLength(box.x);
  const near = battens.filter(({ y }) => y[0] < box.y[1] + NEAR_MM && y[1] > box.y[0] - NEAR_MM);
  const filled = near.reduce((sum, { x }) => {
    const shared = common(x, box.x);
    return sum + (shared ? intervalLength(shared) : 0);
  }, 0);
  const gross = plane.cavity * CM2_PER_M_OF_MM;
  const free = (mesh(CLOSURE_MESH)?.freeShare.value ?? 0) / 100;
  const net = gross * Math.max(0, 1 - filled / length) * free;
  return {
    face: ground.face.id,
    zone: ground.zone.id,
    position,
    x: box.x,
    y: box.y[0],
    closure,
    grossCm2PerM: Math.round(gross * 10) / 10,
    netCm2PerM: Math.round(net * 10) / 10,
  };
}

const NEAR_MM = 30;
