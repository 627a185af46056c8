/** The comb of leaders at a section's end: each layer's name and thickness, the outermost nearest. */
import type { Interval } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import type { Project } from "../../project/schema/project.ts";
import type { FaceLayout, PlacedLayer, ZonePlane } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { LABEL_STEP, TEXT } from "./style.ts";

/** How far into the section the leaders reach, and how far from it the first name stands, millimetres on paper. */
const TOUCH = 3;
const FIRST_ROW = 6;

export interface LayerLabel {
  readonly z: Interval;
  readonly text: Message;
}

/** What names of layers are made from. */
export interface Labelled {
  readonly plane: ZonePlane;
  readonly face: Pick<FaceLayout, "zones">;
  readonly project: Pick<Project, "structure" | "claddings">;
}

/** Layers from the inside out, the structure first. */
export function layerLabels({ plane, face, project }: Labelled): LayerLabel[] {
  const { sheathingThickness, studs } = project.structure;
  const bay: Interval = [-sheathingThickness - studs.depth, -sheathingThickness];
  return [
    { z: bay, text: message("drawing.layer.stud", { thickness: studs.depth }) },
    {
      z: [-sheathingThickness, 0],
      text: message("drawing.layer.sheathing", { thickness: sheathingThickness }),
    },
    ...plane.layers.map(
      (layer): LayerLabel => ({ z: layer.z, text: layerText(layer, { plane, face, project }) }),
    ),
  ];
}

function layerText(layer: PlacedLayer, { plane, face, project }: Labelled): Message {
  const thickness = layer.z[1] - layer.z[0];
  if (layer.kind !== "cladding") {
    return message(`drawing.layer.${layer.kind}`, { thickness, cavity: plane.cavity });
  }
  const zone = face.zones.find(({ id }) => id === plane.zone);
  const cladding = project.claddings.find(({ id }) => id === zone?.cladding);
  if (cladding?.kind !== "boards") return message("drawing.layer.sheet", { thickness });
  if (cladding.direction === "vertical") return message("drawing.layer.upright", { thickness });
  return message("drawing.layer.board", { thickness, bevel: cladding.bevelDeg });
}

/**
 * @param window heights that the section shows
 * @param namesAt the end of the section from which the comb stands out
 * @param right where the texts start
 */
export function labelComb(
  labels: readonly LayerLabel[],
  {
    window,
    namesAt,
    right,
    scale,
  }: { window: Interval; namesAt: "top" | "bottom"; right: number; scale: number },
): Item[] {
  const paper = 1 / scale;
  const [edge, out] = namesAt === "top" ? [window[1], 1] : [window[0], -1];
  return labels.map(({ z, text }, i): Item => {
    const middle = (z[0] + z[1]) / 2;
    const height = edge + out * (FIRST_ROW + (labels.length - 1 - i) * LABEL_STEP) * paper;
    const points: Point[] = [
      [middle, edge - out * TOUCH * paper],
      [middle, height],
      [right, height],
    ];
    return { kind: "leader", layer: layerName("FRAME", "T"), points, text, height: TEXT };
  });
}
