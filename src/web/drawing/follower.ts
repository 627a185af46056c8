/**
 * Follows a hand that holds something: at most one move a frame, begun as soon as the hand has moved. A browser tells of moves when
 * it begins a frame; what is set out only then is painted late, and the time before it has gone unused.
 */

/** What browsers tell moves by as they come, where they know it. */
export const RAW_MOVES = "pointerrawupdate";

export interface Follower<At> {
  /** The hand is there now. */
  to(at: At): void;
  /** Makes the move that waits, since the hand lets go. */
  finish(): void;
  /** Forgets the move that waits. */
  drop(): void;
}

export function createFollower<At>(move: (at: At) => void): Follower<At> {
  let waiting: { readonly at: At } | undefined;
  /** The coming frame has its move. */
  let moved = false;
  let asked = false;
  // A message comes after the moves that wait before it, and before the next frame.
  const soon = new MessageChannel();
  const ask = (): void => {
    if (asked || moved) return;
    asked = true;
    soon.port2.postMessage(undefined);
  };
  const finish = (): void => {
    const at = waiting;
    waiting = undefined;
    if (at) move(at.at);
  };
  soon.port1.onmessage = () => {
    asked = false;
    if (!waiting || moved) return;
    moved = true;
    requestAnimationFrame(() => {
      moved = false;
      if (waiting) ask();
    });
    finish();
  };
  return {
    to(at) {
      waiting = { at };
      ask();
    },
    finish,
    drop() {
      waiting = undefined;
    },
  };
}
