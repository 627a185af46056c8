/** P003: how much of the cladding its joints leave open, against what the membrane stands. */
import { type Finding, finding } from "../findings/finding.ts";
import { type Region, regionArea } from "../geometry/region.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { compared, holds, input, written } from "./working.ts";

const MM2_PER_M2 = 1e6;

export function openArea({ project, zones }: FaceContext): Finding[] {
  const limit = project.limits.membrane?.maxOpenPercent;
  return zones.flatMap((view) => {
    const where = { path: "/limits/membrane/maxOpenPercent", ...view.where };
    if (!limit) {
      return [
        finding({
          code: "P003",
          outcome: "cannot evaluate",
          where,
          says: message("proof.open-area.no-limit"),
          hint: message("proof.enter-data-sheet"),
          source: { kind: "your data sheet" },
        }),
      ];
    }
    const { joints, pieces } = areas(view);
    if (pieces === 0) return [];
    const demand = (100 * joints) / (joints + pieces);
    const within = holds("at most", { demand, limit: limit.value });
    return [
      finding({
        code: "P003",
        outcome: within ? "pass" : "fail",
        where,
        says: message(within ? "proof.open-area.within" : "proof.open-area.over", {
          share: demand,
          limit: limit.value,
        }),
        ...(within ? {} : { hint: message("proof.joint.narrow") }),
        ...compared("at most", { demand, limit: limit.value, unit: "%" }),
        working: {
          formula: "100 · A_j / (A_j + A_p) ≤ p_max",
          inputs: [
            input("A_j", { meaning: "joint-area", value: joints, unit: "m²", basis: "derived" }),
            input("A_p", { meaning: "piece-area", value: pieces, unit: "m²", basis: "derived" }),
            input("p_max", { meaning: "membrane-share", value: limit.value, unit: "%", basis: limit.basis }),
          ],
          substituted: `100 × ${written(joints, 3)} / (${written(joints, 3)} + ${written(pieces, 3)}) = ${written(demand)} ${within ? "≤" : ">"} ${limit.value}`,
        },
        source: { kind: "your data sheet" },
      }),
    ];
  });
}

/** Strips between a piece and an opening are behind flashings and reveals, not open joints of the field. */
function areas(view: ZoneView): { joints: number; pieces: number } {
  const sum = (regions: readonly Region[]): number =>
    regions.reduce((total, region) => total + regionArea(region), 0) / MM2_PER_M2;
  return {
    joints: sum(
      view.joints
        .filter(({ kind }) => kind !== "edge")
        .map(({ region, holes }) => ({ outline: region, holes })),
    ),
    pieces: sum(view.pieces.map(({ outline, holes }) => ({ outline, holes }))),
  };
}
