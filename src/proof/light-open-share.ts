/** P020: the open share when the boards are driest and their gaps widest, against what the membrane stands. */
import { type Finding, finding } from "../findings/finding.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { regionArea } from "../geometry/region.ts";
import { message } from "../text/message.ts";
import { boardZones, type FaceContext } from "./context.ts";
import { lightInput } from "./light/working.ts";
import { growthMm, zoneArea } from "./light/zone-light.ts";
import { compared, holds, input, written } from "./working.ts";

const MM2_PER_M2 = 1e6;

/** The share as fixed is another rule's; this one speaks where the seasons open the gaps. */
export function lightOpenShare(context: FaceContext): Finding[] {
  const limit = context.project.limits.membrane?.maxOpenPercent;
  if (!limit) return [];
  return boardZones(context).flatMap((view) => {
    const growth = growthMm(view, context.demands);
    const seasonal = context.demands.boards[view.cladding.id]?.seasonal;
    if (!seasonal || growth <= 0 || view.pieces.length === 0) return [];
    const joints = view.joints.filter(({ kind }) => kind !== "edge" && kind !== "corner");
    const fixed = joints.reduce((sum, { region, holes }) => sum + regionArea({ outline: region, holes }), 0);
    const opened = joints
      .filter(({ kind }) => kind === "course gap")
      .reduce((sum, { region, along }) => {
        const [from, to] = polygonBounds(region)[along];
        return sum + growth * (to - from);
      }, 0);
    const whole = zoneArea(view);
    const demand = (100 * (fixed + opened)) / whole;
    const within = holds("at most", { demand, limit: limit.value });
    return [
      finding({
        code: "P020",
        outcome: within ? "pass" : "fail",
        where: { path: "/limits/membrane/maxOpenPercent", ...view.where },
        says: message(within ? "light.open.within" : "light.open.over", {
          share: demand,
          limit: limit.value,
          growth,
          month: message(`proof.month.${seasonal.driestMonth}`),
        }),
        ...(within ? {} : { hint: message("light.open.narrow") }),
        ...compared("at most", { demand, limit: limit.value, unit: "%" }),
        working: {
          formula: "100 · (A_j + A_g) / A ≤ p_max",
          inputs: [
            lightInput("A_j", {
              meaning: "joints-fixed",
              value: fixed / MM2_PER_M2,
              unit: "m²",
              basis: "derived",
            }),
            lightInput("A_g", {
              meaning: "joints-opened",
              value: opened / MM2_PER_M2,
              unit: "m²",
              basis: seasonal.basis,
            }),
            lightInput("A", {
              meaning: "zone-area",
              value: whole / MM2_PER_M2,
              unit: "m²",
              basis: "derived",
            }),
            input("p_max", { meaning: "membrane-share", value: limit.value, unit: "%", basis: limit.basis }),
          ],
          substituted: `100 × (${written(fixed / MM2_PER_M2, 3)} + ${written(opened / MM2_PER_M2, 3)}) / ${written(whole / MM2_PER_M2, 3)} = ${written(demand)} ${within ? "≤" : ">"} ${limit.value}`,
        },
        source: { kind: "your data sheet" },
        figures: seasonal.figures,
      }),
    ];
  });
}
