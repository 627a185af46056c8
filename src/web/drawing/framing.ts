/** Where things lie on the drawing, and the views that hold a face or all of them. */
import type { Design } from "../../design.ts";
import { boxOf, leadOpening, type Pick } from "../picks/pick.ts";
import { frameRect, type Size } from "./camera.ts";
import type { Elevation } from "./elevation.ts";
import type { Home } from "./home.ts";

/** On screens narrower than this the view starts at one face. */
export const NARROW = 640;

export function middleOf(
  design: Design,
  elevation: Elevation,
  pick: Pick,
): readonly [number, number] | undefined {
  const box = boxOf(design, pick);
  const placed = elevation.faces.find(({ face }) => face.id === pick.face);
  return box && placed && [(box.x[0] + box.x[1]) / 2 + placed.dx, (box.y[0] + box.y[1]) / 2];
}

/** Room round a face for its name and dimensions, and beside the last one for the names of the lines, pixels. */
const ROUND_FACE = 64;
/** The layers are chosen over the drawing, above a face's name. */
const OVER_FACE = 92;
const LINE_NAMES = 150;

export function frameOf(elevation: Elevation, { face, size }: { face: string; size: Size }) {
  const placed = elevation.faces.find((one) => one.face.id === face);
  const narrow = size.width < NARROW;
  const last = placed === elevation.faces.at(-1) && !narrow;
  const margins = {
    left: narrow ? 34 : ROUND_FACE,
    right: last ? LINE_NAMES : narrow ? 34 : ROUND_FACE,
    top: OVER_FACE,
    bottom: ROUND_FACE,
  };
  return placed && frameRect(elevation, placed.extent, { size, margins });
}

/** The whole drawing, or on a narrow screen the face with the lead opening. */
export function startView({ elevation, camera }: Home, { design, size }: { design: Design; size: Size }) {
  const lead = size.width < NARROW ? leadOpening(design) : undefined;
  return (lead && frameOf(elevation, { face: lead.face, size })) ?? camera;
}
