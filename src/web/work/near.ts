/**
 * Sets out on the page's own thread: an edit is then drawn in the frame in which the hand makes it, with no question to a worker
 * between. Only while that is quick; it takes practice, since a browser compiles for speed what has run often.
 */
import { type FileLaid, type Laid, layFile, type ProjectFile } from "../../design.ts";
import { createReadMemo } from "../../project/read-memo.ts";
import { createFaceMemo, type FaceMemo, type KeptLayouts } from "../../setout/memo.ts";

/** The frame of a hand that moves has room for setting out that takes so long, milliseconds. */
const QUICK = 40;
/** Edits that are practised; where it is not quick after so many, some more now and then, but no more than this. */
const ENOUGH = 240;
const MOST = 400;
/** A machine on which as many edits have come no nearer to quick than this (milliseconds) leaves them to the worker. */
const TRIAL = { edits: 12, hopeless: 90 };

export interface Near {
  /** Goes on from what the worker has laid out of the project at hand: what it has not would hold the page up. */
  begin(kept: KeptLayouts): void;
  /** The file set out; undefined where that would hold the page up. */
  lay(file: ProjectFile): FileLaid | undefined;
  /** Whether more practice would help. */
  wantsPractice(): boolean;
  /** Sets an imagined edit out; the facade as it would be, undefined where the edit is refused. */
  practise(file: ProjectFile): Laid | undefined;
}

export function createNear(): Near {
  let faces = memoFrom();
  const read = createReadMemo();
  /** Milliseconds that setting out takes lately. */
  let pace = Number.POSITIVE_INFINITY;
  let practised = 0;
  const timed = (file: ProjectFile): FileLaid => {
    const start = performance.now();
    const laid = layFile(file, { faces, read, toDraw: true });
    // One that a collection of garbage held up says little of the next.
    const took = Math.min(performance.now() - start, 2 * QUICK);
    pace = Number.isFinite(pace) ? (3 * pace + took) / 4 : took;
    return laid;
  };
  const hopeless = (): boolean => practised >= TRIAL.edits && pace > TRIAL.hopeless;
  return {
    begin(kept) {
      faces = memoFrom(kept);
    },
    lay: (file) => (pace <= QUICK ? timed(file) : undefined),
    wantsPractice: () => !hopeless() && (practised < ENOUGH || (pace > QUICK && practised < MOST)),
    practise(file) {
      practised += 1;
      const made = timed(file);
      return made.kind === "laid" ? made.laid : undefined;
    },
  };
}

function memoFrom(from?: KeptLayouts): FaceMemo {
  return createFaceMemo({ spare: 2, shareds: 2, ...(from && { from }) });
}
