/** Air through the cavity of a zone, and the water that it could carry away: one flow for the rule and for the year's plot. */
import type { HeatDemand } from "../codes/heat.ts";
import { humidityRatio } from "../equations/air/humidity-ratio.ts";
import { saturationPressure } from "../equations/air/saturation-pressure.ts";
import {
  type CavityState,
  type CavityWall,
  type CavityWeather,
  cavityFlow,
  freelyVentilated,
} from "../equations/cavity/cavity-flow.ts";
import { dryingBound } from "../equations/cavity/drying-bound.ts";
import { intervalLength } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { regionArea } from "../geometry/region.ts";
import type { Project } from "../project/schema/project.ts";
import type { Vent } from "../setout/facade.ts";
import type { ZoneView } from "./context.ts";

/** A cool damp day with some sun and a breath of wind, the same for every wall so that walls can be compared. */
export const REFERENCE_DAY = {
  outsideC: 5,
  insideC: 20,
  sunWPerM2: 200,
  windPa: 0.5,
  pressurePa: 101_325,
  humidity: 0.8,
} as const;

/** Of the air that leaves, where water is there for it to take. */
const LEAVING_HUMIDITY = 0.95;

/** Usual for the kind: a middling colour, dull surfaces, an insulated wall. */
const WALL = {
  absorptance: 0.6,
  outerEmissivity: 0.9,
  innerEmissivity: 0.9,
  innerUWPerM2K: 0.15,
  outerFilmWPerM2K: 17,
  stillWPerM2K: 1.3,
} as const;

const M_PER_CM2_PER_M = 1e-4;

/** The cavity as the model sees it; undefined where an end lets no air through. */
export function cavityWall(
  view: ZoneView,
  { inletDischarge, outletDischarge }: HeatDemand["cavityFlow"],
): CavityWall | undefined {
  const { plane, vents } = view;
  const { x, y } = polygonBounds(view.zone.region);
  const baseM = netOf(vents, "base");
  const topM = netOf(vents, "top");
  if (!plane || plane.cavity <= 0 || baseM <= 0 || topM <= 0 || view.pieces.length === 0) return undefined;
  // Joints that run upright over battens are closed by them; those of upright boards are not.
  const along = view.cladding.kind === "boards" && view.cladding.direction === "vertical" ? "y" : "x";
  const jointMm2 = view.joints
    .filter((joint) => joint.along === along && (joint.kind === "course gap" || joint.kind === "sheet joint"))
    .reduce((sum, { region, holes }) => sum + regionArea({ outline: region, holes }), 0);
  const area = regionArea({ outline: view.zone.region, holes: [] });
  const width = intervalLength(x);
  return {
    depthM: plane.cavity / 1000,
    // Under a rake the mean height.
    heightM: Math.min(intervalLength(y), area / width) / 1000,
    baseM,
    topM,
    jointsM: jointMm2 / width / 1000,
    inletDischarge: inletDischarge.value,
    outletDischarge: outletDischarge.value,
    ...WALL,
  };
}

/** Net opening of one end (m² per m), over its vents by their length. */
function netOf(vents: readonly Vent[], position: Vent["position"]): number {
  const own = vents.filter((vent) => vent.position === position);
  const length = own.reduce((sum, { x }) => sum + intervalLength(x), 0);
  const area = own.reduce((sum, { x, netCm2PerM }) => sum + netCm2PerM * intervalLength(x), 0);
  return length > 0 ? (area / length) * M_PER_CM2_PER_M : 0;
}

export interface Drying {
  readonly state: CavityState;
  /** At most (kg/m² of wall a day), below 0 where the air brings more than it can take. */
  readonly waterKgPerM2: number;
}

/** @param day `humidity` of the air outside, 0 to 1 */
export function dryingOn(wall: CavityWall, day: CavityWeather & { readonly humidity: number }): Drying {
  const state = cavityFlow(wall, day);
  const ratio = (humidity: number, airC: number): number =>
    humidityRatio({ vapourPa: humidity * saturationPressure({ airC }), pressurePa: day.pressurePa });
  const perMetre = dryingBound({
    depthM: wall.depthM,
    leavingRatio: ratio(LEAVING_HUMIDITY, state.leavingC),
    enteringRatio: ratio(day.humidity, day.outsideC),
    ...state,
  });
  return { state, waterKgPerM2: perMetre / wall.heightM };
}

/** Twelve months, January first: without sun and under the reference day's, kg/m² of wall a day. */
export interface DryingYear {
  readonly shaded: readonly number[];
  readonly sunny: readonly number[];
}

/** In the months' mean weather; undefined where the project lacks its climate, or where air comes and goes too freely to be told. */
export function dryingYear(
  view: ZoneView,
  { heat, climate = {} }: { readonly heat: HeatDemand; readonly climate?: Project["site"]["climate"] },
): DryingYear | undefined {
  const { meanTempC, meanRelativeHumidityPercent } = climate;
  const wall = cavityWall(view, heat.cavityFlow);
  if (!wall || freelyVentilated(wall) || !meanTempC || !meanRelativeHumidityPercent) return undefined;
  const year = (sunWPerM2: number): number[] =>
    meanTempC.values.map((outsideC, month) => {
      const humidity = (meanRelativeHumidityPercent.values[month] ?? 0) / 100;
      return dryingOn(wall, { ...REFERENCE_DAY, outsideC, humidity, sunWPerM2 }).waterKgPerM2;
    });
  return { shaded: year(0), sunny: year(REFERENCE_DAY.sunWPerM2) };
}
