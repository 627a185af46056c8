/** P036: every opening into the cavity against what keeps insects and rodents out. Sources disagree and are all named. */
import { closureOpening } from "../codes/animals.ts";
import type { AnimalDemand } from "../codes/demands.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { type Message, message } from "../text/message.ts";
import type { ProofContext, ZoneView } from "./context.ts";
import { ruleName } from "./rules-asking.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function openingSizes(context: ProofContext): Finding[] {
  return [...closures(context), ...joints(context)];
}

/** The widest mesh of the building, against every source on insects, rodents and vermin; embers where there is wildfire. */
function closures({ project, demands, zones, pieceOf }: ProofContext): Finding[] {
  const meshes = zones.flatMap((view) =>
    view.vents.flatMap(({ closure }) => {
      const opening = closureOpening(pieceOf(closure)?.material ?? "");
      return opening === undefined ? [] : [{ view, mark: closure, opening }];
    }),
  );
  const widest = greatest(meshes, ({ opening }) => opening);
  if (!widest) return [];
  const { view, mark, opening } = widest;
  const rules = demands.animals.filter(
    ({ against }) => against !== "embers" || project.site.wildfire === true,
  );
  return [judged(view, { path: undefined, mark, width: opening, rules, kind: "mesh" })];
}

/** The widest open joint of each cladding: through it insects come, and mice where it is wide. */
function joints({ demands, zones }: ProofContext): Finding[] {
  const rules = demands.animals.filter(({ against }) => against === "rodents");
  const widest = new Map<string, { view: ZoneView; width: number }>();
  for (const view of zones) {
    for (const { kind, width } of view.joints) {
      if (kind !== "course gap" && kind !== "sheet joint") continue;
      const known = widest.get(view.cladding.id);
      if (!known || width > known.width) widest.set(view.cladding.id, { view, width });
    }
  }
  return [...widest.values()].map(({ view, width }) =>
    judged(view, { path: view.claddingPath, mark: undefined, width, rules, kind: "joint" }),
  );
}

interface Opening {
  readonly path: string | undefined;
  readonly mark: string | undefined;
  readonly width: number;
  readonly rules: readonly AnimalDemand[];
  readonly kind: "mesh" | "joint";
}

function judged(view: ZoneView, { path, mark, width, rules, kind }: Opening): Finding {
  const passing = rules.filter(({ widestMm }) => !holds("at most", { demand: width, limit: widestMm }));
  const shut = passing.length === 0;
  const governing = greatest(shut ? rules : passing, ({ widestMm }) => -widestMm);
  const limit = governing?.widestMm ?? width;
  return finding({
    code: "P036",
    outcome: shut ? "pass" : "attention",
    where: { ...view.where, ...(path ? { path } : {}), ...(mark ? { marks: [mark] } : {}) },
    says: message(`proof.animals.${kind}-${shut ? "shut" : "open"}`, {
      width,
      rules: (shut ? rules : passing).map(named),
    }),
    ...(shut ? {} : { hint: message(`proof.animals.${kind}-hint`) }),
    ...compared("at most", { demand: width, limit, unit: "mm" }),
    working: {
      formula: "w ≤ w_max",
      inputs: [
        input("w", { meaning: "opening-width", value: width, unit: "mm", basis: "derived" }),
        input("w_max", {
          meaning: "widest-opening",
          value: limit,
          unit: "mm",
          basis: governing?.basis ?? "typical",
        }),
      ],
      substituted: `${written(width)} ${shut ? "≤" : ">"} ${limit}`,
    },
    source: governing?.source ?? { kind: "common practice" },
    figures: rules.flatMap(({ source }) => source.figures ?? []),
  });
}

function named({ id, widestMm }: AnimalDemand): Message {
  return message("proof.rule-allows.mm", { rule: ruleName(id), value: widestMm });
}
