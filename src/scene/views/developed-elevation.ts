/** All faces side by side on the ground line, in the order of the project. */
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade, FaceLayout } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { shiftItems } from "../shift.ts";
import { textWidth } from "../text-widths.ts";
import { claddingItems, revealItems } from "./cladding.ts";
import { controlLineItems, heightLines } from "./control-lines.ts";
import { faceExtent, heading, lowestGround } from "./extent.ts";
import { findingItems, type PlacedFinding } from "./finding-symbols.ts";
import { groundItems, groundLine } from "./ground.ts";
import { openingItems, openingNames, penetrationItems } from "./openings.ts";
import { ROD_WIDTH, rodItems } from "./storey-rod.ts";
import { DIMENSION_STEP, NAME } from "./style.ts";

/** Millimetres on paper. */
const BETWEEN_FACES = 8;
const BETWEEN_NAMES = 4;
const BESIDE = 5;
/** From the end of the level lines to past their names. */
const LABELS = 36;

export interface DevelopedElevationOptions {
  /** Millimetres of paper for one of the model; 1/100 unless told. */
  readonly scale?: number;
  /** Shown as symbols where they have a place. */
  readonly findings?: readonly PlacedFinding[];
}

export function developedElevation(
  facade: Pick<Facade, "faces" | "rods">,
  project: Pick<Project, "title" | "faces">,
  { scale = 1 / 100, findings = [] }: DevelopedElevationOptions = {},
): Scene {
  const placed = placeAll(facade, scale);
  return makeScene({
    id: "developed-elevation",
    title: message("drawing.title.developed-elevation", { project: project.title }),
    scale,
    items: [
      ...rodsBeside(facade, { placed, scale }),
      ...placed.flatMap(({ face, dx }) => shiftItems(wallItems(face, { project, scale }), { dx, dy: 0 })),
      ...itemsOver(facade, { placed, scale, findings }),
    ],
  });
}

/** All faces where they stand on the drawing: walls first, then soffits. */
export function placeAll({ faces }: Pick<Facade, "faces">, scale: number): PlacedFace[] {
  const paper = 1 / scale;
  const walls = placeFaces(faces.filter(stands), { paper, from: 0 });
  const right = walls.at(-1)?.to ?? 0;
  // Heights mean nothing on a soffit: those lie beyond the names of the level lines.
  const soffits = placeFaces(
    faces.filter((face) => !stands(face)),
    { paper, from: right + (BESIDE + LABELS) * paper },
  );
  return [...walls, ...soffits];
}

export interface OnDrawing {
  readonly placed: readonly PlacedFace[];
  readonly scale: number;
}

/** The storey rods, left of the first wall. */
export function rodsBeside({ rods }: Pick<Facade, "rods">, { placed, scale }: OnDrawing): Item[] {
  const paper = 1 / scale;
  const left = placed.find(({ face }) => stands(face))?.from ?? 0;
  const step = (ROD_WIDTH + 2) * paper;
  return rods.flatMap((rod, i) =>
    rodItems(rod, { left: left - (BESIDE + 2) * paper - (rods.length - i) * step, scale }),
  );
}

/** One face by itself, in its own frame: ground, cladding, openings. */
export function wallItems(
  face: FaceLayout,
  { project, scale }: { readonly project: Pick<Project, "faces">; readonly scale: number },
): Item[] {
  const half = BETWEEN_FACES / 2 / scale;
  const { x } = faceExtent(face);
  return [
    ...groundItems(groundLine(face.ground, { from: x[0] - half, to: x[1] + half }), scale),
    ...claddingItems(face, { scale, boardMarks: false, boardScrews: false }),
    ...openingItems(face),
    ...revealItems(face),
    ...penetrationItems(project, face.id),
  ];
}

/** What runs over all faces, or is said of them: level lines, names, findings, the chain of dimensions. */
export function itemsOver(
  { faces }: Pick<Facade, "faces">,
  { placed, scale, findings }: OnDrawing & { readonly findings: readonly PlacedFinding[] },
): Item[] {
  const paper = 1 / scale;
  const standing = faces.filter(stands);
  const walls = placed.filter(({ face }) => stands(face));
  const left = walls[0]?.from ?? 0;
  const right = walls.at(-1)?.to ?? 0;
  const top = Math.max(...standing.map((face) => faceExtent(face).y[1]));
  const low = Math.min(...standing.map(lowestGround));
  return [
    ...controlLineItems({
      lines: heightLines(standing.flatMap((face) => face.controlLines)),
      x: [left - BESIDE * paper, right + BESIDE * paper],
      labelX: right + (BESIDE + 6) * paper,
      scale,
    }),
    ...placed.flatMap(({ face, dx }): Item[] =>
      shiftItems(
        [
          ...openingNames(face, scale),
          ...findingItems(findings, face.id),
          ...faceNameItems(face, top + 8 * paper, paper),
        ],
        { dx, dy: 0 },
      ),
    ),
    facesChain(placed, low - DIMENSION_STEP * paper),
  ];
}

function stands({ frame }: FaceLayout): boolean {
  return frame.level === undefined;
}

/** One chain for all faces, so that long figures of neighbours keep out of each other's way. */
function facesChain(placed: readonly PlacedFace[], at: number): Item {
  const parts = placed.map(({ face, dx }) => chainPoints(face).map((x) => x + dx));
  let count = 0;
  const ends = parts.map((part) => {
    count += part.length;
    return count - 1;
  });
  return {
    kind: "dimension",
    layer: layerName("FRAME", "D"),
    style: "chain",
    along: "x",
    at,
    points: parts.flat(),
    skip: ends.slice(0, -1),
  };
}

/** Where a face stands on the drawing: add `dx` to an x of its own frame. */
export interface PlacedFace {
  readonly face: FaceLayout;
  readonly dx: number;
  readonly from: number;
  readonly to: number;
}

/** Narrow faces stand further apart, so that their names do not run into each other. */
function placeFaces(
  faces: readonly FaceLayout[],
  { paper, from: start }: { readonly paper: number; readonly from: number },
): PlacedFace[] {
  const placed: PlacedFace[] = [];
  for (const face of faces) {
    const { x } = faceExtent(face);
    const width = x[1] - x[0];
    const last = placed.at(-1);
    const beside = last ? last.to + BETWEEN_FACES * paper : start;
    const pastName = last
      ? (last.from + last.to + (nameWidth(last.face, paper) + nameWidth(face, paper)) * paper - width) / 2
      : 0;
    const from = Math.max(beside, last ? pastName + BETWEEN_NAMES * paper : start);
    placed.push({ face, dx: from - x[0], from, to: from + width });
  }
  return placed;
}

/** On paper, mm. */
function nameWidth(face: FaceLayout, paper: number): number {
  return written(isNarrow(face, paper) ? face.code : wholeName(face));
}

function written(text: string): number {
  return textWidth({ text, height: NAME, weight: "bold" });
}

/** Narrow faces bear their code, which their marks begin with: names side by side would need the width of a house. */
function isNarrow(face: FaceLayout, paper: number): boolean {
  const { x } = faceExtent(face);
  return written(wholeName(face)) > (x[1] - x[0]) / paper + BETWEEN_FACES - BETWEEN_NAMES;
}

/** The same in every language, save a soffit's, whose words are longest in French. */
function wholeName({ id, azimuthDeg }: FaceLayout): string {
  return `${heading(id)} · ${azimuthDeg === undefined ? "vu du dessous" : `${azimuthDeg}°`}`;
}

function nameOf(face: FaceLayout, paper: number): Message | string {
  if (isNarrow(face, paper)) return face.code;
  return face.azimuthDeg === undefined
    ? message("drawing.soffit", { face: heading(face.id) })
    : message("drawing.face", { face: heading(face.id), azimuth: face.azimuthDeg });
}

function faceNameItems(face: FaceLayout, y: number, paper: number): Item[] {
  const { x } = faceExtent(face);
  return [
    {
      kind: "text",
      layer: layerName("FRAME", "T"),
      of: face.id,
      at: [(x[0] + x[1]) / 2, y],
      text: nameOf(face, paper),
      height: NAME,
      weight: "bold",
      anchor: "middle",
      ink: "second",
    },
  ];
}

/** Ends of the cladding, zone ends and jambs, left to right. */
export function chainPoints(face: FaceLayout): number[] {
  const { x } = faceExtent(face);
  // Of two zones that meet, the left one's end stands for the joint between them.
  const zoneEnds = face.zones.map((zone) => polygonBounds(zone.region).x[1]);
  const jambs = face.openings.flatMap(({ region }) => [...region.x]);
  const all = [x[0], x[1], ...zoneEnds, ...jambs].sort((a, b) => a - b);
  return all.filter((at, i) => i === 0 || at - (all[i - 1] as number) > 1);
}
