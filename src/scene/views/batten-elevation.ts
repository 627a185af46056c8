/** What the cladding is fixed to: battens, backing and closures, the timber behind them dashed. */
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade, FaceLayout, Piece, PieceKind } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { type FillRole, layerName } from "../roles.ts";
import { spread } from "../spread.ts";
import { fixingItems } from "./cladding.ts";
import { controlLineItems, heightLines } from "./control-lines.ts";
import { faceExtent, heading, lowestGround } from "./extent.ts";
import { groundItems, groundLine } from "./ground.ts";
import { openingItems, openingNames, penetrationItems } from "./openings.ts";
import { markItems, shortIsClear, withoutFace } from "./piece-marks.ts";
import { fittingScale } from "./scales.ts";
import { DIMENSION_STEP, LABEL_STEP, TEXT } from "./style.ts";

/** What an A3 sheet leaves for the face itself, mm on paper. */
const ROOM = [310, 140] as const;

/** Battens keep a wide outline from this scale on; drawn smaller it would fill them. */
const WIDE_FROM = 1 / 30;

const FILLS: Partial<Record<PieceKind, FillRole>> = {
  "counter-batten": "timber",
  rail: "timber",
  backing: "timber",
  packer: "timber",
  batten: "batten",
  closure: "metal",
};

/** Inner layers first, so that outer ones lie over them. */
const ORDER: readonly PieceKind[] = ["packer", "counter-batten", "backing", "batten", "rail", "closure"];

export interface BattenElevationOptions {
  readonly scale?: number;
}

/** The battens of one face; undefined when the facade has no such face. */
export function battenElevation(
  facade: Pick<Facade, "faces">,
  project: Pick<Project, "faces">,
  faceId: string,
  options: BattenElevationOptions = {},
): Scene | undefined {
  const face = facade.faces.find(({ id }) => id === faceId);
  if (!face) return undefined;
  const extent = faceExtent(face);
  const low = lowestGround(face);
  const scale = options.scale ?? fittingScale({ x: extent.x, y: [low, extent.y[1]] }, { room: ROOM });
  const paper = 1 / scale;
  const pieces = innerFirst(face);
  const battens = face.pieces.filter(({ kind }) => kind === "batten");
  const items: Item[] = [
    ...groundItems(
      groundLine(face.ground, { from: extent.x[0] - 6 * paper, to: extent.x[1] + 6 * paper }),
      scale,
    ),
    ...face.zones.map(
      (zone): Item => ({
        kind: "polygon",
        layer: layerName("MEMBR"),
        of: `${face.id}/${zone.id}`,
        outline: zone.region,
        line: "detail",
      }),
    ),
    ...openingItems(face),
    ...penetrationItems(project, face.id),
    ...behindItems(face, scale),
    ...controlLineItems({
      lines: heightLines(face.controlLines),
      x: [extent.x[0] - 4 * paper, extent.x[1] + 4 * paper],
      labelX: extent.x[1] + 10 * paper,
      scale,
    }),
    ...openingNames(face, scale),
    ...markItems(
      pieces.filter(({ kind }) => kind === "backing" || kind === "rail" || kind === "counter-batten"),
      { scale, over: battens },
    ),
    ...battenNames(battens, { top: extent.y[1], scale }),
    {
      kind: "dimension",
      layer: layerName("BATTEN", "D"),
      of: face.id,
      style: "running",
      along: "x",
      at: low - DIMENSION_STEP * paper,
      from: low - 2 * paper,
      points: battenCentres(face),
    },
  ];
  return makeScene({
    id: `battens-${face.id}`,
    title: message("drawing.title.batten-elevation", { face: heading(face.id) }),
    scale,
    items,
  });
}

function innerFirst({ pieces }: FaceLayout): Piece[] {
  return ORDER.flatMap((kind) => pieces.filter((piece) => piece.kind === kind));
}

/** Battens, backing and closures with their screws, and the timber behind them dashed. */
export function behindItems(face: FaceLayout, scale: number): Item[] {
  const pieces = innerFirst(face);
  return [
    ...pieces.map((piece) => pieceItem(piece, scale)),
    ...pieces.flatMap((piece) => fixingItems(piece, { scale })),
    ...face.solids.map(
      (solid): Item => ({
        kind: "polygon",
        layer: layerName("STRUCT"),
        of: solid.id,
        outline: solid.region,
        line: "hidden",
      }),
    ),
  ];
}

function pieceItem(piece: Piece, scale: number): Item {
  return {
    kind: "polygon",
    layer: layerName(piece.kind === "closure" ? "TRIM" : "BATTEN"),
    of: piece.mark,
    outline: piece.outline,
    holes: piece.holes,
    line: piece.kind === "closure" || scale < WIDE_FROM ? "detail" : "visible",
    fill: FILLS[piece.kind] ?? "timber",
  };
}

/** Battens are too slim to be written on: their marks stand over the face, those in one line together. */
function battenNames(battens: readonly Piece[], { top, scale }: { top: number; scale: number }): Item[] {
  const paper = 1 / scale;
  const write = shortIsClear(battens) ? withoutFace : (mark: string): string => mark;
  const lines = new Map<number, Piece[]>();
  for (const piece of battens) {
    const { x } = polygonBounds(piece.outline);
    const centre = snap((x[0] + x[1]) / 2);
    lines.set(centre, [...(lines.get(centre) ?? []), piece]);
  }
  const centres = [...lines.keys()].sort((a, b) => a - b);
  const places = spread(centres, { spacing: LABEL_STEP * paper });
  return centres.flatMap((centre, i): Item[] => {
    const place = places[i] as number;
    const pieces = lines.get(centre) ?? [];
    const of = pieces[0]?.mark ?? "";
    const layer = layerName("BATTEN", "T");
    return [
      {
        kind: "polyline",
        layer,
        of,
        line: "leader",
        points: [
          [centre, top],
          [centre, top + 1 * paper],
          [place, top + 4 * paper],
        ],
      },
      {
        kind: "text",
        layer,
        of,
        at: [place + (TEXT / 2) * paper, top + 5 * paper],
        text: pieces.map(({ mark }) => write(mark)).join(", "),
        height: TEXT,
        angleDeg: 90,
      },
    ];
  });
}

/** The face's left end, then the centre lines of its upright battens, then its right end. */
function battenCentres(face: FaceLayout): number[] {
  const { x } = polygonBounds(face.outline);
  const centres = face.pieces
    .filter(({ kind }) => kind === "batten")
    .map(({ outline }) => polygonBounds(outline))
    .filter((box) => box.y[1] - box.y[0] > box.x[1] - box.x[0])
    .map((box) => snap((box.x[0] + box.x[1]) / 2))
    .filter((at) => at > x[0] && at < x[1]);
  return [...new Set([snap(x[0]), ...centres, snap(x[1])])].sort((a, b) => a - b);
}
