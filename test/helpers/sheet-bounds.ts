/**
 * Published lower bounds on the sheets that a zone takes where none is cut round an opening.
 *
 * Area: the continuous bound L0, Martello & Vigo, Management Science 44 (1998) 388-399: all that is covered over the area of
 * the largest sheet. Places: Chaiken, Kleitman, Saks & Shearer, Covering regions by rectangles, SIAM Journal on Algebraic and
 * Discrete Methods 2 (1981) 394-410: of places no two of which lie in one rectangle, each takes a rectangle of its own. Here a
 * rectangle is no larger than the stock, and lies in one column: upright joints run through, so that every jamb of an opening
 * parts the columns. A place is a square wider than a joint, so that no joint hides it.
 */
import { rectArea } from "../../src/geometry/rect.ts";
import type { SheetZone } from "../../src/setout/sheets/zone.ts";

type Span = readonly [number, number];
interface Box {
  readonly x: Span;
  readonly y: Span;
}

const meet = (a: Span, b: Span): boolean => a[0] < b[1] && b[0] < a[1];
const covers = (outer: Span, inner: Span): boolean => outer[0] <= inner[0] && outer[1] >= inner[1];
const between = (a: Span, b: Span): Span => [Math.min(a[1], b[1]), Math.max(a[0], b[0])];

export function publishedBound(zone: SheetZone): number {
  return Math.max(areaBound(zone), placesApart(zone));
}

/** Sheets as they hang, standing or lying as the cladding asks. */
function sizes({ stock, trim, cladding }: SheetZone): (readonly [width: number, height: number])[] {
  return stock.flatMap(({ width, height }) => {
    const [a, b] = [Math.min(width, height) - 2 * trim, Math.max(width, height) - 2 * trim];
    const lay = cladding.lay ?? "upright";
    return [...(lay === "lying" ? [] : [[a, b] as const]), ...(lay === "upright" ? [] : [[b, a] as const])];
  });
}

/** What the sheets themselves cover is not known before they are laid: every joint is counted as none's, as wide as it can be. */
function areaBound(zone: SheetZone): number {
  const { ground, cladding } = zone;
  const cells = sizes(zone).map(([w, h]) => (w + cladding.joint) * (h + cladding.joint));
  const shoelace = ground.region.reduce((sum, [x, y], i, all) => {
    const [nx, ny] = all[(i + 1) % all.length] as Span;
    return sum + (x * ny - nx * y) / 2;
  }, 0);
  const grown = (span: Span): Span => [span[0] - cladding.joint, span[1] + cladding.joint];
  const lost = ground.keepOuts.reduce(
    (sum, { rect }) => sum + rectArea({ x: grown(rect.x), y: grown(rect.y) }),
    0,
  );
  const ducts = ground.rounds.reduce((sum, { bounds }) => sum + rectArea(bounds), 0);
  return Math.max(0, Math.ceil((Math.abs(shoelace) - lost - ducts) / Math.max(...cells) - 1e-9));
}

/** At a zone's ends no joint hides a place, however thin; anywhere else it is so much wider than one. */
const THIN_MM = 0.01;
const INSIDE_MM = 0.001;

/** As many places as are found, the ones that exclude fewest others first: any such set is a bound. */
function placesApart(zone: SheetZone): number {
  const { ground } = zone;
  const outs = ground.keepOuts.map(({ rect }) => rect);
  const { joint } = zone.cladding;
  const shapes = sizes(zone);
  const side = joint + THIN_MM;
  // What reaches into the zone by less than a joint may hide in one.
  const cutting = outs.filter(
    ({ y }) => Math.min(y[1], ground.bounds.y[1]) - Math.max(y[0], ground.bounds.y[0]) > joint,
  );
  const jambs = cutting.flatMap(({ x }) => x);
  const lines = (axis: "x" | "y"): Span[] => {
    const ends = ground.bounds[axis];
    const longest = Math.max(...shapes.map((shape) => shape[axis === "x" ? 0 : 1]));
    const found = new Map<string, Span>();
    const march = (edge: number, towards: 1 | -1, first: number): void => {
      let [at, wide] = [edge, first];
      while (towards > 0 ? at + wide <= ends[1] : at - wide >= ends[0]) {
        const span: Span = towards > 0 ? [at, at + wide] : [at - wide, at];
        if (span[0] >= ends[0] && span[1] <= ends[1]) found.set(span.join(" "), span);
        at += towards * (wide + longest);
        wide = side;
      }
    };
    march(ends[0], 1, THIN_MM);
    march(ends[1], -1, THIN_MM);
    for (const { [axis]: edges } of cutting) {
      march(edges[0], -1, side);
      march(edges[1], 1, side);
      march(edges[0], 1, side);
      march(edges[1], -1, side);
    }
    return [...found.values()];
  };
  const inRegion = ([x, y]: Span): boolean => {
    let inside = false;
    ground.region.forEach(([ax, ay], i, all) => {
      const [bx, by] = all[(i + 1) % all.length] as Span;
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    });
    return inside;
  };
  const ys = lines("y");
  const places = lines("x").flatMap((x) =>
    ys.flatMap((y): Box[] => {
      const box: Box = { x, y };
      const corners = [x[0] + INSIDE_MM, x[1] - INSIDE_MM].flatMap((px) =>
        [y[0] + INSIDE_MM, y[1] - INSIDE_MM].map((py): Span => [px, py]),
      );
      const taken = [...outs, ...ground.rounds.map(({ bounds }) => bounds)];
      const free = taken.every((out) => !meet(out.x, box.x) || !meet(out.y, box.y));
      return free && corners.every(inRegion) ? [box] : [];
    }),
  );
  const share = (a: Box, b: Box): boolean => {
    const [gapX, gapY] = [between(a.x, b.x), between(a.y, b.y)];
    const fits = shapes.some(([w, h]) => w > gapX[1] - gapX[0] && h > gapY[1] - gapY[0]);
    const isCrossed = (axis: "x" | "y", out: Span, gap: Span): boolean =>
      covers(out, a[axis]) || covers(out, b[axis]) || (gap[0] < gap[1] && meet(out, gap));
    const isParted = jambs.some((at) => at >= gapX[0] && at <= gapX[1]);
    return (
      fits && !isParted && !outs.some((out) => isCrossed("x", out.x, gapX) && isCrossed("y", out.y, gapY))
    );
  };
  const near = places.map((a) => places.flatMap((b, k) => (a !== b && share(a, b) ? [k] : [])));
  const orders: ((a: Box, b: Box) => number)[] = [
    (a, b) => a.x[0] - b.x[0] || a.y[0] - b.y[0],
    (a, b) => b.x[0] - a.x[0] || a.y[0] - b.y[0],
    (a, b) => a.y[0] - b.y[0] || a.x[0] - b.x[0],
    (a, b) => b.y[0] - a.y[0] || b.x[0] - a.x[0],
  ];
  return Math.max(
    ...orders.flatMap((order) => {
      const sorted = [...places.keys()].sort((a, b) => order(places[a] as Box, places[b] as Box));
      return [pickedApart(sorted, near, true), pickedApart(sorted, near, false)];
    }),
  );
}

/** Picks one after another, the first of the order or the one that excludes fewest of those left. */
function pickedApart(
  order: readonly number[],
  near: readonly (readonly number[])[],
  fewestFirst: boolean,
): number {
  const left = new Set(order);
  let apart = 0;
  while (left.size > 0) {
    let best = -1;
    let fewest = Number.POSITIVE_INFINITY;
    for (const k of left) {
      const excluded = fewestFirst ? (near[k] ?? []).filter((other) => left.has(other)).length : 0;
      if (excluded < fewest) [best, fewest] = [k, excluded];
      if (!fewestFirst) break;
    }
    apart += 1;
    left.delete(best);
    for (const other of near[best] ?? []) left.delete(other);
  }
  return apart;
}
