/**
 * A buck's screws: through it and the sheathing into the timber round the opening, as far apart as a batten's, or at every
 * stud where there is nothing else, as under a sill. They pass less than a batten's do, so the same screw reaches deep enough.
 */
import { common, type Interval } from "../../geometry/interval.ts";
import { type Polygon, polygonBounds, sliceVertical } from "../../geometry/polygon.ts";
import { crossingPoints, type ScrewPoint, screwPoints } from "../batten-screws.ts";
import type { Piece, Solid } from "../facade.ts";
import { buckFixer } from "../fixings.ts";
import { turnedPolygon } from "../transpose.ts";
import type { Ground, Wall } from "./wall.ts";

/** The buck with its screws, and whether timber holds it along its whole length. */
export function screwed(
  { project }: Wall,
  at: Ground,
  { buck, solids }: { readonly buck: Piece; readonly solids: readonly Solid[] },
): { readonly buck: Piece; readonly isHeld: boolean } {
  // A stud that would stand in a trimmer is left out, and the bay beside it is wider by as much.
  const { spacing, width } = project.structure.studs;
  const widestBay = spacing + width;
  const { points, isHeld } =
    buck.grain === "x"
      ? levelPoints(buck.outline, solids, widestBay)
      : uprightPoints(buck.outline, solids, widestBay);
  const fix = buckFixer(project, at.plane, { zone: at.ground.zone, z: buck.z });
  const supports = [...new Set(points.map(({ solid }) => solid.id))];
  return { buck: { ...buck, supports, fixings: points.map(fix) }, isHeld };
}

interface Points {
  readonly points: readonly ScrewPoint[];
  readonly isHeld: boolean;
}

function uprightPoints(outline: Polygon, solids: readonly Solid[], widestBay: number): Points {
  const { x } = polygonBounds(outline);
  const y = wholeAlong(outline, x);
  if (!y) return { points: [], isHeld: false };
  const { points, missed } = screwPoints({ x, y }, solids, () => undefined);
  if (missed.length === 0) return { points, isHeld: points.length >= 2 };
  const atTimber = crossingPoints({ x, y }, solids);
  const [first, last] = [atTimber[0], atTimber.at(-1)];
  const stops = [y[0], ...atTimber.map((point) => point.y), y[1]];
  const isHeld = stops.slice(1).every((stop, i) => stop - (stops[i] as number) <= widestBay + NOISE_MM);
  return { points: atTimber, isHeld: first !== last && isHeld };
}

/** As an upright one, turned. */
function levelPoints(outline: Polygon, solids: readonly Solid[], widestBay: number): Points {
  const upright = new Map(solids.map((solid) => [solid.id, solid]));
  const turned = solids.map((solid) => ({ ...solid, region: turnedPolygon(solid.region) }));
  const { points, isHeld } = uprightPoints(turnedPolygon(outline), turned, widestBay);
  return {
    points: points.map(({ x, y, solid }) => ({ x: y, y: x, solid: upright.get(solid.id) ?? solid })),
    isHeld,
  };
}

const NOISE_MM = 0.001;
/** Just inside the edges, where a slice is certain to cut the outline. */
const INSIDE_MM = 0.01;

/** The height over which a strip has its whole width: a rake takes a corner off it. */
function wholeAlong(outline: Polygon, [left, right]: Interval): Interval | undefined {
  const [a] = sliceVertical(outline, left + INSIDE_MM);
  const [b] = sliceVertical(outline, right - INSIDE_MM);
  return a && b && common(a, b);
}
