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
  const sides = { from: -shade.left, to: shade.right };
  const height = of === "sky" ? { from: 0, to: shade.up } : { from: -Infinity, to: 0 };
  const [over, length] = across === "level" ? [height, sides] : [sides, height];
  return { acrossFrom: over.from, acrossTo: over.to, alongFrom: length.from, alongTo: length.to };
}

const sidesOpen = ({ left, right }: Shade): boolean => left === Infinity && right === Infinity;

export function slotShares(slot: Slot, standing: Standing): EvenShares {
  const { across, shade } = standing;
  if (sidesOpen(shade) && (across === "level" || shade.up === Infinity)) {
    const whole = slotExchange(slot);
    if (across === "upright") return { sky: whole / 2, ground: whole / 2 };
    const skyToDeg = degrees(shade.up);
    return {
      sky: slotSkyShare({ ...slot, skyToDeg }),
      ground: whole - slotSkyShare({ ...slot, skyToDeg: 90 }),
    };
  }
  return {
    sky: slotWindowShare({ ...slot, ...directions("sky", standing) }),
    ground: slotWindowShare({ ...slot, ...directions("ground", standing) }),
  };
}

/** On a point that sees out between two tangents across its slot. */
export function pointShares([low, high]: readonly [number, number], standing: Standing): EvenShares {
  const seen = (of: "sky" | "ground"): number => {
    const window = directions(of, standing);
    const from = Math.max(low, window.acrossFrom);
    const to = Math.min(high, window.acrossTo);
    if (from >= to) return 0;
    const ends = [window.alongFrom, window.alongTo].map((at) => Math.abs(at));
    if (ends.every((at) => at === Infinity || at === 0)) {
      const length = ends.filter((at) => at === Infinity).length / 2;
      return length * viewShare({ fromDeg: degrees(from), toDeg: degrees(to) });
    }
    return openWindowShare({ ...window, acrossFrom: from, acrossTo: to });
  };
  return { sky: seen("sky"), ground: seen("ground") };
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
