/** Hatching as real lines clipped to the area, so that every renderer draws the same ones. */

import type { Point } from "../geometry/point.ts";
import type { Polygon } from "../geometry/polygon.ts";
import type { HatchItem } from "./model.ts";

export function hatchLines(item: HatchItem, scale: number): Polygon[] {
  const rings = [item.outline, ...(item.holes ?? [])];
  const spacing = item.spacing / scale;
  switch (item.pattern) {
    case "diagonal":
      return parallels(rings, { spacing, angleDeg: 45 });
    case "earth":
      return parallels(rings, { spacing, angleDeg: 60 });
    case "end-grain":
      return diagonals(item.outline);
    case "soft":
      return loops(rings, spacing);
  }
}

/** Lines of one direction at multiples of the spacing from the frame's origin, so that neighbours' hatches meet. */
function parallels(
  rings: readonly Polygon[],
  { spacing, angleDeg }: { spacing: number; angleDeg: number },
): Polygon[] {
  const angle = (angleDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turned = rings.map((ring) => ring.map(([x, y]): Point => [x * c + y * s, y * c - x * s]));
  const heights = turned.flat().map(([, v]) => v);
  const lines: Polygon[] = [];
  const last = Math.floor(Math.max(...heights) / spacing);
  for (let k = Math.ceil(Math.min(...heights) / spacing); k <= last; k++) {
    for (const [from, to] of crossings(turned, k * spacing)) {
      const v = k * spacing;
      lines.push([
        [from * c - v * s, from * s + v * c],
        [to * c - v * s, to * s + v * c],
      ]);
    }
  }
  return lines;
}

/** The stretches of the line at height v inside the rings (even-odd). */
function crossings(rings: readonly (readonly Point[])[], v: number): [number, number][] {
  const places: number[] = [];
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length] as Point;
      if (a[1] > v === b[1] > v) return;
      places.push(a[0] + ((v - a[1]) / (b[1] - a[1])) * (b[0] - a[0]));
    });
  }
  places.sort((a, b) => a - b);
  const stretches: [number, number][] = [];
  for (let i = 0; i + 1 < places.length; i += 2) {
    stretches.push([places[i] as number, places[i + 1] as number]);
  }
  return stretches;
}

/** The crossed diagonals of timber cut across its grain. */
function diagonals(outline: Polygon): Polygon[] {
  const box = boxOf([outline]);
  return [
    [
      [box.left, box.bottom],
      [box.right, box.top],
    ],
    [
      [box.left, box.top],
      [box.right, box.bottom],
    ],
  ];
}

/** A slack line from side to side of an upright layer, as soft insulation is drawn. */
function loops(rings: readonly Polygon[], spacing: number): Polygon[] {
  const { left, right, bottom, top } = boxOf(rings);
  const count = Math.max(1, Math.round((top - bottom) / spacing));
  const step = (top - bottom) / count;
  const middle = (left + right) / 2;
  const reach = ((right - left) / 2) * 0.86;
  const perLoop = 10;
  return [
    Array.from({ length: count * perLoop + 1 }, (_, i): Point => {
      const phase = i / perLoop;
      return [middle + reach * Math.cos(phase * Math.PI), bottom + phase * step];
    }),
  ];
}

function boxOf(rings: readonly Polygon[]): { left: number; right: number; bottom: number; top: number } {
  const all = rings.flat();
  const xs = all.map(([x]) => x);
  const ys = all.map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}
