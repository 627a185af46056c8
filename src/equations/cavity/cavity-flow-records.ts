/** The coupled state of a cavity as records to reckon with: its speed, and the temperatures that go with it. */

import { type EquationInput, equation } from "../equation.ts";
import {
  type CavityState,
  type CavityWall,
  type CavityWeather,
  cavityFlow,
  freelyVentilated,
} from "./cavity-flow.ts";

const INPUTS = [
  { key: "depthM", unit: "m", range: [0.005, 0.3] },
  { key: "heightM", unit: "m", range: [0.5, 50] },
  { key: "baseM", unit: "m²/m", range: [0.0001, 0.3] },
  { key: "topM", unit: "m²/m", range: [0.0001, 0.3] },
  { key: "jointsM", unit: "m²/m", range: [0, 1] },
  { key: "absorptance", unit: "1", range: [0, 1] },
  { key: "outerEmissivity", unit: "1", range: [0.02, 1] },
  { key: "innerEmissivity", unit: "1", range: [0.02, 1] },
  { key: "innerUWPerM2K", unit: "W/m²K", range: [0, 5] },
  { key: "outerFilmWPerM2K", unit: "W/m²K", range: [1, 50] },
  { key: "stillWPerM2K", unit: "W/m²K", range: [0.1, 10] },
  { key: "inletDischarge", unit: "1", range: [0.3, 1] },
  { key: "outletDischarge", unit: "1", range: [0.3, 1] },
  { key: "outsideC", unit: "°C", range: [-60, 60] },
  { key: "insideC", unit: "°C", range: [-60, 60] },
  { key: "sunWPerM2", unit: "W/m²", range: [0, 1400] },
  { key: "windPa", unit: "Pa", range: [0, 200] },
  { key: "pressurePa", unit: "Pa", range: [50_000, 120_000] },
] as const satisfies readonly EquationInput<keyof CavityWall | keyof CavityWeather>[];

const BALANCE =
  "of the balance, found by false position: " +
  "absorptance·sunWPerM2 + outerFilmWPerM2K·(outsideC − Tc) + h·(Tg − Tc) + hr·(Tm − Tc) = 0; " +
  "h·(Tg − Tm) + hr·(Tc − Tm) + innerUWPerM2K·(insideC − Tm) = 0; h = 2·stillWPerM2K + 4v; " +
  "hr by radiation-coefficient of outerEmissivity and innerEmissivity; Tg along heightM by gap-length of depthM; " +
  "windPa + buoyancy-pressure at pressurePa = losses by opening-loss of baseM, topM and jointsM with inletDischarge and outletDischarge, and friction";

type Given = CavityWall & CavityWeather;

/** With more open joints than this the cavity is freely ventilated, and a flow along it means nothing. */
const ALONG = {
  keys: ["baseM", "topM", "jointsM"],
  condition:
    "not freely ventilated: an equivalent opening, by equivalent-inlet, of at most 5/3 of depthM at one end",
  holds: (wall: CavityWall) => !freelyVentilated(wall),
} as const;

const record = (name: string, symbol: string, unit: string, pick: (state: CavityState) => number) =>
  equation({
    name,
    formula: `${symbol} ${BALANCE}`,
    inputs: INPUTS,
    together: ALONG,
    result: { unit },
    source: {
      document:
        "ISO 15099, ventilated gap, as written out in an open building-energy reference manual; wind added",
    },
    work: (given: Given) => pick(cavityFlow(given, given)),
  });

export const CAVITY_FLOW_SPEED = record("cavity-flow-speed", "v", "m/s", (state) => state.speedMPerS);
export const CAVITY_FLOW_CLADDING = record("cavity-flow-cladding", "Tc", "°C", (state) => state.claddingC);
export const CAVITY_FLOW_MEMBRANE = record("cavity-flow-membrane", "Tm", "°C", (state) => state.membraneC);
export const CAVITY_FLOW_LEAVING = record("cavity-flow-leaving", "T_out", "°C", (state) => state.leavingC);
