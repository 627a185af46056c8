/**
 * Rails under the rakes of upright boards: one along each sloping edge, over the battens and under the boards' ends, so
 * that the ends are held however far the level rails stay below them. Level rails stop short of them.
 */
import {
  common,
  type Interval,
  intervalLength,
  overlaps,
  subtractIntervals,
} from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds, sliceVertical } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { intersect, subtract } from "../../geometry/region.ts";
import type { BattenStock, BoardCladding } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { cutAtJoints, stripJoints } from "../batten-lengths.ts";
import { CLOSURE_ROOM_MM, type DraftBatten } from "../battens.ts";
import type { CladdingPoint } from "../cladding-screws.ts";
import type { DraftPiece } from "../draft.ts";
import { NO_HOLES, SQUARE_ENDS } from "../facade.ts";
import type { ZoneGround } from "../ground-plan.ts";
import { letter, markOf } from "../marks.ts";

/** Beside a mesh, another rail or an opening's clearance. */
const ROOM_MM = CLOSURE_ROOM_MM;
/** A screw keeps this from a batten's sawn end. */
const FROM_BATTEN_END_MM = 10;
const SHORTEST_MM = 60;
/** A rail's screw from its own sawn end, which is drilled (common practice). */
const FROM_RAIL_END_MM = 20;

export interface RakeRails {
  readonly ground: ZoneGround;
  readonly stock: BattenStock;
  readonly species: string;
  readonly z: Interval;
  /** Where battens behind hold a screw, of those that reach into a height. */
  readonly behind: (y: Interval) => readonly Interval[];
}

/** The rails along the sloping upper edges of the ground, in lengths of the stock. */
export function rakeRails({ ground, stock, species, z, behind }: RakeRails): DraftBatten[] {
  if (ground.rectangular) return [];
  let edge = 0;
  return ground.region.flatMap((right, i): DraftBatten[] => {
    const left = ground.region[(i + 1) % ground.region.length] as Point;
    // Counter-clockwise, upper edges run from right to left.
    if (left[0] >= right[0] || left[1] === right[1]) return [];
    edge += 1;
    const slope = (right[1] - left[1]) / (right[0] - left[0]);
    const steep = Math.hypot(1, slope);
    // Between plumb cuts a rail is longer than its run by what the slope takes of its width.
    const run = (Math.max(...stock.lengths) - stock.width * Math.abs(slope)) / steep;
    if (run < SHORTEST_MM) return [];
    const at = (x: number): number => left[1] + (x - left[0]) * slope - ROOM_MM;
    const whole: Interval = [snap(left[0] + ROOM_MM), snap(right[0] - ROOM_MM)];
    const joints = stripJoints(whole, {
      longest: run,
      holds: behind([Math.min(left[1], right[1]) - stock.width * steep, Math.max(left[1], right[1])]),
      fromEnd: FROM_RAIL_END_MM,
      beside: [],
      blocks: false,
    });
    return cutAtJoints(whole, joints)
      .flatMap((x) => clear(ground, band(x, at, stock.width * steep)))
      .filter((outline) => intervalLength(polygonBounds(outline).x) >= SHORTEST_MM)
      .map((outline, part): DraftBatten => {
        const { x, y } = polygonBounds(outline);
        const number = `t${edge}${letter(part)}`;
        return {
          mark: markOf({ face: ground.face, zone: ground.zone.id, kind: "rail", number }),
          kind: "rail",
          face: ground.face.id,
          zone: ground.zone.id,
          outline,
          holes: NO_HOLES,
          z,
          ends: SQUARE_ENDS,
          grain: "x",
          material: species,
          stock: stock.id,
          cut: {
            length: snap(intervalLength(x) * steep + stock.width * Math.abs(slope)),
            width: stock.width,
            thickness: stock.thickness,
          },
          why: { rule: message("setout.why.rail.rake") },
          x,
          y,
          reason: "end",
        };
      });
  });
}

function band([from, to]: Interval, top: (x: number) => number, deep: number): Polygon {
  return [
    [from, snap(top(from) - deep)],
    [to, snap(top(to) - deep)],
    [to, snap(top(to))],
    [from, snap(top(from))],
  ];
}

/** What of a rail lies on the ground and clear of openings, ducts and the mesh round them. */
function clear(ground: ZoneGround, rail: Polygon): Polygon[] {
  const outs = [...ground.keepOuts.map(({ rect }) => rect), ...ground.rounds.map(({ bounds }) => bounds)].map(
    ({ x, y }) => rectOutline({ x: grown(x), y: grown(y) }),
  );
  return intersect(ground.region, rail).flatMap((part) => subtract(part, outs).map(({ outline }) => outline));
}

function grown([from, to]: Interval): Interval {
  return [snap(from - ROOM_MM), snap(to + ROOM_MM)];
}

/** Level rails cut back to where they are clear of the sloping ones; what is left too short is dropped. */
export function clearOfRakes(rails: readonly DraftBatten[], rakes: readonly DraftBatten[]): DraftBatten[] {
  if (rakes.length === 0) return [...rails];
  return rails.flatMap((rail) => {
    const taken = rakes.flatMap(({ outline }) =>
      intersect(outline, rectOutline({ x: rail.x, y: grown(rail.y) })).map((part) =>
        grown(polygonBounds(part.outline).x),
      ),
    );
    if (taken.length === 0) return [rail];
    return subtractIntervals(rail.x, taken)
      .filter((x) => intervalLength(x) >= SHORTEST_MM)
      .map(
        (x, i): DraftBatten => ({
          ...rail,
          mark: i === 0 ? rail.mark : `${rail.mark}${i + 1}`,
          outline: rectOutline({ x, y: rail.y }),
          x,
          cut: { ...rail.cut, length: snap(x[1] - x[0]) },
        }),
      );
  });
}

/** Where a sloping rail crosses the battens behind it: its screws. */
export function rakeCrossings(rail: DraftBatten, battens: readonly DraftBatten[]): CladdingPoint[] {
  return battens
    .flatMap((batten): CladdingPoint[] => {
      const x = overlaps(batten.x, rail.x) ? common(batten.x, rail.x) : undefined;
      if (!x) return [];
      const point = onMiddle(rail, (x[0] + x[1]) / 2);
      const [low, high] = [batten.y[0] + FROM_BATTEN_END_MM, batten.y[1] - FROM_BATTEN_END_MM];
      return point && point.y >= low && point.y <= high ? [{ batten, ...point }] : [];
    })
    .sort((a, b) => a.x - b.x);
}

/** A board's screws in the sloping rails: as many as in a level one, clear of its edges and its sloping end. */
export function rakePoints(
  { outline }: DraftPiece,
  cladding: BoardCladding,
  rakes: readonly DraftBatten[],
): CladdingPoint[] {
  const { x } = polygonBounds(outline);
  const edge = cladding.edgeDistance.value;
  const width = intervalLength(x);
  if (width < 2 * edge) return [];
  const two = width >= cladding.twoScrewsFrom.value && width >= 4 * edge;
  const places = two ? [x[0] + width / 4, x[1] - width / 4] : [(x[0] + x[1]) / 2];
  return rakes.flatMap((rail) =>
    places.flatMap((place): CladdingPoint[] => {
      const point = onMiddle(rail, place);
      if (!point) return [];
      const holds = sliceVertical(outline, point.x).some(
        ([low, high]) =>
          point.y - low >= cladding.endDistance.value && high - point.y >= cladding.endDistance.value,
      );
      return holds ? [{ batten: rail, ...point }] : [];
    }),
  );
}

/** The middle of a sloping rail at x, well inside its ends. */
function onMiddle(rail: DraftBatten, x: number): { readonly x: number; readonly y: number } | undefined {
  if (x < rail.x[0] + FROM_BATTEN_END_MM || x > rail.x[1] - FROM_BATTEN_END_MM) return undefined;
  const at = snap(x);
  const [slice] = sliceVertical(rail.outline, at);
  // Where an opening or the region's edge thins a rail, it holds no screw.
  if (!slice || intervalLength(slice) < rail.cut.width) return undefined;
  return { x: at, y: snap((slice[0] + slice[1]) / 2) };
}
