/** Sizes that all views share, millimetres on paper. Text heights from the ISO 3098 series 2.5, 3.5, 5. */
export const TEXT = 2.5;
export const NAME = 3.5;

/** From one dimension line to the next, and from the drawing to the first. */
export const DIMENSION_STEP = 9;

/** Radius at which a sheet's fixing is seen: drawn larger than its head, less so the smaller the scale. */
export function fixingRadius(scale: number): number {
  return Math.min(0.55, Math.max(0.3, 26 * scale));
}
export const SCREW_RADIUS = 0.3;

/** The step in which widths of gaps and joints are written, mm. */
export function tenth(mm: number): number {
  return Math.round(mm * 10) / 10;
}

/** Between labels in a column. */
export const LABEL_STEP = TEXT * 1.6;
