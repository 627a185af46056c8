/** The short turn of the faces from the developed elevation into the building, and back. */
import { useCallback, useEffect, useRef, useState } from "react";

/** Milliseconds; nothing where the reader asked for less motion. */
const TURN = 700;

/**
 * How far unfolded the faces are: from 1 at first to 0.
 * @returns the part, and what unfolds them again and then tells
 */
export function useUnfolded(): readonly [part: number, unfold: (told: () => void) => void] {
  const [part, setPart] = useState(() => (isStill() ? 0 : 1));
  const now = useRef(part);
  const frame = useRef(0);
  const turnTo = useCallback((to: 0 | 1, told?: () => void): void => {
    cancelAnimationFrame(frame.current);
    const from = now.current;
    let began: number | undefined;
    const step = (at: number): void => {
      began ??= at;
      const share = isStill() ? 1 : Math.min(1, (at - began) / TURN);
      now.current = from + (to - from) * share * share * (3 - 2 * share);
      setPart(now.current);
      if (share < 1) frame.current = requestAnimationFrame(step);
      else told?.();
    };
    frame.current = requestAnimationFrame(step);
  }, []);
  useEffect(() => {
    turnTo(0);
    return () => cancelAnimationFrame(frame.current);
  }, [turnTo]);
  return [part, useCallback((told: () => void) => turnTo(1, told), [turnTo])];
}

function isStill(): boolean {
  return matchMedia("(prefers-reduced-motion: reduce)").matches;
}
