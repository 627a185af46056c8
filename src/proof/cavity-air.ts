/** P034: air and water that the cavity can carry in one reference weather. It compares variants; no rule judges it. */
import type { HeatDemand } from "../codes/heat.ts";
import { airChanges } from "../equations/cavity/air-changes.ts";
import { type CavityWall, cavityFlow, freelyVentilated } from "../equations/cavity/cavity-flow.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import { cavityWall, dryingOn, REFERENCE_DAY } from "./cavity-drying.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { input, written } from "./working.ts";

const CM2_PER_M = 1e4;
const SOURCE = {
  kind: "document",
  document: "ISO 15099, ventilated gap, as written out in an open building-energy reference manual",
} as const;

export function cavityAir({ zones, demands }: FaceContext): Finding[] {
  return zones.flatMap((view) => {
    // Where an end lets no air through P014 says so.
    const wall = cavityWall(view, demands.heat.cavityFlow);
    if (!wall) return [];
    return [freelyVentilated(wall) ? free(view, wall) : through(view, wall, demands.heat.cavityFlow)];
  });
}

function free(view: ZoneView, { jointsM }: CavityWall): Finding {
  return finding({
    code: "P034",
    outcome: "not applicable",
    where: view.where,
    says: message("proof.air.free", { joints: jointsM * CM2_PER_M }),
    source: SOURCE,
  });
}

function through(
  view: ZoneView,
  wall: CavityWall,
  { inletDischarge, outletDischarge }: HeatDemand["cavityFlow"],
): Finding {
  const { state, waterKgPerM2 } = dryingOn(wall, REFERENCE_DAY);
  const changes = airChanges({ speedMPerS: state.speedMPerS, heightM: wall.heightM });
  // The nearest variant: the same wall with its ends half closed by dirt or by a denser mesh.
  const halved = cavityFlow({ ...wall, baseM: wall.baseM / 2, topM: wall.topM / 2 }, REFERENCE_DAY);
  return finding({
    code: "P034",
    outcome: "not applicable",
    where: view.where,
    says: message("proof.air.through", {
      changes,
      speed: state.speedMPerS,
      halved: airChanges({ speedMPerS: halved.speedMPerS, heightM: wall.heightM }),
      water: waterKgPerM2,
      sun: REFERENCE_DAY.sunWPerM2,
      air: REFERENCE_DAY.outsideC,
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
