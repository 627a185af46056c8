/** The whole drawing in the room that there is: the scale at which walls and letters together just fit. */
import type { Design } from "../../design.ts";
import { faceExtent } from "../../scene/views/extent.ts";
import { type Camera, frameRect, PAPER, type Size } from "./camera.ts";
import { drawElevation, type Elevation, type ElevationOptions } from "./elevation.ts";

export interface Home {
  readonly elevation: Elevation;
  readonly camera: Camera;
}

/** Pixels kept free round the drawing. */
const MARGIN = 18;

/** On paper no wall is drawn smaller than this, however narrow the screen: there the view shows a part. */
const LEAST_SCALE = 1 / 600;
const MOST_SCALE = 1 / 20;

/** What letters, rods and dimensions usually take beside and over the walls, mm of paper: a first guess. */
const USUAL_LETTERS = { x: 62, y: 42 };

/** A guess this near is kept: letters are then a little larger or smaller than they might be. */
const NEAR = 0.07;

export function findHome(
  design: Design,
  { size, ...options }: Omit<ElevationOptions, "scale"> & { size: Size },
): Home {
  const room = {
    x: Math.max(size.width - 2 * MARGIN, 60) / PAPER,
    y: Math.max(size.height - 2 * MARGIN, 60) / PAPER,
  };
  const extents = design.facade.faces.map(faceExtent);
  const walls = {
    x: Math.max(
      extents.reduce((sum, { x }) => sum + x[1] - x[0], 0),
      1,
    ),
    y: Math.max(...extents.map(({ y }) => y[1] - y[0]), 1),
  };
  const fitting = (letters: { readonly x: number; readonly y: number }): number => {
    const least = Math.min((room.x - letters.x) / walls.x, (room.y - letters.y) / walls.y);
    return Math.max(Math.min(least, MOST_SCALE), LEAST_SCALE);
  };
  let scale = fitting(USUAL_LETTERS);
  let elevation = drawElevation(design, { ...options, scale });
  const { x, y } = elevation.bounds;
  // Letters keep their size while walls shrink.
  const better = fitting({ x: (x[1] - x[0] - walls.x) * scale, y: (y[1] - y[0] - walls.y) * scale });
  if (Math.abs(better / scale - 1) > NEAR) {
    scale = better;
    elevation = drawElevation(design, { ...options, scale });
  }
  const camera = frameRect(elevation, elevation.bounds, {
    size,
    margins: { left: MARGIN, right: MARGIN, top: MARGIN, bottom: MARGIN },
  });
  // On a narrow screen the drawing reaches past the view and is moved by hand, rather than be too small to read.
  return { elevation, camera: { ...camera, k: Math.max(camera.k, scale * PAPER * 0.9) } };
}
