/** Air speed in a cavity with the greater of smooth and rough friction. */

import { equation } from "../equation.ts";
import { cavitySpeed } from "./cavity-speed.ts";
import { gapFrictionFactor } from "./gap-friction-factor.ts";

const MOST_TURNS = 20;
/** Where 96/Re and 0.316/Re^0.25 are equal. */
const ROUGH_FROM = (96 / 0.316) ** (4 / 3);

export interface RoughCavity {
  /** What drives the air (Pa). */
  readonly pressureDifferencePa: number;
  /** Density of air (kg/m³). */
  readonly densityKgPerM3: number;
  /** Viscosity of air (Pa·s). */
  readonly viscosityPaS: number;
  /** Depth of the cavity (m). */
  readonly depthM: number;
  /** From inlet to outlet (m). */
  readonly heightM: number;
  /** Of inlet and outlet together. */
  readonly lossFactor: number;
}

/** Speed (m/s). */
export function cavitySpeedRough({
  pressureDifferencePa,
  densityKgPerM3,
  viscosityPaS,
  depthM,
  heightM,
  lossFactor,
}: RoughCavity): number {
  const gap = { pressureDifferencePa, densityKgPerM3, viscosityPaS, depthM, heightM, lossFactor };
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
  inputs: [
    { key: "pressureDifferencePa", unit: "Pa", range: [0, 200] },
    { key: "densityKgPerM3", unit: "kg/m³", range: [0.8, 1.6] },
    { key: "viscosityPaS", unit: "Pa·s", range: [1e-5, 3e-5] },
    { key: "depthM", unit: "m", range: [0.001, 0.5] },
    { key: "heightM", unit: "m", range: [0.1, 100] },
    { key: "lossFactor", unit: "1", range: [0, 1_000_000] },
  ],
  result: { unit: "m/s" },
  source: { document: "ISO 15099, ventilated gap, with Blasius’s law where it asks more" },
  work: cavitySpeedRough,
});
