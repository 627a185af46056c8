/** The clear sky by the sun's height, worked once for a place's air and looked up after. */
import { clearSky } from "../../equations/light/clear-sky.ts";
import type { Air } from "./model.ts";

export type SkyByHeight = (up: number, ground: number) => { beam: number; sky: number; level: number };

const HEIGHTS = 192;

/** The clear sky for one unit of light outside the air, by the sine of the sun's height. */
export function skyByHeight(air: Air): SkyByHeight {
  const beams = new Float64Array(HEIGHTS + 2);
  const levels = new Float64Array(HEIGHTS + 2);
  const returned = new Float64Array(HEIGHTS + 2);
  for (let k = 0; k <= HEIGHTS; k++) {
    const up = (k / HEIGHTS) ** 2;
    const zenithDeg = (Math.acos(up) * 180) / Math.PI;
    const dark = clearSky({ zenithDeg, outsideWPerM2: 1, groundShare: 0, ...air });
    const half = clearSky({ zenithDeg, outsideWPerM2: 1, groundShare: 0.5, ...air });
    beams[k] = dark.beam;
    levels[k] = dark.level;
    returned[k] = dark.level > 0 ? 2 * (1 - dark.level / half.level) : 0;
  }
  return (up, ground) => {
    const place = HEIGHTS * Math.sqrt(Math.min(1, Math.max(0, up)));
    const k = Math.min(HEIGHTS - 1, Math.floor(place));
    const part = place - k;
    const beam = between(beams, k, part);
    const level = between(levels, k, part) / (1 - ground * between(returned, k, part));
    return { beam, level, sky: Math.max(0, level - beam * up) };
  };
}

function between(row: Float64Array, k: number, part: number): number {
  return (row[k] as number) + part * ((row[k + 1] as number) - (row[k] as number));
}
