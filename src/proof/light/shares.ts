/** Even light of sky and ground through a slot or on a point, before which eaves or side walls may stand. */

import type { Slot } from "../../equations/light/slot.ts";
import { slotExchange } from "../../equations/light/slot-exchange.ts";
import { slotSkyShare } from "../../equations/light/slot-sky-share.ts";
import {
  type Directions,
  openWindowShare,
  slotWindowShare,
} from "../../equations/light/slot-window-share.ts";
import { viewShare } from "../../equations/light/view-share.ts";
import type { Across } from "./face-sun.ts";
import type { Shade } from "./model.ts";

export interface Standing {
  readonly across: Across;
  readonly shade: Shade;
}

/** Shares of an evenly bright sky and of an evenly bright ground, each at most a half. */
export interface EvenShares {
  readonly sky: number;
  readonly ground: number;
}

/** Tangents between which sky or ground is seen past what stands before the wall. */
function directions(of: "sky" | "ground", { across, shade }: Standing): Directions {
  const bottom = of === "sky" ? 0 : -Infinity;
  const top = of === "sky" ? shade.up : 0;
  return across === "level"
    ? { acrossFrom: bottom, acrossTo: top, alongFrom: -shade.left, alongTo: shade.right }
    : { acrossFrom: -shade.left, acrossTo: shade.right, alongFrom: bottom, alongTo: top };
}

const sidesOpen = ({ left, right }: Shade): boolean => left === Infinity && right === Infinity;

export function slotShares(slot: Slot, standing: Standing): EvenShares {
  const { across, shade } = standing;
  if (sidesOpen(shade) && (across === "level" || shade.up === Infinity)) {
    const whole = slotExchange(slot);
    if (across === "upright") return { sky: whole / 2, ground: whole / 2 };
    const skyToDeg = degrees(shade.up);
    return {
      sky: slotSkyShare({ skyToDeg, ...slot }),
      ground: whole - slotSkyShare({ skyToDeg: 90, ...slot }),
    };
  }
  return {
    sky: slotWindowShare({ ...slot, ...directions("sky", standing) }),
    ground: slotWindowShare({ ...slot, ...directions("ground", standing) }),
  };
}

/** On a point that sees out between two tangents across its slot. */
export function pointShares(seen: readonly [number, number], standing: Standing): EvenShares {
  return {
    sky: pointShare(seen, directions("sky", standing)),
    ground: pointShare(seen, directions("ground", standing)),
  };
}

function pointShare([low, high]: readonly [number, number], window: Directions): number {
  const { alongFrom, alongTo } = window;
  const from = Math.max(low, window.acrossFrom);
  const to = Math.min(high, window.acrossTo);
  if (from >= to) return 0;
  const endless = (alongFrom === -Infinity ? 1 : 0) + (alongTo === Infinity ? 1 : 0);
  const level = (alongFrom === 0 ? 1 : 0) + (alongTo === 0 ? 1 : 0);
  if (endless + level < 2) return openWindowShare({ ...window, acrossFrom: from, acrossTo: to });
  return (endless / 2) * viewShare({ fromDeg: degrees(from), toDeg: degrees(to) });
}

/** On the bare wall. */
export function wallShares({ shade }: Pick<Standing, "shade">): EvenShares {
  if (sidesOpen(shade)) return pointShares([-Infinity, Infinity], { across: "level", shade });
  // Seen across from side to side, which is bounded; up and down may be endless.
  const sides = (at: number): number => Math.min(at, WIDEST);
  const bounded = { ...shade, left: sides(shade.left), right: sides(shade.right) };
  return pointShares([-WIDEST, WIDEST], { across: "upright", shade: bounded });
}

/** From here on a window is as good as endless: what lies beyond is under a millionth. */
const WIDEST = 1000;

function degrees(tangent: number): number {
  return (Math.atan(tangent) * 180) / Math.PI;
}
