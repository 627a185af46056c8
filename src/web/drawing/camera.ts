/** Looking at the elevation: where the middle of the view lies, and how large a millimetre is. */
import type { Rect } from "../../geometry/rect.ts";
import type { Elevation, PlacedFace } from "./elevation.ts";

export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * The middle of the view in the frame of a face: faces stand closer or farther apart on drawings of other scales, and
 * what the reader looks at must stay where it is.
 */
export interface Camera {
  readonly face: string;
  readonly x: number;
  readonly y: number;
  /** Pixels for a millimetre of the wall. */
  readonly k: number;
}

/** Pixels for a millimetre of paper: 2.5 mm letters are 12 pixels of type. */
export const PAPER = 3.4;

/** Steps of scale between two doublings, at which the drawing is made anew. */
const STEPS = 2;

/** Pixels for a millimetre of the wall, at most. */
const NEAREST = 2.4;

/** How much smaller than the whole drawing it may get. */
const FARTHEST = 0.6;

/** The scale of the drawing for a view, in steps from that of the whole: letters keep about their size. */
export function stepScale({ k, homeScale }: { k: number; homeScale: number }): number {
  const step = Math.max(0, Math.round(Math.log2(k / (homeScale * PAPER)) * STEPS));
  return homeScale * 2 ** (step / STEPS);
}

export function clampZoom(k: number, homeK: number): number {
  return Math.min(Math.max(k, homeK * FARTHEST), Math.max(NEAREST, homeK * 4));
}

function placedFace(elevation: Elevation, id: string): PlacedFace | undefined {
  return elevation.faces.find(({ face }) => face.id === id) ?? elevation.faces[0];
}

/** The middle of the view on a drawing. */
export function centreOn(elevation: Elevation, camera: Camera): readonly [x: number, y: number] {
  return [camera.x + (placedFace(elevation, camera.face)?.dx ?? 0), camera.y];
}

/** The face nearest to an x of a drawing. */
function faceNear(elevation: Elevation, x: number): string {
  const far = ({ extent }: PlacedFace): number => Math.max(extent.x[0] - x, x - extent.x[1], 0);
  const nearest = elevation.faces.reduce<PlacedFace | undefined>(
    (best, one) => (best && far(best) <= far(one) ? best : one),
    undefined,
  );
  return nearest?.face.id ?? "";
}

/**
 * The view whose middle is at a point of a drawing.
 * @param still an x that stays where it is when the drawing is made anew; the middle unless told
 */
function lookAt(
  elevation: Elevation,
  { x, y, k, still = x }: { x: number; y: number; k: number; still?: number },
): Camera {
  const face = faceNear(elevation, still);
  const { bounds } = elevation;
  // Some of the drawing always stays in view.
  const middle = Math.min(Math.max(x, bounds.x[0]), bounds.x[1]);
  return {
    face,
    x: middle - (placedFace(elevation, face)?.dx ?? 0),
    y: Math.min(Math.max(y, bounds.y[0]), bounds.y[1]),
    k,
  };
}

export function panBy(elevation: Elevation, camera: Camera, { dx, dy }: { dx: number; dy: number }): Camera {
  const [x, y] = centreOn(elevation, camera);
  return lookAt(elevation, { x: x - dx / camera.k, y: y + dy / camera.k, k: camera.k });
}

/** Zooms so that what is under a point of the view (pixels from its middle, y down) stays there. */
export function zoomAbout(
  elevation: Elevation,
  camera: Camera,
  { k, at }: { k: number; at: readonly [number, number] },
): Camera {
  const [x, y] = centreOn(elevation, camera);
  const slide = 1 / camera.k - 1 / k;
  return lookAt(elevation, { x: x + at[0] * slide, y: y - at[1] * slide, k, still: x + at[0] / camera.k });
}

/** Pixels to keep free on each side of what is framed. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The view that shows a rectangle of the drawing whole. */
export function frameRect(
  elevation: Elevation,
  rect: Rect,
  { size, margins }: { size: Size; margins: Margins },
): Camera {
  const { left, right, top, bottom } = margins;
  const k = Math.min(
    Math.max(size.width - left - right, 40) / Math.max(rect.x[1] - rect.x[0], 1),
    Math.max(size.height - top - bottom, 40) / Math.max(rect.y[1] - rect.y[0], 1),
    NEAREST,
  );
  return lookAt(elevation, {
    x: (rect.x[0] + rect.x[1] + (right - left) / k) / 2,
    y: (rect.y[0] + rect.y[1] + (top - bottom) / k) / 2,
    k,
  });
}
