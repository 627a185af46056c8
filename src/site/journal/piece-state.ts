/** What was told of one piece. */
import type { Stage } from "./entry.ts";

export interface Tick {
  readonly id: string;
  /** By the device's clock: ISO 8601, UTC. */
  readonly told: string;
}

/** One piece, and the entries that say so for each stage; a stage that nobody told is absent. */
export interface PieceState {
  /** The furthest that was told. A piece that is fixed was cut, whether or not anyone ticked that. */
  readonly stage: Stage;
  /** The ticks that count, in the order of devices and their counts: who takes a stage back names them all. */
  readonly ticks: { readonly [S in Stage]?: readonly Tick[] };
}
