/** P043: how far the sheets of the membrane lap, for behind open joints they are what keeps water out. */
import { type Finding, finding, type Source } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";
import { compared, holds, input, written } from "./working.ts";

const LEAST = { level: 100, upright: 150 } as const;
const SOURCE: Source = {
  kind: "document",
  document: "NHBC Standards, 2021, at second hand",
  clause: "6.2.13",
};

export function membraneLaps({ project, zones }: ProofContext): Finding[] {
  const worn = new Set(zones.map(({ zone }) => zone.buildUp));
  return project.buildUps.flatMap(({ id, layers }, at) => {
    const index = layers.findIndex(({ kind }) => kind === "membrane");
    const layer = layers[index];
    if (!worn.has(id) || layer?.kind !== "membrane") return [];
    const path = `/buildUps/${at}/layers/${index}/laps`;
    if (!layer.laps) {
      return [
        finding({
          code: "P043",
          outcome: "cannot evaluate",
          where: { path },
          says: message("proof.laps.unknown"),
          hint: message("proof.laps.enter"),
          source: SOURCE,
        }),
      ];
    }
    const { level, upright } = layer.laps;
    // The lap that lacks more stands for both.
    const governing =
      LEAST.level / level > LEAST.upright / upright
        ? { demand: level, limit: LEAST.level }
        : { demand: upright, limit: LEAST.upright };
    const enough = holds("at least", governing);
    return [
      finding({
        code: "P043",
        outcome: enough ? "pass" : "attention",
        where: { path },
        says: message(enough ? "proof.laps.enough" : "proof.laps.short", {
          level,
          upright,
          leastLevel: LEAST.level,
          leastUpright: LEAST.upright,
        }),
        ...(enough ? {} : { hint: message("proof.laps.widen") }),
        ...compared("at least", { unit: "mm", ...governing }),
        working: {
          formula: "l ≥ l_min",
          inputs: [
            input("l", { meaning: "lap", value: governing.demand, unit: "mm", basis: "given" }),
            input("l_min", { meaning: "least-lap", value: governing.limit, unit: "mm", basis: "given" }),
          ],
          substituted: `${written(governing.demand)} ${enough ? "≥" : "<"} ${governing.limit}`,
        },
        source: SOURCE,
      }),
    ];
  });
}
