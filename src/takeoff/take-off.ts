/** Takes off a set-out facade: schedules, quantities, finish and the order. Pure: same facade and plan, same take-off. */
import type { CutPlan } from "../cutting/facade/plan.ts";
import type { Project } from "../project/schema/project.ts";
import type { Facade } from "../setout/facade.ts";
import { consumableLines } from "./consumables.ts";
import { finishLines } from "./finish.ts";
import type { Takeoff } from "./model.ts";
import { orderOf } from "./order.ts";
import {
  allPieces,
  layerAreas,
  massLines,
  packerCounts,
  screwCounts,
  sleeveLines,
  stripLines,
  zoneAreas,
} from "./quantities.ts";
import { battenSchedule, pieceSchedule } from "./schedules.ts";

/** @param plan undefined where cutting gave none: the order then lacks sheets, lengths and boards */
export function takeOff(project: Project, facade: Facade, plan: CutPlan | undefined): Takeoff {
  const pieces = allPieces(facade);
  const areas = zoneAreas(facade);
  const masses = massLines(pieces);
  const quantities: Omit<Takeoff, "order"> = {
    pieces: pieceSchedule(project, facade, plan),
    battens: battenSchedule(project, facade, plan),
    screws: screwCounts(pieces),
    areas,
    masses,
    massKg: masses.reduce((sum, { massKg }) => sum + massKg, 0),
    packers: packerCounts(pieces),
    closures: stripLines(pieces, "closure"),
    flashings: stripLines(pieces, "flashing"),
    gaskets: stripLines(pieces, "gasket"),
    pans: stripLines(
      pieces.filter(({ profile }) => profile),
      "membrane",
    ),
    sleeves: sleeveLines(pieces),
    layers: layerAreas(project, facade, areas),
    finishes: finishLines(project, facade),
  };
  const consumables = consumableLines(project, facade, { plan, screws: quantities.screws });
  return { ...quantities, order: orderOf(project, { plan, quantities, consumables }) };
}
