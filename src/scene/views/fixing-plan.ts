/** Every screw of a face's cladding by its kind, with the strips in which the wind pulls unlike. */
import type { WindDemand } from "../../codes/packs/index.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import { bandPressures } from "../../proof/wind/uses.ts";
import type { Facade, FaceLayout, Piece } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { type FillRole, layerName } from "../roles.ts";
import { faceExtent, heading } from "./extent.ts";
import { fixingMark } from "./fixing-marks.ts";
import { openingItems, openingNameBoxes, openingNames, penetrationItems } from "./openings.ts";
import { markItems } from "./piece-marks.ts";
import { fittingScale } from "./scales.ts";
import { DIMENSION_STEP } from "./style.ts";
import { windStripItems } from "./wind-strips.ts";

/** What an A3 sheet leaves for the face itself, mm on paper. */
const ROOM = [285, 128] as const;

/** More places than this along a face run into each other: the schedule has them. */
const MOST_PLACES = 48;

/** Undefined where the facade has no such face, or nothing on it is clad. */
export function fixingPlan(
  facade: Pick<Facade, "faces">,
  project: Pick<Project, "faces">,
  {
    face: id,
    wind,
    scale: asked,
  }: { readonly face: string; readonly wind: WindDemand | undefined; readonly scale?: number },
): Scene | undefined {
  const face = facade.faces.find((one) => one.id === id);
  const clad =
    face?.pieces.filter(({ kind }) => kind === "sheet" || kind === "board" || kind === "post") ?? [];
  if (!face || clad.length === 0) return undefined;
  const extent = faceExtent(face);
  const scale = asked ?? fittingScale(extent, { room: ROOM });
  const paper = 1 / scale;
  const sheets = clad.filter(({ kind }) => kind === "sheet");
  const texts = openingNameBoxes(face, scale);
  return makeScene({
    id: `fixings-${face.id}`,
    title: message("drawing.title.fixing-plan", { face: heading(face.id) }),
    scale,
    items: [
      ...clad.map(pieceItem),
      ...openingItems(face),
      ...penetrationItems(project, face.id),
      ...clad.flatMap((piece) => piece.fixings.map((one) => fixingMark(one, { of: piece.mark, scale }))),
      ...openingNames(face, scale),
      ...markItems(sheets, { scale, texts }),
      ...(wind ? windStripItems(bandPressures(face, wind), { y: extent.y, scale }) : []),
      ...places(clad, face, paper),
    ],
  });
}

function pieceItem({ mark, kind, outline, holes }: Piece): Item {
  const fill: FillRole = kind === "sheet" ? "sheet" : "paper";
  const layer = layerName(kind === "sheet" ? "SHEET" : "BOARD");
  return { kind: "polygon", layer, of: mark, outline, holes, line: "detail", fill };
}

/** The places of the screws of sheets, or of boards where there are none, along both sides of the face. */
function places(clad: readonly Piece[], face: FaceLayout, paper: number): Item[] {
  const sheets = clad.filter(({ kind }) => kind === "sheet");
  const from = (sheets.length > 0 ? sheets : clad).flatMap(({ fixings }) => fixings);
  const extent = faceExtent(face);
  const own = polygonBounds(face.outline);
  const rising = (all: readonly number[]): number[] => [...new Set(all.map(snap))].sort((a, b) => a - b);
  const xs = rising([...own.x, ...from.map(({ x }) => x)]);
  const ys = rising([own.y[0], ...from.map(({ y }) => y)]);
  const layer = layerName("FIXING", "D");
  const items: Item[] = [];
  if (xs.length <= MOST_PLACES && xs.length > 1)
    items.push({
      kind: "dimension",
      layer,
      of: face.id,
      style: "running",
      along: "x",
      at: extent.y[0] - DIMENSION_STEP * paper,
      from: extent.y[0],
      points: xs,
      origin: own.x[0],
    });
  if (ys.length <= MOST_PLACES && ys.length > 1 && sheets.length > 0)
    items.push({
      kind: "dimension",
      layer,
      of: face.id,
      style: "running",
      along: "y",
      at: extent.x[0] - DIMENSION_STEP * paper,
      from: extent.x[0],
      points: ys,
      origin: 0,
    });
  return items;
}
