/** What goes behind the battens of a surveyed face: packing at every crossing, and where the wall is planed off. */
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import type { PackedCrossing, Packing } from "../../site/survey/packing.ts";
import { message } from "../../text/message.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { type LayerElement, layerName } from "../roles.ts";
import { faceExtent, heading } from "./extent.ts";
import { openingItems, openingNames, penetrationItems } from "./openings.ts";
import { fittingScale } from "./scales.ts";
import { TEXT } from "./style.ts";

/** What an A3 sheet leaves for the face itself, mm on paper. */
const ROOM = [340, 190] as const;
/** Beside the screw that it belongs to, mm on paper. */
export const BESIDE = 1.2;

/** The map of one face; undefined when the facade has no such face. */
export function packingMap(
  { facade, project }: { readonly facade: Pick<Facade, "faces">; readonly project: Pick<Project, "faces"> },
  { face: id, packing }: { readonly face: string; readonly packing: Packing },
  options: { readonly scale?: number } = {},
): Scene | undefined {
  const face = facade.faces.find((one) => one.id === id);
  if (!face) return undefined;
  const scale = options.scale ?? fittingScale(faceExtent(face), { room: ROOM });
  const battens = face.pieces.filter(({ kind }) => kind === "batten");
  const items: Item[] = [
    { kind: "polygon", layer: layerName("STRUCT"), of: face.id, outline: face.outline, line: "visible" },
    ...openingItems(face),
    ...penetrationItems(project, face.id),
    ...battens.map(
      ({ mark, outline }): Item => ({
        kind: "polygon",
        layer: layerName("BATTEN"),
        of: mark,
        outline,
        line: "detail",
        fill: "batten",
      }),
    ),
    ...openingNames(face, scale),
    ...packing.crossings.flatMap((one) =>
      crossingItems(one, { scale, figure: hasNear(one, packing.crossings, scale) ? "left" : "right" }),
    ),
  ];
  return makeScene({
    id: `packing-${face.id}`,
    title: message("survey.map.title", { face: heading(face.id) }),
    scale,
    items,
  });
}

/** A figure needs so much beside its screw and over it, mm on paper. */
export const FIGURE = [7, TEXT] as const;

/** Whether another crossing stands where the figure of this one would: it then stands on the other side. */
function hasNear({ x, y }: PackedCrossing, crossings: readonly PackedCrossing[], scale: number): boolean {
  return crossings.some(
    (other) => other.x > x && (other.x - x) * scale < FIGURE[0] && Math.abs(other.y - y) * scale < FIGURE[1],
  );
}

/**
 * The screw, and beside it the packing; what is planed off stands in red with a stroke before it.
 * @param figure the side on which it stands; left out where there is no room for it
 */
export function crossingItems(
  { batten, x, y, packers, planeOff }: PackedCrossing,
  {
    scale,
    figure,
    element = "FIXING",
  }: {
    readonly scale: number;
    readonly figure: "left" | "right" | undefined;
    readonly element?: LayerElement;
  },
): Item[] {
  const sum = packers.reduce((all, one) => all + one, 0);
  const paper = 1 / scale;
  const screw: Item = {
    kind: "circle",
    layer: layerName(element),
    of: batten,
    centre: [x, y],
    radius: 0.4 * paper,
    fill: "ink",
  };
  if (!figure) return [screw];
  const toLeft = figure === "left";
  return [
    screw,
    {
      kind: "text",
      layer: layerName(element, "T"),
      of: batten,
      at: [x + (toLeft ? -BESIDE : BESIDE) * paper, y],
      anchor: toLeft ? "end" : "start",
      text:
        planeOff > 0 ? message("survey.map.plane", { by: planeOff }) : message("survey.map.pack", { sum }),
      height: TEXT,
      baseline: "middle",
      ink: planeOff > 0 ? "red" : "ink",
      ...(planeOff > 0 && { weight: "bold" as const }),
      plate: "paper",
    },
  ];
}
