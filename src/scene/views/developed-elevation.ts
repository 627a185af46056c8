/** All faces side by side on the ground line, in the order of the project. */
import type { Finding } from "../../findings/finding.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade, FaceLayout } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";
import { shiftItems } from "../shift.ts";
import { textWidth } from "../text-widths.ts";
import { claddingItems } from "./cladding.ts";
import { controlLineItems, heightLines } from "./control-lines.ts";
import { faceExtent, heading, lowestGround } from "./extent.ts";
import { findingItems } from "./finding-symbols.ts";
import { groundItems, groundLine } from "./ground.ts";
import { openingItems, openingNames, penetrationItems } from "./openings.ts";
import { ROD_WIDTH, rodItems } from "./storey-rod.ts";
import { DIMENSION_STEP, NAME } from "./style.ts";

/** Millimetres on paper. */
const BETWEEN_FACES = 8;
const BETWEEN_NAMES = 4;
const BESIDE = 5;

export interface DevelopedElevationOptions {
  /** Millimetres of paper for one of the model; 1/100 unless told. */
  readonly scale?: number;
  /** Shown as symbols where they have a place; the facade's own unless told. */
  readonly findings?: readonly Finding[];
}

export function developedElevation(
  facade: Facade,
  project: Project,
  options: DevelopedElevationOptions = {},
): Scene {
  const { scale = 1 / 100, findings = facade.findings } = options;
  const paper = 1 / scale;
  const placed = placeFaces(facade.faces, paper);
  const left = placed[0]?.from ?? 0;
  const right = placed.at(-1)?.to ?? 0;
  const top = Math.max(...facade.faces.map((face) => faceExtent(face).y[1]));
  const low = Math.min(...facade.faces.map(lowestGround));
  const half = (BETWEEN_FACES / 2) * paper;
  const lines = heightLines(facade.faces.flatMap((face) => face.controlLines));
  const rodStep = (ROD_WIDTH + 2) * paper;
  const items: Item[] = [
    ...facade.rods.flatMap((rod, i) =>
      rodItems(rod, { left: left - (BESIDE + 2) * paper - (facade.rods.length - i) * rodStep, scale }),
    ),
    ...placed.flatMap(({ face, dx }): Item[] => {
      const { x } = faceExtent(face);
      const own: Item[] = [
        ...groundItems(groundLine(face.ground, { from: x[0] - half, to: x[1] + half }), scale),
        ...claddingItems(face, { scale, boardMarks: false, boardScrews: false }),
        ...openingItems(face),
        ...penetrationItems(project, face.id),
      ];
      return shiftItems(own, { dx, dy: 0 });
    }),
    ...controlLineItems({
      lines,
      x: [left - BESIDE * paper, right + BESIDE * paper],
      labelX: right + (BESIDE + 6) * paper,
      scale,
    }),
    ...placed.flatMap(({ face, dx }): Item[] =>
      shiftItems(
        [
          ...openingNames(face, scale),
          ...findingItems(findings, face.id),
          ...faceNameItems(face, top + 8 * paper),
        ],
        { dx, dy: 0 },
      ),
    ),
    facesChain(placed, low - DIMENSION_STEP * paper),
  ];
  return makeScene({
    id: "developed-elevation",
    title: message("drawing.title.developed-elevation", { project: project.title }),
    scale,
    items,
  });
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

interface PlacedFace {
  readonly face: FaceLayout;
  readonly dx: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Where each face stands on the developed drawing: add `dx` to an x of its own frame. Narrow faces stand further apart,
 * so that their names do not run into each other.
 */
function placeFaces(faces: readonly FaceLayout[], paper: number): PlacedFace[] {
  const placed: PlacedFace[] = [];
  for (const face of faces) {
    const { x } = faceExtent(face);
    const width = x[1] - x[0];
    const last = placed.at(-1);
    const beside = last ? last.to + BETWEEN_FACES * paper : 0;
    const pastName = last
      ? (last.from + last.to + nameWidth(last.face) * paper + nameWidth(face) * paper - width) / 2
      : 0;
    const from = Math.max(beside, last ? pastName + BETWEEN_NAMES * paper : 0);
    placed.push({ face, dx: from - x[0], from, to: from + width });
  }
  return placed;
}

/** On paper, mm: the name is the same in every language. */
function nameWidth(face: FaceLayout): number {
  const text = face.azimuthDeg === undefined ? heading(face.id) : `${heading(face.id)} · ${face.azimuthDeg}°`;
  return textWidth({ text, height: NAME, weight: "bold" });
}

function faceNameItems(face: FaceLayout, y: number): Item[] {
  const { x } = faceExtent(face);
  return [
    {
      kind: "text",
      layer: layerName("FRAME", "T"),
      of: face.id,
      at: [(x[0] + x[1]) / 2, y],
      text:
        face.azimuthDeg === undefined
          ? message("drawing.soffit", { face: heading(face.id) })
          : message("drawing.face", { face: heading(face.id), azimuth: face.azimuthDeg }),
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
