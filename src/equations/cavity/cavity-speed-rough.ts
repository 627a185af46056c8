/** Air speed in a cavity with the greater of smooth and rough friction. */

import { equation } from "../equation.ts";
import { cavitySpeed, DRIVEN_CAVITY_INPUTS, type DrivenCavity } from "./cavity-speed.ts";
import { gapFrictionFactor } from "./gap-friction-factor.ts";

const MOST_TURNS = 20;
/** Where 96/Re and 0.316/Re^0.25 are equal. */
const ROUGH_FROM = (96 / 0.316) ** (4 / 3);

/** Speed (m/s). */
export function cavitySpeedRough(gap: DrivenCavity): number {
  const { pressureDifferencePa, densityKgPerM3, viscosityPaS, depthM, heightM, lossFactor } = gap;
  let speed = cavitySpeed(gap);
  const reynoldsPerSpeed = (2 * depthM * densityKgPerM3) / viscosityPaS;
  if (reynoldsPerSpeed * speed <= ROUGH_FROM) return speed;
  // The factor falls with the fourth root of the speed: each turn brings the speed eight times nearer.
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const before = speed;
    const factor = gapFrictionFactor({ reynolds: reynoldsPerSpeed * speed });
    const drag = 1 + lossFactor + (factor * heightM) / (2 * depthM);
    speed = Math.sqrt((2 * pressureDifferencePa) / (densityKgPerM3 * drag));
    if (Math.abs(speed - before) < 1e-10) break;
  }
  return speed;
}

export const CAVITY_SPEED_ROUGH = equation({
  name: "cavity-speed-rough",
  formula:
    "v of pressureDifferencePa = ½·densityKgPerM3·v²·[1 + lossFactor + max(96/Re, 0.316/Re^0.25)·heightM/(2·depthM)], Re = 2·depthM·densityKgPerM3·v/viscosityPaS",
  inputs: DRIVEN_CAVITY_INPUTS,
  result: { unit: "m/s" },
  source: { document: "ISO 15099, ventilated gap, with Blasius’s law where it asks more" },
  work: cavitySpeedRough,
});
