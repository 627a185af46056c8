/** What the cladding is fixed to: battens, backing and closures, the timber behind them dashed. */
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade, FaceLayout, Piece, PieceKind } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { type FillRole, layerName } from "../roles.ts";
import { fixingItems, markItem } from "./cladding.ts";
import { controlLineItems, heightLines } from "./control-lines.ts";
import { faceExtent, heading, lowestGround } from "./extent.ts";
import { groundItems, groundLine } from "./ground.ts";
import { openingItems, openingNames, penetrationItems } from "./openings.ts";
import { fittingScale } from "./scales.ts";
import { DIMENSION_STEP } from "./style.ts";

const ROOM = [290, 170] as const;

const FILLS: Partial<Record<PieceKind, FillRole>> = {
  "counter-batten": "timber",
  rail: "timber",
  backing: "timber",
  packer: "timber",
  batten: "batten",
  closure: "metal",
};

/** Inner layers first, so that outer ones lie over them. */
const ORDER: readonly PieceKind[] = ["packer", "counter-batten", "rail", "backing", "batten", "closure"];

export interface BattenElevationOptions {
  readonly scale?: number;
}

/** The battens of one face; undefined when the facade has no such face. */
export function battenElevation(
  facade: Facade,
  project: Project,
  faceId: string,
  options: BattenElevationOptions = {},
): Scene | undefined {
  const face = facade.faces.find(({ id }) => id === faceId);
  if (!face) return undefined;
  const extent = faceExtent(face);
  const low = lowestGround(face);
  const scale = options.scale ?? fittingScale({ x: extent.x, y: [low, extent.y[1]] }, { room: ROOM });
  const paper = 1 / scale;
  const pieces = ORDER.flatMap((kind) => face.pieces.filter((piece) => piece.kind === kind));
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
    ...pieces.map(pieceItem),
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
    ...controlLineItems({
      lines: heightLines(face.controlLines),
      x: [extent.x[0] - 4 * paper, extent.x[1] + 4 * paper],
      labelX: extent.x[1] + 10 * paper,
      scale,
    }),
    ...openingNames(face, scale),
    ...pieces.filter(({ kind }) => kind !== "closure").flatMap((piece) => markItem(piece, { scale })),
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

function pieceItem(piece: Piece): Item {
  return {
    kind: "polygon",
    layer: layerName(piece.kind === "closure" ? "TRIM" : "BATTEN"),
    of: piece.mark,
    outline: piece.outline,
    holes: piece.holes,
    line: piece.kind === "closure" ? "detail" : "visible",
    fill: FILLS[piece.kind] ?? "timber",
  };
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
