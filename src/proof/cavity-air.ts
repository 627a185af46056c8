/** P034: air and water that the cavity can carry in one reference weather. It compares variants; no rule judges it. */
import type { HeatDemand } from "../codes/heat.ts";
import { humidityRatio } from "../equations/air/humidity-ratio.ts";
import { saturationPressure } from "../equations/air/saturation-pressure.ts";
import { airChanges } from "../equations/cavity/air-changes.ts";
import { type CavityWall, cavityFlow, freelyVentilated } from "../equations/cavity/cavity-flow.ts";
import { dryingBound } from "../equations/cavity/drying-bound.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { intervalLength } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { regionArea } from "../geometry/region.ts";
import type { Vent } from "../setout/facade.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { input, written } from "./working.ts";

/** A cool damp day with some sun and a breath of wind, the same for every wall so that walls can be compared. */
const WEATHER = { outsideC: 5, insideC: 20, sunWPerM2: 200, windPa: 0.5, pressurePa: 101_325 } as const;
const HUMID = { outside: 0.8, leaving: 0.95 } as const;
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
const SOURCE = {
  kind: "document",
  document: "ISO 15099, ventilated gap, as written out in an open building-energy reference manual",
} as const;

export function cavityAir({ zones, demands }: FaceContext): Finding[] {
  return zones.flatMap((view) => {
    const wall = wallOf(view, demands.heat.cavityFlow);
    if (!wall) return [];
    return [freelyVentilated(wall) ? free(view, wall) : through(view, wall, demands.heat.cavityFlow)];
  });
}

/** The cavity as the model sees it; undefined where an end lets no air through, which P014 says. */
function wallOf(
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

function free(view: ZoneView, { jointsM }: CavityWall): Finding {
  return finding({
    code: "P034",
    outcome: "not applicable",
    where: view.where,
    says: message("proof.air.free", { joints: jointsM / M_PER_CM2_PER_M }),
    source: SOURCE,
  });
}

const ENTERING = humidityRatio({
  vapourPa: HUMID.outside * saturationPressure({ airC: WEATHER.outsideC }),
  pressurePa: WEATHER.pressurePa,
});

function through(
  view: ZoneView,
  wall: CavityWall,
  { inletDischarge, outletDischarge }: HeatDemand["cavityFlow"],
): Finding {
  const state = cavityFlow(wall, WEATHER);
  const changes = airChanges({ speedMPerS: state.speedMPerS, heightM: wall.heightM });
  // The nearest variant: the same wall with its ends half closed by dirt or by a denser mesh.
  const halved = cavityFlow({ ...wall, baseM: wall.baseM / 2, topM: wall.topM / 2 }, WEATHER);
  const leavingRatio = humidityRatio({
    vapourPa: HUMID.leaving * saturationPressure({ airC: state.leavingC }),
    pressurePa: WEATHER.pressurePa,
  });
  const perMetre = dryingBound({ depthM: wall.depthM, leavingRatio, enteringRatio: ENTERING, ...state });
  return finding({
    code: "P034",
    outcome: "not applicable",
    where: view.where,
    says: message("proof.air.through", {
      changes,
      speed: state.speedMPerS,
      halved: airChanges({ speedMPerS: halved.speedMPerS, heightM: wall.heightM }),
      water: perMetre / wall.heightM,
      sun: WEATHER.sunWPerM2,
      air: WEATHER.outsideC,
    }),
    demand: changes,
    unit: "1/h",
    working: {
      formula: "n = 3600·v/H",
      inputs: [
        input("v", { meaning: "cavity-speed", value: state.speedMPerS, unit: "m/s", basis: "typical" }),
        input("H", { meaning: "cavity-height", value: wall.heightM, unit: "m", basis: "derived" }),
      ],
      substituted: `3600 × ${written(state.speedMPerS, 3)} / ${written(wall.heightM, 2)} = ${written(changes, 0)}`,
    },
    source: SOURCE,
    figures: [...inletDischarge.figures, ...outletDischarge.figures],
  });
}
