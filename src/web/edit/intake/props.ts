import type { Source } from "../../../project/editing/change.ts";
import type { Taken } from "../../../project/intake/taken.ts";

export interface TakeDrawingProps {
  /** The face that gets the drawing; a project is begun with it where absent. */
  readonly into?: { readonly source: Source; readonly face: string } | undefined;
  /** Takes what is shown, once it is pressed. */
  onTake(taken: Extract<Taken, { ok: true }>): void;
}
