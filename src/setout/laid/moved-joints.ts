/** The open strips of a zone whose pieces were moved: between those that face each other, and what else is left open. */
import { type Edge, edgesOf, facingEdges } from "../../geometry/edges.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import { type Rect, rectOutline, rectsOverlap } from "../../geometry/rect.ts";
import { type Region, subtract } from "../../geometry/region.ts";
import { snap } from "../../units/length.ts";
import { type DraftPiece, jointsOf } from "../draft.ts";
import type { Joint } from "../facade.ts";
import type { KeepOut, ZoneGround } from "../ground-plan.ts";
import { breadth, straightStrips } from "./strips.ts";

/** Pieces further apart than this do not face each other over a joint (mm). */
const WIDEST_JOINT_MM = 60;

/** What is left thinner between slanted edges is what whole steps of the grid left of their slant (mm). */
const THINNEST_MM = 0.01;

interface Strip {
  readonly rect: Rect;
  readonly along: "x" | "y";
  readonly width: number;
}

/**
 * @param before joints as they were set out
 * @param drawn pieces as they were set out
 * @param keepOuts openings as measured, with their clearances
 */
export function movedJoints(
  ground: ZoneGround,
  {
    before,
    drawn,
    pieces,
    moved,
    keepOuts,
  }: {
    readonly before: readonly Joint[];
    readonly drawn: readonly DraftPiece[];
    readonly pieces: readonly DraftPiece[];
    readonly moved: ReadonlySet<string>;
    readonly keepOuts: readonly KeepOut[];
  },
): Joint[] {
  const outs = [
    ...keepOuts.map(({ rect }) => rectOutline(rect)),
    ...ground.rounds.map(({ polygon }) => polygon),
  ];
  const edges = pieces.flatMap(({ mark, outline }) =>
    edgesOf(outline).map((edge): Edge & { mark: string } => ({ ...edge, mark })),
  );
  const strips = facingEdges(edges, WIDEST_JOINT_MM)
    .filter(({ before: a, after: b }) => a.at < b.at && (moved.has(a.mark) || moved.has(b.mark)))
    .map(({ before: a, after: b, over }): Strip => {
      const across = [a.at, b.at] as const;
      const width = snap(b.at - a.at);
      return a.axis === "x"
        ? { rect: { x: across, y: over }, along: "y", width }
        : { rect: { x: over, y: across }, along: "x", width };
    });
  const between = strips.flatMap(({ rect, along, width }) => {
    const like = likest(before, { rect, along });
    return jointsOf(clipped(rectOutline(rect), outs), {
      kind: like?.kind ?? "edge",
      face: ground.face.id,
      zone: ground.zone.id,
      width,
      along,
      ...(like?.line !== undefined && { line: like.line }),
      ...(like?.why && { why: like.why }),
    });
  });
  const filled = [
    ...pieces.filter(({ mark }) => moved.has(mark)).map(({ outline }) => outline),
    ...strips.map(({ rect }) => rectOutline(rect)),
    ...outs,
  ];
  const stays = before.flatMap((joint) =>
    clipped(joint, filled).map((region) => ({ ...joint, region: region.outline, holes: region.holes })),
  );
  const covered = [
    ...pieces.map(({ outline }) => outline),
    ...strips.map(({ rect }) => rectOutline(rect)),
    ...outs,
  ];
  // What was set out open and is no joint, as beside a rake or round a duct, stays so.
  const open = subtract(ground.region, [
    ...drawn.map(({ outline }) => outline),
    ...before.map(({ region }) => region),
    ...ground.keepOuts.map(({ rect }) => rectOutline(rect)),
    ...ground.rounds.map(({ polygon }) => polygon),
  ]).map(({ outline }) => outline);
  const known = [...covered, ...stays.map(({ region }) => region), ...open];
  const rest = subtract(ground.region, known)
    .flatMap(straightStrips)
    .flatMap((region) => {
      const { x, y } = polygonBounds(region.outline);
      const width = snap(breadth(region.outline));
      if (width < THINNEST_MM) return [];
      return jointsOf([region], {
        kind: "edge",
        face: ground.face.id,
        zone: ground.zone.id,
        width,
        along: x[1] - x[0] < y[1] - y[0] ? "y" : "x",
      });
    });
  return [...stays, ...between, ...rest];
}

function clipped(subject: Polygon | Joint, clips: readonly Polygon[]): Region[] {
  const whole: Region =
    "region" in subject ? { outline: subject.region, holes: subject.holes } : { outline: subject, holes: [] };
  const box = polygonBounds(whole.outline);
  const near = clips.filter((clip) => rectsOverlap(polygonBounds(clip), box));
  return near.length === 0 ? [whole] : subtract(whole, near);
}

/** The joint that ran there: of those along the same way, the one that a strip overlaps most. */
function likest(joints: readonly Joint[], { rect, along }: Pick<Strip, "rect" | "along">): Joint | undefined {
  let [best, most]: [Joint | undefined, number] = [undefined, 0];
  for (const joint of joints) {
    if (joint.along !== along) continue;
    const { x, y } = polygonBounds(joint.region);
    const across = Math.min(x[1], rect.x[1]) - Math.max(x[0], rect.x[0]);
    const up = Math.min(y[1], rect.y[1]) - Math.max(y[0], rect.y[0]);
    if (across > 0 && up > 0 && across * up > most) [best, most] = [joint, across * up];
  }
  return best;
}
