/** A vertical section across one face, cut from the set-out facade. Section frame: z outward to the right, y up. */
import { common, type Interval } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Facade } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { type LineRole, layerName } from "../roles.ts";
import { controlLineItems, heightLines } from "./control-lines.ts";
import { type DetailMark, detailItems } from "./detail-marks.ts";
import { heading } from "./extent.ts";
import {
  type CutPart,
  cutParts,
  planeAt,
  type SectionPlace,
  type SectionProject,
  throughWindow,
} from "./section-cut.ts";
import { labelComb, layerLabels } from "./section-labels.ts";
import { openingSection } from "./section-opening.ts";
import { DIMENSION_STEP, TEXT } from "./style.ts";

/** From this scale on layers are measured one by one and screws drawn. */
const DETAILED_FROM = 1 / 12;

/** How far frames of details reach past the section, mm on paper. */
const FRAME_OUT = 3;

/** Parts at least this thick on paper carry the heaviest outline; those under the other a narrow one, mm. */
const HEAVY_FROM = 3;
const LIGHT_TO = 1.2;

export interface VerticalSectionOptions {
  /** Id of the face. */
  readonly face: string;
  /** Where the plane stands along the face, mm. */
  readonly x: number;
  /** The heights shown; the whole height unless told. */
  readonly y?: Interval;
  /** Of the scene; that of the whole section unless told. */
  readonly id?: string;
  /** Places of it that are shown larger elsewhere. */
  readonly details?: readonly DetailMark[];
  /** What it is called; where it stands unless told. */
  readonly title?: Message;
  /** Millimetres of paper for one of the model; 1/5 for a window, 1/20 for the whole height unless told. */
  readonly scale?: number;
}

/** Undefined when the facade has no such face, nothing of it stands at x, or it is a soffit, which no upright cut shows. */
export function verticalSection(
  facade: Pick<Facade, "faces" | "planes">,
  project: SectionProject,
  options: VerticalSectionOptions,
): Scene | undefined {
  const face = facade.faces.find(({ id }) => id === options.face);
  if (!face || face.frame.level !== undefined) return undefined;
  const place: SectionPlace = { facade, project, face, x: options.x };
  const plane = planeAt(place);
  if (!plane) return undefined;
  const scale = options.scale ?? (options.y ? 1 / 5 : 1 / 20);
  const paper = 1 / scale;
  const parts = cutParts(place);
  const window = options.y ?? wholeHeight(parts);
  const labels = layerLabels({ plane, face, project });
  const detailed = scale >= DETAILED_FROM;
  // Names stand at the end where the wall is, figures at the other.
  const namesAt = parts.some((part) => part.seen === "cut" && reaches(part, window[1] - 3 * paper))
    ? "top"
    : "bottom";
  const inner = labels[0]?.z[0] ?? 0;
  const right = plane.faceZ + 14 * paper;
  const items: Item[] = [
    ...parts.flatMap((part) => partItems(part, { window, scale })),
    ...openingSection(place, window),
    ...(detailed ? [...screwItems(place, window), ...headScrewItems(place, window)] : []),
    ...(options.y ? breakItems({ from: inner, to: plane.faceZ, window, paper }) : []),
    ...controlLineItems({
      lines: heightLines(face.controlLines).filter(({ at }) => at >= window[0] && at <= window[1]),
      x: [inner - 4 * paper, right - 4 * paper],
      labelX: right + 2 * paper,
      scale,
    }),
    ...planeLine({ faceZ: plane.faceZ, window, namesAt, paper }),
    ...labelComb(labels, { window, namesAt, right, scale }),
    ...detailItems(within(options.details ?? [], window), {
      x: [inner - FRAME_OUT * paper, plane.faceZ + FRAME_OUT * paper],
      scale,
    }),
    {
      kind: "dimension",
      layer: layerName("FRAME", "D"),
      style: "chain",
      along: "x",
      ...(namesAt === "top"
        ? { at: window[0] - DIMENSION_STEP * paper, from: window[0] - 2 * paper }
        : { at: window[1] + DIMENSION_STEP * paper, from: window[1] + 3 * paper }),
      points: depths(
        labels.map(({ z }) => z),
        plane.faceZ,
        detailed,
      ),
    },
  ];
  return makeScene({
    id: options.id ?? sectionId(face.id, options.x),
    title:
      options.title ?? message("drawing.title.vertical-section", { face: heading(face.id), x: options.x }),
    scale,
    items,
  });
}

/** Id of the scene of a section. */
export function sectionId(face: string, x: number): string {
  return `section-${face}-${Math.round(x)}`;
}

/** A frame ends where the section does. */
function within(details: readonly DetailMark[], window: Interval): DetailMark[] {
  return details.flatMap((detail) => {
    const y = common(detail.y, window);
    return y ? [{ ...detail, y }] : [];
  });
}

function wholeHeight(parts: readonly CutPart[]): Interval {
  const ys = parts.flatMap(({ outline }) => outline.map(([, y]) => y));
  return [Math.min(...ys), Math.max(...ys)];
}

/** Heavy outlines for what is cut and thick enough to carry one, narrow ones for soft layers and for what lies beyond. */
function lineOf(part: CutPart, scale: number): LineRole {
  if (part.seen === "beyond" || part.thin || part.element === "INSUL") return "detail";
  const box = polygonBounds(part.outline);
  const least = Math.min(box.x[1] - box.x[0], box.y[1] - box.y[0]) * scale;
  return least >= HEAVY_FROM && scale >= DETAILED_FROM ? "cut" : least >= LIGHT_TO ? "visible" : "detail";
}

function partItems(part: CutPart, { window, scale }: { window: Interval; scale: number }): Item[] {
  if (part.element === "MEMBR") return membraneItems(part, { window, scale });
  const { areas, edges } = throughWindow(part.outline, window);
  const tagged = { layer: layerName(part.element), of: part.of };
  const line = lineOf(part, scale);
  const hatch = part.hatch;
  return [
    ...areas.flatMap((outline): Item[] => [
      { kind: "polygon", ...tagged, outline, fill: part.fill },
      ...(hatch
        ? [
            {
              kind: "hatch" as const,
              layer: layerName(part.element, "H"),
              of: part.of,
              outline,
              pattern: hatch,
              spacing: hatch === "soft" ? 5 : 3,
            },
          ]
        : []),
    ]),
    ...edges.map((points): Item => ({ kind: "polyline", ...tagged, points, line })),
  ];
}

/** A membrane is thinner than any line: one heavy line down its middle stands for it. */
function membraneItems(part: CutPart, { window, scale }: { window: Interval; scale: number }): Item[] {
  const { x, y } = polygonBounds(part.outline);
  const seen = common(y, window);
  if (!seen) return [];
  const middle = (x[0] + x[1]) / 2;
  const line = scale >= DETAILED_FROM ? "cut" : "visible";
  const layer = layerName("MEMBR");
  return [{ kind: "line", layer, of: part.of, from: [middle, seen[0]], to: [middle, seen[1]], line }];
}

/** A screw no farther than this from the plane is drawn, mm. */
const SCREW_NEAR_MM = 40;

/** Screws near the plane, along their axis. */
function screwItems({ face, project, x }: SectionPlace, window: Interval): Item[] {
  const seen = new Set<number>();
  return face.pieces
    .filter(({ kind }) => kind === "board" || kind === "sheet")
    .flatMap((piece) =>
      piece.fixings.flatMap((fixing): Item[] => {
        if (Math.abs(fixing.x - x) > SCREW_NEAR_MM || fixing.y < window[0] || fixing.y > window[1]) return [];
        if (seen.has(fixing.y)) return [];
        seen.add(fixing.y);
        const screw = project.stock.screws.find(({ id }) => id === fixing.screw);
        const tip = piece.z[1] - (screw?.length ?? piece.z[1] - piece.z[0] + fixing.bite);
        const head = (screw?.headDiameter ?? 8) / 2;
        return [
          {
            kind: "line",
            layer: layerName("FIXING"),
            of: piece.mark,
            from: [piece.z[1], fixing.y],
            to: [tip, fixing.y],
            line: "visible",
          },
          {
            kind: "line",
            layer: layerName("FIXING"),
            of: piece.mark,
            from: [piece.z[1], fixing.y - head],
            to: [piece.z[1], fixing.y + head],
            line: "visible",
          },
        ];
      }),
    );
}

/** Screws of head returns near the plane, driven upward. */
function headScrewItems({ face, project, x }: SectionPlace, window: Interval): Item[] {
  return face.pieces
    .flatMap((piece) => (piece.kind === "return" ? piece.fixings.map((fixing) => ({ piece, fixing })) : []))
    .flatMap(({ piece, fixing: { side, screw: id, x: at, y } }): Item[] => {
      if (side?.towards !== "up" || Math.abs(at - x) > SCREW_NEAR_MM || y < window[0] || y > window[1])
        return [];
      const screw = project.stock.screws.find((one) => one.id === id);
      const head = (screw?.headDiameter ?? 8) / 2;
      const drawn = { kind: "line", layer: layerName("FIXING"), of: piece.mark, line: "visible" } as const;
      return [
        { ...drawn, from: [side.z, y], to: [side.z, y + (screw?.length ?? piece.cut.thickness)] },
        { ...drawn, from: [side.z - head, y], to: [side.z + head, y] },
      ];
    });
}

/** A zigzag where the wall goes on beyond the window. */
function breakItems({
  from,
  to,
  window,
  paper,
}: {
  from: number;
  to: number;
  window: Interval;
  paper: number;
}): Item[] {
  const [left, right] = [from - 4 * paper, to + 4 * paper];
  const middle = (left + right) / 2;
  return window.map((y): Item => {
    const points: Point[] = [
      [left, y],
      [middle - 2 * paper, y],
      [middle - 1 * paper, y + 2.2 * paper],
      [middle + 1 * paper, y - 2.2 * paper],
      [middle + 2 * paper, y],
      [right, y],
    ];
    return { kind: "polyline", layer: layerName("FRAME"), points, line: "break" };
  });
}

/** The outer plane of the cladding, in which neighbouring zones meet; named at the end where the figures are. */
function planeLine({
  faceZ,
  window,
  namesAt,
  paper,
}: {
  faceZ: number;
  window: Interval;
  namesAt: "top" | "bottom";
  paper: number;
}): Item[] {
  const far = 5 * paper;
  const foot = namesAt === "top" ? window[0] - far : window[1] + far;
  return [
    {
      kind: "line",
      layer: layerName("CTRLIN"),
      line: "control",
      from: [faceZ, namesAt === "top" ? window[1] + 3 * paper : window[0] - 3 * paper],
      to: [faceZ, foot],
    },
    {
      kind: "text",
      layer: layerName("CTRLIN", "T"),
      at: [faceZ + 3 * paper, foot],
      text: message("drawing.plane", { at: faceZ }),
      height: TEXT,
      baseline: "middle",
      ink: "chalk",
    },
  ];
}

function reaches({ outline }: CutPart, y: number): boolean {
  const box = polygonBounds(outline);
  return box.y[0] <= y && box.y[1] >= y;
}

/**
 * Faces of layers in rising order. What is thinner than 4 mm is measured with the layer inside it, so that the cavity's
 * own depth stays; where layers are drawn too small to measure, the wall and the build-up alone.
 */
function depths(layers: readonly Interval[], faceZ: number, detailed: boolean): number[] {
  const inner = layers[0]?.[0] ?? 0;
  if (!detailed) return [inner, 0, faceZ];
  const all = [...new Set([...layers.flat(), 0, faceZ].map(snap))].sort((a, b) => b - a);
  const kept: number[] = [];
  for (const at of all) if (kept.length === 0 || (kept.at(-1) as number) - at >= 4) kept.push(at);
  return kept.reverse();
}
