/**
 * The coupled state of a ventilated cavity: sun warms cladding and membrane, these warm the air, the air rises and is
 * driven by wind, and by passing cools them again. Per metre of wall. Upward flow: inlet at the base. ISO 15099, ventilated
 * gap, as written out in an open building-energy reference manual; wind is added. It compares variants and proves nothing:
 * measured walls pass more air than it says, by joints that it leaves out and winds that it does not know.
 */
import { airDensity } from "../air/air-density.ts";
import { airViscosity } from "../air/air-viscosity.ts";
import { buoyancyPressure } from "./buoyancy-pressure.ts";
import { cavitySpeed } from "./cavity-speed.ts";
import { cavitySpeedRough } from "./cavity-speed-rough.ts";
import { equivalentInlet } from "./equivalent-inlet.ts";
import { gapConvection } from "./gap-convection.ts";
import { gapLength } from "./gap-length.ts";
import { openingLoss } from "./opening-loss.ts";
import { radiationCoefficient } from "./radiation-coefficient.ts";

export interface CavityWall {
  readonly depthM: number;
  /** From inlet to outlet (m). */
  readonly heightM: number;
  /** Net openings at the base and at the top, and open joints between (m² per m of wall, which is m). */
  readonly baseM: number;
  readonly topM: number;
  readonly jointsM: number;
  /** Share of the sun that the cladding takes up, 0 to 1. */
  readonly absorptance: number;
  readonly outerEmissivity: number;
  readonly innerEmissivity: number;
  /** From the membrane to the room (W/m²K). */
  readonly innerUWPerM2K: number;
  /** From the cladding's face to outside (W/m²K): about 17 by day. */
  readonly outerFilmWPerM2K: number;
  /** From a wall of the cavity to air at rest (W/m²K): about 1.3. */
  readonly stillWPerM2K: number;
  /** Discharge of inlet and outlet: 0.66 and 0.60 in one place of the source, 0.6 for both in another. */
  readonly inletDischarge: number;
  readonly outletDischarge: number;
}

export interface CavityWeather {
  readonly outsideC: number;
  readonly insideC: number;
  /** Sun on the cladding (W/m²). */
  readonly sunWPerM2: number;
  /** Difference of wind pressure from base to top (Pa). */
  readonly windPa: number;
  readonly pressurePa: number;
}

export interface CavityState {
  readonly speedMPerS: number;
  readonly claddingC: number;
  readonly membraneC: number;
  /** Mean of the air in the cavity, and where it leaves (°C). */
  readonly gapC: number;
  readonly leavingC: number;
  /** Of the air in the cavity (kg/m³). */
  readonly densityKgPerM3: number;
}

/** Above this share of the cavity's section the source's loss of an opening means nothing: the cavity is freely ventilated. */
const FREE_ABOVE = 5 / 3;

/** Equivalent openings at inlet and outlet (m² per m). */
function openings({ baseM, topM, jointsM }: CavityWall): { inlet: number; outlet: number } {
  return {
    inlet: equivalentInlet({ nearM: baseM, farM: topM, jointsM }),
    outlet: equivalentInlet({ nearM: topM, farM: baseM, jointsM }),
  };
}

/** Whether the openings are too large beside the cavity for a flow along it to mean anything. */
export function freelyVentilated(wall: CavityWall): boolean {
  const { inlet, outlet } = openings(wall);
  return Math.min(inlet, outlet) > FREE_ABOVE * wall.depthM;
}

type Friction = "smooth" | "rough";

/** The state in which heat and pressure balance. Both openings must be more than nothing. */
export function cavityFlow(
  wall: CavityWall,
  weather: CavityWeather,
  friction: Friction = "rough",
): CavityState {
  const { depthM, heightM, inletDischarge, outletDischarge } = wall;
  const { inlet, outlet } = openings(wall);
  // An opening wider than the source allows costs nothing.
  const most = FREE_ABOVE * depthM;
  const lossFactor =
    openingLoss({ cavityM: depthM, openingM: Math.min(inlet, most), discharge: inletDischarge }) +
    openingLoss({ cavityM: depthM, openingM: Math.min(outlet, most), discharge: outletDischarge });
  const speedAt = friction === "rough" ? cavitySpeedRough : cavitySpeed;
  const excess = (speedMPerS: number): number => {
    const { gapC } = heatAt(wall, weather, speedMPerS);
    const { outsideC, pressurePa } = weather;
    const drive = weather.windPa + buoyancyPressure({ gapC, outsideC, heightM, pressurePa });
    const driven = speedAt({
      pressureDifferencePa: Math.abs(drive),
      densityKgPerM3: airDensity({ pressurePa, airC: gapC }),
      viscosityPaS: airViscosity({ airC: gapC }),
      depthM,
      heightM,
      lossFactor,
    });
    return driven - speedMPerS;
  };
  const speedMPerS = rootOfFalling(excess, excess(0));
  return { ...heatAt(wall, weather, speedMPerS), speedMPerS };
}

/** Where a falling function meets nought, which it does before `high`: false position, the stale end halved. */
function rootOfFalling(value: (at: number) => number, high: number): number {
  let [left, right] = [0, high];
  let [atLeft, atRight] = [high, value(high)];
  for (let turn = 0; turn < MOST_TURNS && right - left > SPEED_STEP; turn++) {
    const middle = (left * atRight - right * atLeft) / (atRight - atLeft);
    const atMiddle = value(middle);
    if (Math.abs(atMiddle) < SPEED_STEP) return middle;
    if (atMiddle > 0) {
      [left, atLeft] = [middle, atMiddle];
      atRight /= 2;
    } else {
      [right, atRight] = [middle, atMiddle];
      atLeft /= 2;
    }
  }
  return (left + right) / 2;
}

const MOST_TURNS = 60;
/** Far under what anybody can measure (m/s). */
const SPEED_STEP = 1e-6;

type Heat = Omit<CavityState, "speedMPerS">;

/** Heat balance of cladding and membrane at a given speed; what depends weakly on the result is taken from the turn before. */
function heatAt(wall: CavityWall, weather: CavityWeather, speedMPerS: number): Heat {
  const { outsideC, pressurePa } = weather;
  const { depthM, heightM, innerUWPerM2K } = wall;
  const convection = gapConvection({ stillWPerM2K: wall.stillWPerM2K, speedMPerS });
  const sun = wall.absorptance * weather.sunWPerM2;
  const room = innerUWPerM2K * (weather.insideC - outsideC);
  let heat: Heat = {
    claddingC: outsideC,
    membraneC: outsideC,
    gapC: outsideC,
    leavingC: outsideC,
    densityKgPerM3: airDensity({ pressurePa, airC: outsideC }),
  };
  for (let turn = 0; turn < HEAT_TURNS; turn++) {
    const { densityKgPerM3 } = heat;
    const length = gapLength({ densityKgPerM3, depthM, speedMPerS, convectionWPerM2K: convection });
    const left = length > 0 ? Math.exp(-heightM / length) : 0;
    // The gap's mean lies this far from the outside air toward the mean of the two walls.
    const toward = 1 - (length / heightM) * (1 - left);
    const radiation = radiationCoefficient({
      meanC: (heat.claddingC + heat.membraneC) / 2,
      outerEmissivity: wall.outerEmissivity,
      innerEmissivity: wall.innerEmissivity,
    });
    // Two balances, linear in the rise of each wall over the outside air.
    const shared = radiation + (convection * toward) / 2;
    const own = radiation + convection * (1 - toward / 2);
    const cladding = wall.outerFilmWPerM2K + own;
    const membrane = innerUWPerM2K + own;
    const determinant = cladding * membrane - shared * shared;
    const claddingRise = (sun * membrane + room * shared) / determinant;
    const membraneRise = (room * cladding + sun * shared) / determinant;
    const mean = (claddingRise + membraneRise) / 2;
    const gapC = outsideC + toward * mean;
    heat = {
      claddingC: outsideC + claddingRise,
      membraneC: outsideC + membraneRise,
      gapC,
      leavingC: outsideC + mean * (1 - left),
      densityKgPerM3: airDensity({ pressurePa, airC: gapC }),
    };
  }
  return heat;
}

const HEAT_TURNS = 4;
