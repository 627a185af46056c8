/** One face for print: every piece with its mark, running dimensions, the rod's segments, the joints' widths. */
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade, FaceLayout, RodResult } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { claddingItems, revealItems } from "./cladding.ts";
import { controlLineItems, heightLines } from "./control-lines.ts";
import { chainPoints } from "./developed-elevation.ts";
import { faceExtent, heading, lowestGround } from "./extent.ts";
import { findingItems, type PlacedFinding } from "./finding-symbols.ts";
import { groundItems, groundLine } from "./ground.ts";
import { jointWidthItems } from "./joint-widths.ts";
import { openingItems, openingNames, penetrationItems } from "./openings.ts";
import { reliefItems, reliefNotes } from "./reliefs.ts";
import { fittingScale } from "./scales.ts";
import { DIMENSION_STEP, TEXT, tenth } from "./style.ts";

/** What an A3 sheet leaves for the face itself between its dimensions and names, mm on paper. */
const ROOM = [261, 140] as const;

/** From the heights to the rod's segments: room for a row of figures that do not fit their stretch. */
const ROD_STEP = 10;

/** Board marks and screws are drawn from this scale on. */
const DETAILED_FROM = 1 / 30;

export interface FaceElevationOptions {
  /** Millimetres of paper for one of the model; the largest usual one that fits A3 unless told. */
  readonly scale?: number;
}

/** What of a facade the elevation of one of its faces shows. */
export interface ElevationFacade extends Pick<Facade, "faces" | "rods"> {
  readonly findings: readonly PlacedFinding[];
}

/** The elevation of one face; undefined when the facade has no such face. */
export function faceElevation(
  facade: ElevationFacade,
  project: Pick<Project, "faces">,
  faceId: string,
  options: FaceElevationOptions = {},
): Scene | undefined {
  const face = facade.faces.find(({ id }) => id === faceId);
  if (!face) return undefined;
  const extent = faceExtent(face);
  const low = lowestGround(face);
  const scale = options.scale ?? fittingScale({ x: extent.x, y: [low, extent.y[1]] }, { room: ROOM });
  const paper = 1 / scale;
  const detailed = scale >= DETAILED_FROM;
  const lines = heightLines(face.controlLines);
  const items: Item[] = [
    ...groundItems(
      groundLine(face.ground, { from: extent.x[0] - 6 * paper, to: extent.x[1] + 6 * paper }),
      scale,
    ),
    ...claddingItems(face, { scale, boardMarks: true, boardScrews: detailed }),
    ...openingItems(face),
    ...revealItems(face),
    ...penetrationItems(project, face.id),
    ...uprightLines(face, { extent, low, paper }),
    ...controlLineItems({
      lines,
      x: [extent.x[0] - 4 * paper, extent.x[1] + 4 * paper],
      labelX: extent.x[1] + 28 * paper,
      scale,
    }),
    ...reliefItems(face, scale),
    ...openingNames(face, scale),
    ...jointWidthItems(face, { extent, scale }),
    ...findingItems(facade.findings, face.id),
    ...dimensions(facade, face, { extent, low, paper }),
  ];
  const made = {
    id: `face-${face.id}`,
    title: message("drawing.title.face-elevation", { face: heading(face.id) }),
    scale,
  };
  const scene = makeScene({ ...made, items });
  const notes = reliefNotes(face, { x: extent.x[0], y: scene.bounds.y[0], scale });
  return notes.length === 0 ? scene : makeScene({ ...made, items: [...items, ...notes] });
}

interface Room {
  readonly extent: Rect;
  /** Lowest ground. */
  readonly low: number;
  readonly paper: number;
}

/** Upright control lines stand out under and over the face, so that they do not cross its pieces. */
function uprightLines(face: FaceLayout, { extent, low, paper }: Room): Item[] {
  return face.controlLines
    .filter(({ direction, kind }) => direction === "vertical" && kind !== "jamb")
    .map(
      (line): Item => ({
        kind: "polyline",
        layer: layerName("CTRLIN"),
        of: line.id,
        line: "control",
        points: [
          [line.at, low - 3 * paper],
          [line.at, extent.y[0]],
        ],
      }),
    );
}

function dimensions(facade: Pick<Facade, "rods">, face: FaceLayout, { extent, low, paper }: Room): Item[] {
  const layer = layerName("FRAME", "D");
  const heights = heightLines(face.controlLines).map(({ at }) => at);
  const rod = facade.rods.find(({ zones }) => zones.some((zone) => zone.face === face.id));
  const first = low - DIMENSION_STEP * paper;
  const leftmost = extent.x[0] - DIMENSION_STEP * paper;
  const items: Item[] = [
    {
      kind: "dimension",
      layer,
      of: face.id,
      style: "chain",
      along: "x",
      at: first,
      from: low - 2 * paper,
      points: chainPoints(face),
    },
    {
      kind: "dimension",
      layer,
      of: face.id,
      style: "running",
      along: "x",
      at: first - DIMENSION_STEP * paper,
      points: pieceStarts(face, extent),
      origin: polygonBounds(face.outline).x[0],
    },
  ];
  if (heights.length > 1) {
    items.push({
      kind: "dimension",
      layer,
      of: face.id,
      style: "chain",
      along: "y",
      at: leftmost,
      from: extent.x[0],
      points: heights,
    });
  }
  if (rod) items.push(...rodSegments(rod, { at: leftmost - ROD_STEP * paper, paper }));
  return items;
}

/** The rod's segments, and beside each its boards and their gap. */
function rodSegments(rod: RodResult, { at, paper }: { at: number; paper: number }): Item[] {
  const ends = rod.segments.flatMap(({ from, to }) => [snap(from), snap(to)]);
  const points = [...new Set(ends)].sort((a, b) => a - b);
  return [
    {
      kind: "dimension",
      layer: layerName("ROD", "D"),
      of: rod.id,
      style: "chain",
      along: "y",
      at,
      points,
      labels: points.slice(1).map(() => ""),
    },
    ...rod.segments.map(
      (segment): Item => ({
        kind: "text",
        layer: layerName("ROD", "T"),
        of: rod.id,
        at: [at - 2.5 * paper, (segment.from + segment.to) / 2],
        text: message("drawing.rod-segment", {
          boards: segment.courses.length,
          gap: tenth(segment.gap),
        }),
        height: TEXT,
        anchor: "end",
        baseline: "middle",
      }),
    ),
  ];
}

/** Ends of the face and of its cladding, and the upright left ends of boards and sheets: where the tape is marked. */
function pieceStarts(face: FaceLayout, extent: Rect): number[] {
  const starts = face.pieces
    .filter(({ kind, outline }) => (kind === "sheet" || kind === "board") && startsUpright(outline))
    .map(({ outline }) => polygonBounds(outline).x[0]);
  const all = [...extent.x, ...polygonBounds(face.outline).x, ...starts].map(snap);
  return [...new Set(all)].sort((a, b) => a - b);
}

/** A piece cut to a rake may start in a point: there is nothing to mark there. */
function startsUpright(outline: Polygon): boolean {
  const { x, y } = polygonBounds(outline);
  const ys = outline.filter(([at]) => at === x[0]).map(([, height]) => height);
  return Math.max(...ys) - Math.min(...ys) >= (y[1] - y[0]) / 2;
}
