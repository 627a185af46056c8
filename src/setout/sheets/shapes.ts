/** What sizes of sheet a zone can be clad with, standing or lying as the cladding asks. */
import type { SheetZone } from "./zone.ts";

/** A sheet as it hangs on the wall, its trimmed edges taken off (mm). */
export interface Shape {
  readonly width: number;
  readonly height: number;
}

const NOISE_MM = 1e-9;

export function shapesOf({ stock, trim, cladding }: SheetZone): Shape[] {
  const lay = cladding.lay ?? "upright";
  return stock.flatMap(({ width, height }) => {
    const short = Math.min(width, height) - 2 * trim;
    const long = Math.max(width, height) - 2 * trim;
    return [
      ...(lay === "lying" ? [] : [{ width: short, height: long }]),
      ...(lay === "upright" ? [] : [{ width: long, height: short }]),
    ];
  });
}

/** The tallest sheet at least this wide; the tallest of all where none is wide enough. */
export function tallestAt(shapes: readonly Shape[], width: number): number {
  let tallest = 0;
  let ofAll = 0;
  for (const shape of shapes) {
    if (shape.width >= width - NOISE_MM) tallest = Math.max(tallest, shape.height);
    ofAll = Math.max(ofAll, shape.height);
  }
  return tallest === 0 ? ofAll : tallest;
}

export function fitsShape(shapes: readonly Shape[], { width, height }: Shape): boolean {
  for (const shape of shapes) {
    if (shape.width >= width - NOISE_MM && shape.height >= height - NOISE_MM) return true;
  }
  return false;
}

/** The module that slivers are measured by: the short side of the widest sheet (mm). */
export function moduleOf({ stock }: SheetZone): number {
  return Math.max(...stock.map(({ width, height }) => Math.min(width, height)));
}
