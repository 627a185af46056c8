/** Marks of a draw list as SVG elements, in millimetres of paper with y down. */
import type { Point } from "../../geometry/point.ts";
import { layerName } from "../../scene/roles.ts";
import type { ArcShape, Mark, Paint } from "../../scene/shapes.ts";
import { CAPITAL_HEIGHT } from "../../scene/text-widths.ts";
import { type Placement, placed, placedArc } from "../placement.ts";
import { escapeXml, number } from "./markup.ts";

/**
 * What becomes one path, since a screen styles, lays out and paints far fewer elements so: circles of one kind and piece that
 * follow each other, or, of a drawing in motion, all outlines and circles that look alike in a layer of pieces. There a disc
 * without a line is a dot: a line of no length with round ends (class `dots-<fill>`), which is parsed and painted in a fraction of a
 * circle's time.
 */
export type Joining = "nothing" | "circles" | "pieces";

export interface LayersOptions {
  readonly join?: Joining;
}

/** Elements of one layer that follow each other, each an element of SVG. */
export interface LayerElements {
  readonly layer: string;
  readonly elements: readonly string[];
}

/** Elements by layer, in painting order: a layer stands again where others come between. */
export function layerElements(
  marks: readonly Mark[],
  placement: Placement,
  { join = "nothing" }: LayersOptions = {},
): LayerElements[] {
  const found: { layer: string; elements: string[] }[] = [];
  let at = 0;
  while (at < marks.length) {
    const { layer } = marks[at] as Mark;
    let to = at + 1;
    while (to < marks.length && marks[to]?.layer === layer) to += 1;
    const run = marks.slice(at, to);
    at = to;
    const elements =
      join === "pieces" && OF_PIECES.has(layer)
        ? looksJoined(run, placement)
        : joinedCircles(run, placement, join !== "nothing");
    found.push({ layer, elements });
  }
  return found;
}

/** Where outlines never lie over one another, so that their order says nothing. */
const OF_PIECES: ReadonlySet<string> = new Set(
  (["BOARD", "SHEET", "FIXING"] as const).map((one) => layerName(one)),
);

/** An element for each look, and one for each mark that is neither an outline nor a circle. */
function looksJoined(run: readonly Mark[], placement: Placement): string[] {
  const looks = new Map<string, Look>();
  const others: string[] = [];
  let latest: Look | undefined;
  for (const mark of run) {
    if (!isOutline(mark)) {
      others.push(element(mark, placement));
      continue;
    }
    // Marks that follow each other mostly look alike: only another look is written out.
    if (!latest || !looksLike(mark, latest.first)) {
      const attributes = lookOf(mark, placement);
      latest = looks.get(attributes) ?? { first: mark, data: "" };
      looks.set(attributes, latest);
    }
    latest.data += outlineData(mark, placement);
  }
  return [...[...looks].map(([look, { data }]) => `<path ${look} d="${data}"/>`), ...others];
}

interface Look {
  readonly first: OutlineMark;
  data: string;
}

type OutlineMark = CircleMark | PathMark;

function isOutline(mark: Mark): mark is OutlineMark {
  return mark.shape === "circle" || (mark.shape === "path" && mark.closed);
}

function outlineData(mark: OutlineMark, placement: Placement): string {
  if (mark.shape === "path") return pathData(mark, placement);
  return isDot(mark) ? `M${pair(mark.centre, placement)}h0` : circleData(mark, placement);
}

function looksLike(a: OutlineMark, b: OutlineMark): boolean {
  if (a.line !== b.line || a.fill !== b.fill) return false;
  if (a.shape === "circle") return b.shape === "circle" && a.radius === b.radius;
  return b.shape === "path" && a.parts.length > 1 === b.parts.length > 1;
}

function lookOf(mark: OutlineMark, placement: Placement): string {
  return isDot(mark)
    ? `class="dots-${mark.fill}" stroke-width="${number(2 * mark.radius * placement.scale)}"`
    : `${classes(mark)}${ruleOf(mark)}`;
}

function isDot(mark: Mark): mark is CircleMark {
  return mark.shape === "circle" && mark.fill !== undefined && mark.line === undefined;
}

function joinedCircles(run: readonly Mark[], placement: Placement, join: boolean): string[] {
  const elements: string[] = [];
  let at = 0;
  while (at < run.length) {
    const alike = join ? circlesAlike(run, at) : [];
    elements.push(alike.length > 1 ? joined(alike, placement) : element(run[at] as Mark, placement));
    at += Math.max(alike.length, 1);
  }
  return elements;
}

/** The same as one text, a group for each layer. */
export function layers(marks: readonly Mark[], placement: Placement): string {
  return layerElements(marks, placement)
    .flatMap(({ layer, elements }) => [`<g data-layer="${escapeXml(layer)}">`, ...elements, "</g>"])
    .join("\n");
}

type CircleMark = Extract<Mark, { shape: "circle" }>;

/** The circle at a place and those after it that look alike and belong to the same piece; none where it is no circle. */
function circlesAlike(marks: readonly Mark[], from: number): CircleMark[] {
  const alike: CircleMark[] = [];
  for (let at = from; at < marks.length; at++) {
    const mark = marks[at] as Mark;
    if (mark.shape !== "circle") break;
    const [first = mark] = alike;
    const same = mark.layer === first.layer && mark.of === first.of && classes(mark) === classes(first);
    if (!same) break;
    alike.push(mark);
  }
  return alike;
}

function joined(circles: readonly CircleMark[], placement: Placement): string {
  const [first] = circles as readonly [CircleMark];
  const data = circles.map((circle) => circleData(circle, placement));
  return `<path ${classes(first)}${pieceOf(first)} d="${data.join("")}"/>`;
}

function circleData({ centre, radius }: CircleMark, placement: Placement): string {
  const [x, y] = placed(centre, placement);
  const r = radius * placement.scale;
  return `M${number(x - r)} ${number(y)}${roundOf(r)}`;
}

/** Once round a circle from its leftmost point; a drawing has thousands of a few sizes. */
function roundOf(radius: number): string {
  if (latestRound.radius === radius) return latestRound.data;
  const half = `${number(radius)} ${number(radius)} 0 1 0`;
  const data = `a${half} ${number(2 * radius)} 0a${half} ${number(-2 * radius)} 0`;
  latestRound = { radius, data };
  return data;
}

let latestRound = { radius: Number.NaN, data: "" };

type PathMark = Extract<Mark, { shape: "path" }>;

function pathData({ parts, closed }: PathMark, { scale, from, to }: Placement): string {
  let data = "";
  for (const part of parts) {
    let step = "M";
    for (const point of part) {
      data += `${step}${number(to[0] + (point[0] - from[0]) * scale)} ${number(to[1] - (point[1] - from[1]) * scale)}`;
      step = "L";
    }
    if (closed) data += "Z";
  }
  return data;
}

function ruleOf(mark: Mark): string {
  return mark.shape === "path" && mark.closed && mark.parts.length > 1 ? ' fill-rule="evenodd"' : "";
}

function pieceOf({ of }: Mark): string {
  return of === undefined ? "" : ` data-of="${escapeXml(of)}"`;
}

function element(mark: Mark, placement: Placement): string {
  const of = pieceOf(mark);
  switch (mark.shape) {
    case "path":
      return `<path ${classes(mark)}${of}${ruleOf(mark)} d="${pathData(mark, placement)}"/>`;
    case "circle": {
      const [x, y] = placed(mark.centre, placement);
      return `<circle ${classes(mark)}${of} cx="${number(x)}" cy="${number(y)}" r="${number(mark.radius * placement.scale)}"/>`;
    }
    case "arc":
      return `<path ${classes(mark)}${of} d="${arcData(mark, placement)}"/>`;
    case "text": {
      const [x, y] = placed(mark.at, placement);
      const anchor = mark.anchor === "start" ? "" : ` text-anchor="${mark.anchor}"`;
      const turn = mark.angleDeg === 0 ? "" : ` transform="rotate(-90 ${number(x)} ${number(y)})"`;
      const bold = mark.weight === "bold" ? " bold" : "";
      const size = number(mark.height / CAPITAL_HEIGHT);
      return `<text class="text${bold} ink-${mark.ink}"${of} x="${number(x)}" y="${number(y)}" font-size="${size}"${anchor}${turn}>${escapeXml(mark.text)}</text>`;
    }
  }
}

function classes({ line, fill }: Paint): string {
  if (line) return fill ? `class="line line-${line} fill-${fill}"` : `class="line line-${line}"`;
  return fill ? `class="fill-${fill}"` : `class=""`;
}

function pair(point: Point, placement: Placement): string {
  const [x, y] = placed(point, placement);
  return `${number(x)} ${number(y)}`;
}

function arcData(arc: ArcShape, placement: Placement): string {
  const { from, to, radius, large, sweep } = placedArc(arc, placement);
  const at = ([x, y]: Point): string => `${number(x)} ${number(y)}`;
  return `M${at(from)}A${number(radius)} ${number(radius)} 0 ${large} ${sweep} ${at(to)}`;
}
