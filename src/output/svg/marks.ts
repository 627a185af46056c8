/** Marks of a draw list as SVG elements, in millimetres of paper with y down. */
import type { Point } from "../../geometry/point.ts";
import type { ArcShape, Mark, Paint } from "../../scene/shapes.ts";
import { CAPITAL_HEIGHT } from "../../scene/text-widths.ts";
import { type Placement, placed, placedArc } from "../placement.ts";
import { escapeXml, number } from "./markup.ts";

export interface LayersOptions {
  /** Circles of one kind and piece that follow each other become one path: a screen lays out and paints far fewer elements. */
  readonly joinCircles?: boolean;
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
  { joinCircles = false }: LayersOptions = {},
): LayerElements[] {
  const found: { layer: string; elements: string[] }[] = [];
  let at = 0;
  while (at < marks.length) {
    const mark = marks[at] as Mark;
    let open = found.at(-1);
    if (open?.layer !== mark.layer) {
      open = { layer: mark.layer, elements: [] };
      found.push(open);
    }
    const alike = joinCircles ? circlesAlike(marks, at) : [];
    open.elements.push(alike.length > 1 ? joined(alike, placement) : element(mark, placement));
    at += Math.max(alike.length, 1);
  }
  return found;
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
  const of = first.of === undefined ? "" : ` data-of="${escapeXml(first.of)}"`;
  const data = circles.map(({ centre, radius }) => {
    const [x, y] = placed(centre, placement);
    const r = radius * placement.scale;
    const half = `${number(r)} ${number(r)} 0 1 0`;
    return `M${number(x - r)} ${number(y)}a${half} ${number(2 * r)} 0a${half} ${number(-2 * r)} 0`;
  });
  return `<path ${classes(first)}${of} d="${data.join("")}"/>`;
}

function element(mark: Mark, placement: Placement): string {
  const of = mark.of === undefined ? "" : ` data-of="${escapeXml(mark.of)}"`;
  switch (mark.shape) {
    case "path": {
      const data = mark.parts
        .map((part) => `M${part.map((point) => pair(point, placement)).join("L")}${mark.closed ? "Z" : ""}`)
        .join("");
      const rule = mark.closed && mark.parts.length > 1 ? ' fill-rule="evenodd"' : "";
      return `<path ${classes(mark)}${of}${rule} d="${data}"/>`;
    }
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
  const names = [line ? `line line-${line}` : "", fill ? `fill-${fill}` : ""].filter((name) => name !== "");
  return `class="${names.join(" ")}"`;
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
