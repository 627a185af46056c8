/** Where the words of a step stand: beside the place that they speak of, inside the window. */
import type { Place } from "./use-place.ts";

interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Between the place, the words and the window's edge, pixels. */
const APART = 14;

/** The corner from which the words are written; a place too large to stand beside is written over at its foot. */
export function beside(
  place: Place | undefined,
  { words, window }: { readonly words: Extent; readonly window: Extent },
): { readonly left: number; readonly top: number } {
  const most = { left: window.width - words.width - APART, top: window.height - words.height - APART };
  const within = (value: number, high: number): number => Math.max(APART, Math.min(value, high));
  if (!place) return { left: within(most.left / 2, most.left), top: within(most.top, most.top) };
  const right = place.left + place.width;
  const foot = place.top + place.height;
  const along = within(place.top, most.top);
  const across = within(place.left, most.left);
  const ways = [
    { left: right + APART, top: along },
    { left: place.left - APART - words.width, top: along },
    { left: across, top: foot + APART },
    { left: across, top: place.top - APART - words.height },
  ];
  const fits = ({ left, top }: { left: number; top: number }): boolean =>
    left >= APART && left <= most.left && top >= APART && top <= most.top;
  return ways.find(fits) ?? { left: within(right - words.width - APART, most.left), top: most.top };
}
