/** The plane that faces unfold into, as the developed elevation sets them side by side. */
import { polygonBounds } from "../../geometry/polygon.ts";
import { placeAll } from "../../scene/views/developed-elevation.ts";
import type { Facade, FaceLayout } from "../../setout/facade.ts";
import { type Placing, placed, standing, turnsOf, unfolding, type Vector } from "./placing.ts";

/** The paper's scale at which the developed elevation sets its faces apart. */
const APART = 1 / 100;

/** Where the origins of faces lie in the plane that they unfold into: their middle stays where the building's is. */
export function spotsInPlane(facade: Facade): Vector[] {
  const spots = new Map(placeAll(facade, APART).map((one) => [one.face, one]));
  const ends = [...spots.values()].flatMap(({ from, to }) => [from, to]);
  const corners = cornersOf(facade.faces);
  const middle = (Math.min(...corners.map(([x]) => x)) + Math.max(...corners.map(([x]) => x))) / 2;
  const shift = middle - (Math.min(...ends) + Math.max(...ends)) / 2;
  const front = Math.min(...corners.map(([, y]) => y));
  return facade.faces.map((face) => [(spots.get(face)?.dx ?? 0) + shift, front, 0]);
}

/** Corners of all faces as they stand, down to the ground (building frame, mm). */
export function cornersOf(faces: readonly FaceLayout[]): Vector[] {
  return faces.flatMap((face) => cornersOn(face, standing(face.frame)));
}

/** The corners of faces in the plane that they unfold into. */
export function cornersInPlane(facade: Facade): Vector[] {
  const spots = spotsInPlane(facade);
  const turns = turnsOf(facade.faces);
  return facade.faces.flatMap((face, i) =>
    cornersOn(face, unfolding(face.frame, { turn: turns[i] ?? 0, to: spots[i] ?? [0, 0, 0], part: 1 })),
  );
}

function cornersOn({ outline, ground }: FaceLayout, placing: Placing): Vector[] {
  const { x, y } = polygonBounds([...outline, ...ground]);
  return x.flatMap((px) => y.map((py) => placed(placing, [px, py, 0])));
}
