/** P002: the widest open joint, in the driest month, against what the membrane behind it stands. */
import { type Basis, type Finding, finding } from "../findings/finding.ts";
import type { Joint } from "../setout/facade.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function jointWidth(context: FaceContext): Finding[] {
  return context.zones.flatMap((view) => [...behind(context, view), ...widest(context, view)]);
}

/** What lies next to the cavity must stand light. */
function behind({ project }: FaceContext, view: ZoneView): Finding[] {
  const index = project.buildUps.findIndex(({ id }) => id === view.zone.buildUp);
  const layers = project.buildUps[index]?.layers ?? [];
  const path = `/buildUps/${index}/layers`;
  const membrane = layers.findLast(({ kind }) => kind === "membrane");
  if (membrane?.kind !== "membrane") {
    return [lacking(view, { path, key: "proof.joint.no-membrane" })];
  }
  if (membrane.lightStable) return [];
  return [
    finding({
      code: "P002",
      outcome: "fail",
      where: { path: `${path}/${layers.indexOf(membrane)}/lightStable`, ...view.where },
      says: message("proof.joint.not-light-stable"),
      hint: message("proof.joint.light-stable"),
      source: { kind: "common practice" },
    }),
  ];
}

function widest({ project, demands }: FaceContext, view: ZoneView): Finding[] {
  const limit = project.limits.membrane?.maxGap;
  if (!limit) return [lacking(view, { path: "/limits/membrane/maxGap", key: "proof.joint.no-limit" })];
  const seasonal = demands.boards[view.cladding.id]?.seasonal;
  const board = Math.max(0, ...view.pieces.map(({ cut }) => cut.width));
  const growth = (joint: Joint): number =>
    joint.kind === "course gap" ? (seasonal?.driestMm ?? 0) * board : 0;
  const joint = greatest(view.joints, (one) => one.width + growth(one));
  if (!joint) return [];
  const opens = growth(joint);
  const gap = joint.width + opens;
  const within = holds("at most", { demand: gap, limit: limit.value });
  const seasonBasis: Basis = seasonal?.basis ?? "derived";
  return [
    finding({
      code: "P002",
      outcome: within ? "pass" : "fail",
      where: { path: "/limits/membrane/maxGap", ...view.where },
      says: message(within ? "proof.joint.within" : "proof.joint.over", {
        gap,
        limit: limit.value,
        when: message(opens > 0 ? "proof.when.driest" : "proof.when.fixed"),
      }),
      ...(within ? {} : { hint: message("proof.joint.narrow") }),
      ...compared("at most", { demand: gap, limit: limit.value, unit: "mm" }),
      working: {
        formula: "g + Δg ≤ g_max",
        inputs: [
          input("g", { meaning: "joint", value: joint.width, unit: "mm", basis: "derived" }),
          input("Δg", {
            meaning: "opening-when-driest",
            value: opens,
            unit: "mm",
            basis: opens > 0 ? seasonBasis : "derived",
          }),
          input("g_max", { meaning: "membrane-gap", value: limit.value, unit: "mm", basis: limit.basis }),
        ],
        substituted: `${written(joint.width)} + ${written(opens)} = ${written(gap)} ${within ? "≤" : ">"} ${limit.value}`,
      },
      source: { kind: "your data sheet" },
      figures: opens > 0 ? (seasonal?.figures ?? []) : [],
    }),
  ];
}

function lacking(view: ZoneView, { path, key }: { path: string; key: string }): Finding {
  return finding({
    code: "P002",
    outcome: "cannot evaluate",
    where: { path, ...view.where },
    says: message(key),
    hint: message("proof.enter-data-sheet"),
    source: { kind: "your data sheet" },
  });
}
