/** Level sections through jambs, corners and junctions, and upright ones across soffits, cut from the set-out facade. */
import { type Interval, overlaps } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { intersect } from "../../geometry/region.ts";
import type { ZonePlane } from "../../setout/facade.ts";
import type { Message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { type LineRole, layerName } from "../roles.ts";
import { spread } from "../spread.ts";
import { openingsCut, type PlanPart, type PlanPlace, planParts } from "./plan-cut.ts";
import { throughWindow } from "./section-cut.ts";
import { layerLabels } from "./section-labels.ts";
import { DIMENSION_STEP, LABEL_STEP, TEXT } from "./style.ts";

const SCALE = 1 / 5;
const HEAVY_FROM = 3;
const LIGHT_TO = 1.2;

export interface PlanSectionOptions {
  readonly id: string;
  readonly title: Message;
  readonly place: PlanPlace;
  /** Along the section, mm. */
  readonly window: Interval;
  /** The build-up whose layers are named. */
  readonly plane: ZonePlane;
  /** The face round the corner, drawn in the frame of the first. */
  readonly beside?: PlanPlace;
  /** Shown before the outer plane and behind the wall, mm; a little unless told. */
  readonly show?: { readonly before: number; readonly behind: number };
}

export function planSection({ id, title, place, window, plane, beside, show }: PlanSectionOptions): Scene {
  const paper = 1 / SCALE;
  const labels = layerLabels({ plane, ...place });
  const inner = labels[0]?.z[0] ?? 0;
  const parts = [
    ...planParts(place),
    ...(beside ? planParts(beside).map((part) => turned(part, beside, place)) : []),
  ];
  const { before, behind } = show ?? { before: 60, behind: 60 };
  const depth: Interval = [inner - behind, plane.faceZ + before];
  // Names reach the layers where these begin, not the edge of an empty window.
  const left = Math.max(window[0], Math.min(...parts.map(({ outline }) => polygonBounds(outline).x[0])));
  return makeScene({
    id,
    title,
    scale: SCALE,
    items: [
      ...parts.flatMap((part) => partItems(part, { window, depth })),
      ...layerNames(labels, { left, paper }),
      {
        kind: "dimension",
        layer: layerName("FRAME", "D"),
        style: "chain",
        along: "y",
        at: window[1] + DIMENSION_STEP * paper,
        points: depths(
          labels.map(({ z }) => z),
          plane.faceZ,
        ),
      },
      ...widths(parts, { place, plane, window, at: -depth[1] - 2 * paper }),
    ],
  });
}

/** From the frame of one face into that of another, by the building. */
function turned(part: PlanPart, from: PlanPlace, to: PlanPlace): PlanPart {
  const a = from.face.frame;
  const b = to.face.frame;
  const outline = part.outline.map(([x, z]): Point => {
    const px = a.origin[0] + a.along[0] * x + a.outward[0] * z - b.origin[0];
    const py = a.origin[1] + a.along[1] * x + a.outward[1] * z - b.origin[1];
    return [px * b.along[0] + py * b.along[1], px * b.outward[0] + py * b.outward[1]];
  });
  return { ...part, outline };
}

function onPaper(outline: Polygon): Polygon {
  return outline.map(([along, z]): Point => [along, -z]);
}

function partItems(part: PlanPart, { window, depth }: { window: Interval; depth: Interval }): Item[] {
  const layer = layerName(part.element);
  const { x, y } = polygonBounds(part.outline);
  if (!overlaps([x[0], x[1] + 1e-6], window) || !overlaps([y[0], y[1] + 1e-6], depth)) return [];
  if (part.open) {
    const points = clippedLine(part.outline, { window, depth });
    const line: LineRole = part.element === "MEMBR" ? "cut" : "visible";
    return points.length < 2 ? [] : [{ kind: "polyline", layer, of: part.of, points: onPaper(points), line }];
  }
  const area = intersect(part.outline, rectOutline({ x: window, y: depth }))[0]?.outline;
  if (!area) return [];
  const line = lineOf(part);
  // What the window cuts off has no edge there: parts are drawn by their own edges.
  const { edges } = throughWindow(
    area.map(([a, z]): Point => [z, a]),
    window,
  );
  const inWindow = edges.map((edge) => edge.map(([z, a]): Point => [a, -z]));
  return [
    { kind: "polygon", layer, of: part.of, outline: onPaper(area), ...(part.fill && { fill: part.fill }) },
    ...(part.hatch
      ? [
          {
            kind: "hatch" as const,
            layer: layerName(part.element, "H"),
            of: part.of,
            outline: onPaper(area),
            pattern: part.hatch,
            spacing: 3,
          },
        ]
      : []),
    ...inWindow.map((points): Item => ({ kind: "polyline", layer, of: part.of, points, line })),
  ];
}

/** A line whose segments run along the axes or nearly: those wholly outside go, the others end at the window. */
function clippedLine(points: Polygon, { window, depth }: { window: Interval; depth: Interval }): Polygon {
  const held = ([a, z]: Point): Point => [
    Math.min(window[1], Math.max(window[0], a)),
    Math.min(depth[1], Math.max(depth[0], z)),
  ];
  const kept = points.map(held);
  return kept.filter((point, i) => i === 0 || point[0] !== kept[i - 1]?.[0] || point[1] !== kept[i - 1]?.[1]);
}

function lineOf({ outline, element }: PlanPart): LineRole {
  if (element === "INSUL") return "detail";
  const { x, y } = polygonBounds(outline);
  const least = Math.min(x[1] - x[0], y[1] - y[0]) * SCALE;
  return least >= HEAVY_FROM ? "cut" : least >= LIGHT_TO ? "visible" : "detail";
}

/** Names of the layers left of the section, each with a line to its layer. */
function layerNames(
  labels: readonly { readonly z: Interval; readonly text: Message }[],
  { left, paper }: { left: number; paper: number },
): Item[] {
  const middles = labels.map(({ z }) => -(z[0] + z[1]) / 2);
  const places = spread(middles, { spacing: LABEL_STEP * paper });
  return labels.map(({ text }, i): Item => {
    const [from, to] = [middles[i] as number, places[i] as number];
    return {
      kind: "leader",
      layer: layerName("FRAME", "T"),
      points: [
        [left + 2 * paper, from],
        [left - 3 * paper, from],
        [left - 9 * paper, to],
      ],
      text,
      height: TEXT,
      anchor: "end",
    };
  });
}

/** Rising on paper: the outermost first. What is thinner than 4 mm is measured with its neighbour inside. */
function depths(layers: readonly Interval[], faceZ: number): number[] {
  const all = [...new Set([...layers.flat(), 0, faceZ].map(snap))].sort((a, b) => b - a);
  const kept: number[] = [];
  for (const at of all) if (kept.length === 0 || (kept.at(-1) as number) - at >= 4) kept.push(at);
  return kept.map((z) => -z);
}

/** Where cladding and openings end along the section. */
function widths(
  parts: readonly PlanPart[],
  { place, plane, window, at }: { place: PlanPlace; plane: ZonePlane; window: Interval; at: number },
): Item[] {
  const clad = parts.filter(
    ({ element, outline }) =>
      (element === "BOARD" || element === "SHEET") &&
      Math.abs(polygonBounds(outline).y[1] - plane.faceZ) < 40,
  );
  const ends = [
    ...clad.flatMap(({ outline }) => [...polygonBounds(outline).x]),
    ...openingsCut(place).flatMap(({ span }) => [...span]),
  ];
  const points = [...new Set(ends.map(snap))]
    .filter((x) => x > window[0] && x < window[1])
    .sort((a, b) => a - b);
  return points.length < 2
    ? []
    : [{ kind: "dimension", layer: layerName("FRAME", "D"), style: "chain", along: "x", at, points }];
}
