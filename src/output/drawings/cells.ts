/** Lengths in tables, rounded for what is done with them, in steps that the reader's tape has. */
import { type Message, message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import { MM_PER_INCH } from "../../units/length.ts";
import { cutLengthMm, gapMm, positionMm } from "../../units/rounding.ts";

/** What of a reader lengths in tables are rounded for; their words come when a sheet is written. */
export type Tape = Pick<Reader, "units" | "denominator">;

export interface LengthCells {
  /** Down: a piece a little short goes in. */
  readonly cut: (mm: number) => Message;
  /** Down, to a tenth: fences are set finer than tapes are read. */
  readonly rip: (mm: number) => Message;
  readonly place: (mm: number) => Message;
  /** Up: drills come in tenths. */
  readonly hole: (mm: number) => Message;
  readonly size: (mm: number) => Message;
}

export function lengthCells({ units, denominator }: Tape): LengthCells {
  const inch = MM_PER_INCH / denominator;
  const [tape, fine] = units === "mm" ? [0.5, 0.1] : [inch, inch];
  const cell = (value: number): Message => message("drawing.length", { value });
  return {
    cut: (mm) => cell(cutLengthMm(mm, { step: tape })),
    rip: (mm) => cell(cutLengthMm(mm, { step: fine })),
    place: (mm) => cell(positionMm(mm, { step: tape })),
    hole: (mm) => cell(gapMm(mm, { step: fine })),
    size: cell,
  };
}

/** A number with its decimals. */
export function figure(value: number, decimals: 0 | 1 | 2): Message {
  return message(`drawing.figure-${decimals}`, { value });
}
