/** Rules on what stands behind a cladding: its cavity, the screws of battens and rails, packers on soft ground. */
import type { Demands } from "../../codes/demands.ts";
import type { ZoneRef } from "../../project/lookup.ts";
import type { Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import type { Choice } from "./choices.ts";
import type { RuleSaid } from "./model.ts";
import type { ScopeBuildUp } from "./scope.ts";
import { chosenScrew } from "./screws.ts";

export interface BuildUpVerdict {
  readonly screws: { readonly batten: string; readonly rail?: string };
  readonly said: readonly RuleSaid[];
}

export function judgeBuildUp(
  { project, demands }: { readonly project: Project; readonly demands: Demands },
  { buildUp, present }: ScopeBuildUp,
  choice: Choice,
  zones: readonly ZoneRef[],
): BuildUpVerdict {
  const { screwBite } = project.limits;
  const batten = chosenScrew(project, {
    rule: "batten-screw",
    use: "batten",
    present: buildUp.battenScrew,
    limit: screwBite.studs.value,
    // A screw may end anywhere in the depth of the wall.
    held: [{ zones, passes: choice.toStud, holder: project.structure.studs.depth, comingOut: "nothing" }],
  });
  const rail =
    choice.rail &&
    chosenScrew(project, {
      rule: "rail-screw",
      use: "batten",
      present: buildUp.railScrew ?? buildUp.battenScrew,
      limit: screwBite.cladding.value,
      // Over a stud it may run on into the wall, as the batten's own screws do; between studs it only pierces.
      held: [{ zones, passes: choice.rail.toBatten, holder: choice.rail.batten, comingOut: "attention" }],
    });
  const soft = buildUp.layers.some((layer) => layer.kind === "insulation" && layer.bearing === "soft");
  return {
    screws: { batten: batten.screw, ...(rail && { rail: rail.screw }) },
    said: [
      ...batten.said,
      ...(rail?.said ?? []),
      ...cavity(demands, choice.cavity, zones),
      ...narrower({ choice, present, zones }),
      ...(choice.packing > 0 && soft
        ? [{ rule: "soft-packers", outcome: "attention", zones, says: message("planes.soft") } as const]
        : []),
    ],
  };
}

/** A narrower batten may not reach both pieces at a joint; set-out and proof say so once it is in. */
function narrower(of: {
  readonly choice: Choice;
  readonly present: Choice;
  readonly zones: readonly ZoneRef[];
}): RuleSaid[] {
  return of.choice.battens.flatMap(({ id, width }, i): RuleSaid[] => {
    const before = of.present.battens[i]?.width ?? width;
    if (width >= before) return [];
    const says = message("planes.narrower", { batten: id, width, before });
    const numbers = { demand: width, limit: before, unit: "mm" } as const;
    return [{ rule: "narrower-batten", outcome: "attention", zones: of.zones, ...numbers, says }];
  });
}

/** The project's limit is kept; what named rule sets ask beyond it is told, for they disagree. */
function cavity(demands: Demands, depth: number, zones: readonly ZoneRef[]): RuleSaid[] {
  const limit = demands.cavityMinMm;
  const about = { zones, demand: depth, unit: "mm" } as const;
  if (depth < limit) {
    const says = message("proof.cavity.shallow", { depth, least: limit });
    return [{ ...about, rule: "cavity", outcome: "fail", limit, says }];
  }
  const asking = demands.cavityDepth.filter(({ value }) => value > depth);
  const [first] = asking;
  if (!first) return [];
  const governing = first.own ? first : asking.reduce((a, b) => (b.value > a.value ? b : a));
  const rules = asking.map(({ id, value }) =>
    message("proof.rule-asks.mm", { rule: message(`proof.rule.${id}`), value }),
  );
  const says = message("planes.cavity-rules", { depth, rules });
  return [{ ...about, rule: "cavity-rules", outcome: "attention", limit: governing.value, says }];
}
