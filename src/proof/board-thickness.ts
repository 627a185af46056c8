/** P042: the thickness of boards against named rules, side by side. */
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";
import { rulesAsking } from "./rules-asking.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function boardThickness({ project, demands }: ProofContext): Finding[] {
  return project.claddings.flatMap((cladding, index) => {
    if (cladding.kind !== "boards") return [];
    const demand = cladding.thickness;
    const rules = demands.boardThickness;
    const asking = rules.filter(({ value }) => !holds("at least", { demand, limit: value }));
    const governing =
      asking.find(({ own }) => own) ?? greatest(asking.length > 0 ? asking : rules, ({ value }) => value);
    if (!governing) return [];
    const thick = asking.length === 0;
    return [
      finding({
        code: "P042",
        outcome: thick ? "pass" : "attention",
        where: { path: `/claddings/${index}/thickness` },
        says: message(thick ? "proof.thickness.enough" : "proof.thickness.thin", {
          thickness: demand,
          rules: rulesAsking(thick ? rules : asking, "mm"),
        }),
        ...(thick ? {} : { hint: message("proof.proportion.thicker") }),
        ...compared("at least", { demand, limit: governing.value, unit: "mm" }),
        working: {
          formula: "t ≥ t_min",
          inputs: [
            input("t", { meaning: "board-thickness", value: demand, unit: "mm", basis: "given" }),
            input("t_min", {
              meaning: "least-thickness",
              value: governing.value,
              unit: "mm",
              basis: governing.basis,
            }),
          ],
          substituted: `${written(demand)} ${thick ? "≥" : "<"} ${governing.value}`,
        },
        source: governing.source,
      }),
    ];
  });
}
