/** The way to a place or a piece in its published shape. */
import type { Demands } from "../../codes/demands.ts";
import type { Point } from "../../geometry/point.ts";
import { screwById } from "../../project/lookup.ts";
import type { Project } from "../../project/schema/project.ts";
import type { RemovalCare } from "../../setout/removal/care.ts";
import { type Removal, screwsOf } from "../../setout/removal/reach.ts";
import { type Message, message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import type { ReachJson } from "../shapes/reach.ts";

/** What was asked for, and the way there. */
export interface Reached {
  readonly face: string;
  readonly goal:
    | { readonly kind: "piece"; readonly mark: string }
    | { readonly kind: "place"; readonly at: Point; readonly depth: "membrane" | "batten" };
  readonly way: Removal;
}

export interface ReachFacts {
  readonly reached: Reached;
  readonly care: RemovalCare;
  readonly project: Project;
  readonly demands: Demands;
}

export function reachJson(facts: ReachFacts, reader: Reader): ReachJson {
  const { reached, project } = facts;
  const { face, goal, way } = reached;
  return {
    schemaVersion: 1,
    face,
    ...(goal.kind === "piece" ? { mark: goal.mark } : { at: [...goal.at], depth: goal.depth }),
    steps: way.steps.map(({ mark, kind, screws, massKg }) => ({
      mark,
      kind,
      screws: withDrivers(screws, project),
      massKg,
    })),
    screws: withDrivers(screwsOf(way), project),
    screwCount: way.screws,
    massKg: way.massKg,
    cautions: cautionsOf(facts).map((caution) => ({ key: caution.key, says: say(caution, reader) })),
  };
}

/** The driver is told where the stock tells it: it cannot be seen from a screw's size. */
export function withDrivers(
  screws: Removal["steps"][number]["screws"],
  project: Project,
): ReachJson["screws"] {
  return screws.map(({ screw, count }) => {
    const driver = screwById(project, screw)?.driver;
    return { screw, count, ...(driver !== undefined && { driver }) };
  });
}

export function cautionsOf({ care, demands }: Pick<ReachFacts, "care" | "demands">): Message[] {
  return [
    ...(care.high ? [message("proof.caution.heights", { height: demands.fallHeightMm })] : []),
    ...(care.overhead ? [message("cli.reach.overhead")] : []),
    ...(care.heavy.length > 0
      ? [message("cli.reach.two-people", { marks: care.heavy, limit: demands.onePersonKg })]
      : []),
  ];
}
