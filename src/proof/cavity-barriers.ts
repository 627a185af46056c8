/**
 * P041: cautions where a cavity is longer, taller or deeper than published rules let run without a barrier against fire.
 * It clears nothing and places no barrier: the local code and licensed practice do.
 */
import type { FireStopDemand } from "../codes/demands.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { intervalLength } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import type { ZonePlane } from "../setout/facade.ts";
import { type Message, message } from "../text/message.ts";
import type { ProofContext, ZoneView } from "./context.ts";
import { ruleName } from "./rules-asking.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function cavityBarriers(context: ProofContext): Finding[] {
  return [...context.zones.flatMap((view) => stretch(context, view)), ...twoKinds(context)];
}

interface Excess {
  readonly rule: FireStopDemand;
  readonly direction: "up" | "along";
  readonly demand: number;
  readonly limit: number;
}

function stretch({ demands }: ProofContext, view: ZoneView): Finding[] {
  const { plane } = view;
  if (!plane || view.pieces.length === 0) return [];
  const { x, y } = polygonBounds(view.zone.region);
  const depth = combinedDepth(plane);
  const size = { along: intervalLength(x), up: intervalLength(y) };
  const rules = demands.fireStops.filter(
    ({ exemptDepthMm }) => !holds("at most", { demand: depth, limit: exemptDepthMm }),
  );
  const all = rules.flatMap((rule): Excess[] => [
    { rule, direction: "up", demand: size.up, limit: rule.upMm },
    { rule, direction: "along", demand: size.along, limit: rule.alongMm },
  ]);
  const over = all.filter(({ demand, limit }) => !holds("at most", { demand, limit }));
  const governing =
    over.find(({ rule }) => rule.own) ?? greatest(over, ({ demand, limit }) => demand / limit);
  if (!governing) {
    return [
      finding({
        code: "P041",
        outcome: "not applicable",
        where: view.where,
        says: message("proof.barrier.within", { up: size.up, along: size.along, depth }),
        hint: message("proof.ask-local-code"),
        source: { kind: "common practice" },
      }),
    ];
  }
  const { rule, demand, limit, direction } = governing;
  return [
    finding({
      code: "P041",
      outcome: "attention",
      where: view.where,
      says: message(`proof.barrier.${direction}`, {
        size: demand,
        depth,
        rules: over.map(named),
      }),
      hint: message(view.cladding.kind === "boards" ? "proof.barrier.open-joints" : "proof.barrier.air"),
      ...compared("at most", { demand, limit, unit: "mm" }),
      working: {
        formula: direction === "up" ? "H ≤ H_max" : "L ≤ L_max",
        inputs: [
          input(direction === "up" ? "H" : "L", {
            meaning: "stretch",
            value: demand,
            unit: "mm",
            basis: "derived",
          }),
          input(direction === "up" ? "H_max" : "L_max", {
            meaning: "longest-stretch",
            value: limit,
            unit: "mm",
            basis: rule.basis,
          }),
        ],
        substituted: `${written(demand)} > ${written(limit)}`,
      },
      source: rule.source,
    }),
  ];
}

/**
 * From the membrane to the cladding's back, air between crossed battens and rails together: a board of appeal held
 * 19 + 19 mm of crossed strapping to be 38 mm.
 */
function combinedDepth({ layers, backZ, cavity }: ZonePlane): number {
  const behind = layers.filter(({ kind }) => kind === "membrane" || kind === "insulation");
  return behind.length === 0 ? cavity : backZ - Math.max(...behind.map(({ z }) => z[1]));
}

function named({ rule, limit }: Excess): Message {
  return message("proof.rule-allows.mm", { rule: ruleName(rule.id), value: limit });
}

/** Two kinds of cladding in one plane keep each its own measures; where they meet the stricter governs. */
function twoKinds({ zones, project }: ProofContext): Finding[] {
  return project.faces.flatMap((face, index) => {
    const kinds = new Set(
      zones.filter(({ where }) => where.face === face.id).map(({ cladding }) => cladding.kind),
    );
    if (kinds.size < 2) return [];
    return [
      finding({
        code: "P041",
        outcome: "attention",
        where: { path: `/faces/${index}/zones`, face: face.id },
        says: message("proof.barrier.two-kinds", { face: face.id }),
        hint: message("proof.ask-local-code"),
        source: { kind: "document", document: "Fassaden aus Holz, proHolz Austria" },
      }),
    ];
  });
}
