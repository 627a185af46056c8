/** The way to a place or a piece as text: one numbered line a step, then sums and cautions. */
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { cautionsOf, type ReachFacts, withDrivers } from "../json/reach.ts";
import type { ReachJson } from "../shapes/reach.ts";
import { table } from "./table.ts";

export function printReach(facts: ReachFacts, reader: Reader): string {
  const { reached, project } = facts;
  const { face, goal, way } = reached;
  const tell = (key: string, values = {}): string => say(message(`cli.reach.${key}`, values), reader);
  const title =
    goal.kind === "piece"
      ? tell("to-mark", { mark: goal.mark, face })
      : tell(`to-${goal.depth}`, { x: goal.at[0], y: goal.at[1], face });
  const rows = way.steps.map(({ mark, kind, screws, massKg }, i) => [
    `${i + 1}.`,
    mark,
    say(message(`term.${kind}`), reader),
    tell("mass", { massKg }),
    screwsText(withDrivers(screws, project), reader),
  ]);
  return [
    title,
    table(rows, { indent: 2, right: [0, 3] }),
    tell("sum", { pieces: way.steps.length, screws: way.screws, massKg: way.massKg }),
    "",
    ...cautionsOf(facts).map((caution) => say(caution, reader)),
    say(message("cli.caution"), reader),
    "",
  ].join("\n");
}

function screwsText(screws: ReachJson["screws"], reader: Reader): string {
  if (screws.length === 0) return say(message("cli.reach.no-screws"), reader);
  return screws
    .map(({ screw, count, driver }) => {
      const says =
        driver === undefined
          ? message("cli.reach.screw", { screw, count })
          : message("cli.reach.screw-driver", { screw, count, driver });
      return say(says, reader);
    })
    .join(", ");
}
