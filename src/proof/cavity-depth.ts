/** P001: the cavity against the project's limit, and against named rule sets, which disagree. */
import type { Finding } from "../findings/finding.ts";
import { finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext, ZoneView } from "./context.ts";
import { ruleName, rulesAsking } from "./rules-asking.ts";
import { compared, holds, input } from "./working.ts";

export function cavityDepth(context: ProofContext): Finding[] {
  const set = context.zones.flatMap((view) => (view.plane ? [{ view, cavity: view.plane.cavity }] : []));
  return [...set.map((one) => againstLimit(context, one)), ...againstRules(context, set)];
}

interface SetOut {
  readonly view: ZoneView;
  readonly cavity: number;
}

function againstLimit({ project, demands }: ProofContext, { view, cavity }: SetOut): Finding {
  const limit = demands.cavityMinMm;
  const enough = holds("at least", { demand: cavity, limit });
  const given = project.limits.cavityMin;
  return finding({
    code: "P001",
    outcome: enough ? "pass" : "fail",
    where: { path: "/limits/cavityMin", ...view.where },
    says: message(enough ? "proof.cavity.enough" : "proof.cavity.shallow", { depth: cavity, least: limit }),
    ...(enough ? {} : { hint: message("proof.cavity.deepen") }),
    ...compared("at least", { demand: cavity, limit, unit: "mm" }),
    working: {
      formula: "c ≥ c_min",
      inputs: [
        input("c", { meaning: "cavity", value: cavity, unit: "mm", basis: "derived" }),
        input("c_min", { meaning: "least-cavity", value: limit, unit: "mm", basis: given.basis }),
      ],
      substituted: `${cavity} ${enough ? "≥" : "<"} ${limit}`,
    },
    source: given.source ? { kind: "document", document: given.source } : { kind: "your project" },
  });
}

/** One line for each cladding and depth, not for each zone: the choice of a rule set is made once. */
function againstRules({ demands }: ProofContext, set: readonly SetOut[]): Finding[] {
  const groups = new Map<string, [SetOut, ...SetOut[]]>();
  for (const one of set) {
    const key = `${one.view.cladding.id}\n${one.cavity}`;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()].flatMap((group) => {
    const [{ view, cavity }] = group;
    const asking = demands.cavityDepth.filter(
      ({ value }) => !holds("at least", { demand: cavity, limit: value }),
    );
    const [first] = asking;
    if (!first) return [];
    const most = asking.reduce((a, b) => (b.value > a.value ? b : a));
    const governing = first.own ? first : most;
    return [
      finding({
        code: "P001",
        outcome: "attention",
        where: { path: "/limits/cavityMin", ...view.where },
        says: message("proof.cavity.rules", {
          depth: cavity,
          zones: group.length,
          rules: rulesAsking(asking, "mm"),
        }),
        hint: message("proof.rules-disagree", { rule: ruleName(governing.id) }),
        ...compared("at least", { demand: cavity, limit: governing.value, unit: "mm" }),
        source: governing.source,
      }),
    ];
  });
}
