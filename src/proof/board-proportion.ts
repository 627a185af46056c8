/** P004: a board's width against its thickness. Rule families disagree and are all named. */
import type { ProportionDemand } from "../codes/demands.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { type Message, message } from "../text/message.ts";
import { boardZones, type ProofContext } from "./context.ts";
import { ruleName } from "./rules-asking.ts";
import { compared, holds, input, written } from "./working.ts";

export function boardProportion(context: ProofContext): Finding[] {
  const zones = boardZones(context);
  return context.project.claddings.flatMap((cladding, index) => {
    if (cladding.kind !== "boards") return [];
    const cut = zones
      .filter((view) => view.cladding.id === cladding.id)
      .flatMap(({ pieces }) => pieces.map((piece) => piece.cut.width));
    const width = Math.max(...cladding.widths, ...new Set(cut));
    const { thickness } = cladding;
    const ratio = width / thickness;
    const refused = context.demands.proportion.filter((rule) => !allows(rule, { ratio, width }));
    const allowed = context.demands.proportion.filter((rule) => !refused.includes(rule));
    const governing = governs(refused) ?? governs(allowed);
    if (!governing) return [];
    const outcome = refused.length === 0 ? "pass" : allowed.length === 0 ? "fail" : "attention";
    const key = { pass: "agreed", attention: "disagreed", fail: "refused" }[outcome];
    const limit = governing.most ?? ratio;
    return [
      finding({
        code: "P004",
        outcome,
        where: { path: `/claddings/${index}/widths` },
        says: message(`proof.proportion.${key}`, {
          width,
          thickness,
          ratio,
          refused: refused.map(named),
          allowed: allowed.map(named),
        }),
        ...(outcome === "pass" ? {} : { hint: message("proof.proportion.thicker") }),
        ...compared("at most", { demand: ratio, limit, unit: "1" }),
        working: {
          formula: "b / t ≤ r",
          inputs: [
            input("b", { meaning: "board-width", value: width, unit: "mm", basis: "given" }),
            input("t", { meaning: "board-thickness", value: thickness, unit: "mm", basis: "given" }),
            input("r", { meaning: "proportion", value: limit, unit: "1", basis: "given" }),
          ],
          substituted: `${width} / ${thickness} = ${written(ratio, 2)} ${ratio <= limit ? "≤" : ">"} ${limit}`,
        },
        source: governing.source,
      }),
    ];
  });
}

function allows(rule: ProportionDemand, board: { ratio: number; width: number }): boolean {
  return (
    holds("at most", { demand: board.ratio, limit: rule.most ?? board.ratio }) &&
    holds("at least", { demand: board.ratio, limit: rule.least ?? board.ratio }) &&
    holds("at most", { demand: board.width, limit: rule.widestMm ?? board.width })
  );
}

/** The rule of the own jurisdiction, or else the strictest. */
function governs(rules: readonly ProportionDemand[]): ProportionDemand | undefined {
  return (
    rules.find(({ own }) => own) ??
    [...rules].sort((a, b) => (a.most ?? Number.POSITIVE_INFINITY) - (b.most ?? Number.POSITIVE_INFINITY))[0]
  );
}

function named(rule: ProportionDemand): Message {
  const values = { rule: ruleName(rule.id), least: rule.least ?? 0, most: rule.most ?? 0 };
  return message(rule.least === undefined ? "proof.proportion.up-to" : "proof.proportion.between", values);
}
