/**
 * Even light through a slot from a window of directions, bounded both across and along it: what is left of the sky to an
 * upright slot under eaves, or to a level slot between two side walls. Along the slot the integral is closed; across it
 * eight-point Gauss quadrature between the kinks stands for it, to 1e-6.
 */
import { equation } from "../equation.ts";
import { OWN_GEOMETRY, SLOT_INPUTS, type Slot, slope } from "./slot.ts";

/** Tangents of the angles from the wall's normal that bound the window. */
export interface SlotWindow extends Slot {
  readonly acrossFrom: number;
  readonly acrossTo: number;
  readonly alongFrom: number;
  readonly alongTo: number;
}

/** Abscissae and weights of eight-point Gauss quadrature over −1 to 1, one side of its symmetry. */
const GAUSS: readonly (readonly [at: number, weight: number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
];

/** Share of even light on the front, 0 to 1; 0 for an empty window. */
export function slotWindowShare(window: SlotWindow): number {
  const ratio = window.thicknessMm / window.gapMm;
  const middle = -slope(window);
  return evenShare(
    {
      ...window,
      acrossFrom: Math.max(window.acrossFrom, middle - 1 / ratio),
      acrossTo: Math.min(window.acrossTo, middle + 1 / ratio),
    },
    { kinks: [middle], weigh: (q) => 1 - ratio * Math.abs(q - middle) },
  );
}

/** Tangents of the angles from the wall's normal that bound directions; across must be finite. */
export type Directions = Omit<SlotWindow, keyof Slot>;

/** Share of even light on a free surface that comes from a window of directions, 0 to 1. */
export function openWindowShare(window: Directions): number {
  return evenShare(window, { kinks: [], weigh: () => 1 });
}

/** Quadrature is cut here as well, so that wide windows are as exact as narrow ones. */
const CUTS: readonly number[] = [-8, -4, -2, -1, -0.5, 0, 0.5, 1, 2, 4, 8];

function evenShare(
  window: Directions,
  { kinks, weigh }: { readonly kinks: readonly number[]; readonly weigh: (q: number) => number },
): number {
  const { acrossFrom: from, acrossTo: to } = window;
  if (from >= to || window.alongFrom >= window.alongTo) return 0;
  const ends = [from, ...[...kinks, ...CUTS].filter((at) => at > from && at < to), to].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 0; i + 1 < ends.length; i++) {
    const [a, b] = [ends[i] as number, ends[i + 1] as number];
    const half = (b - a) / 2;
    for (const [at, weight] of GAUSS) {
      for (const q of [(a + b) / 2 - half * at, (a + b) / 2 + half * at]) {
        sum += half * weight * weigh(q) * along(q, window);
      }
    }
  }
  return sum / Math.PI;
}

/** ∫ (1 + q² + u²)⁻² du between the window's ends along the slot. */
function along(q: number, { alongFrom, alongTo }: Directions): number {
  const a2 = 1 + q * q;
  const a = Math.sqrt(a2);
  const until = (u: number): number => {
    const straight = Number.isFinite(u) ? u / (2 * a2 * (a2 + u * u)) : 0;
    return straight + Math.atan(u / a) / (2 * a2 * a);
  };
  return until(alongTo) - until(alongFrom);
}

export const SLOT_WINDOW_SHARE = equation({
  name: "slot-window-share",
  formula:
    "1/π · ∫∫ max(0, 1 − thicknessMm/gapMm · |q + tan bevelDeg|)/(1 + q² + u²)² du dq, q from acrossFrom to acrossTo, u from alongFrom to alongTo",
  inputs: [
    ...SLOT_INPUTS,
    { key: "acrossFrom", unit: "1", range: [-1000, 1000] },
    { key: "acrossTo", unit: "1", range: [-1000, 1000] },
    { key: "alongFrom", unit: "1", range: [-1000, 1000] },
    { key: "alongTo", unit: "1", range: [-1000, 1000] },
  ],
  result: { unit: "1" },
  source: OWN_GEOMETRY,
  work: slotWindowShare,
});
