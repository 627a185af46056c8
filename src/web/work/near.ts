/**
 * Sets out on the page's own thread: an edit is then drawn in the frame in which the hand makes it, with no question to a worker
 * between. Only while that is quick; it takes practice, since a browser compiles for speed what has run often.
 */
import { type FileLaid, layFile, type ProjectFile } from "../../design.ts";
import { createReadMemo } from "../../project/read-memo.ts";
import { createFaceMemo, type KeptLayouts } from "../../setout/memo.ts";

/** The frame of a hand that moves has room for setting out that takes so long, milliseconds. */
const QUICK = 40;
/** Edits that are practised at most. */
const ENOUGH = 90;
/** A machine on which as many edits have come no nearer to quick than this (milliseconds) leaves them to the worker. */
const TRIAL = { edits: 12, hopeless: 90 };

export interface Near {
  /** The file set out; undefined where that would hold the page up. */
  lay(file: ProjectFile): FileLaid | undefined;
  /** Sets an imagined edit out, for practice; false where more would not help. */
  practise(file: ProjectFile): boolean;
}

/** @param kept what the worker has laid out of the project at hand */
export function createNear(kept: KeptLayouts): Near {
  const faces = createFaceMemo({ spare: 24, shareds: 2, from: kept });
  const read = createReadMemo();
  /** Milliseconds that setting out takes lately. */
  let pace = Number.POSITIVE_INFINITY;
  let practised = 0;
  const timed = (file: ProjectFile): FileLaid => {
    const start = performance.now();
    const laid = layFile(file, { faces, read, toDraw: true });
    const took = performance.now() - start;
    pace = Number.isFinite(pace) ? (3 * pace + took) / 4 : took;
    return laid;
  };
  return {
    lay: (file) => (pace <= QUICK ? timed(file) : undefined),
    practise(file) {
      timed(file);
      practised += 1;
      return practised < ENOUGH && !(practised >= TRIAL.edits && pace > TRIAL.hopeless);
    },
  };
}
