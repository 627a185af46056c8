/** `outerleaf takeoff`: areas, masses, screws, finish, and the order with its sum. */

import { takeoffJson } from "../../output/json/takeoff.ts";
import { countLine, printFindings, unsettled } from "../../output/report/findings.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayNumber } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import { exitOf } from "../exit.ts";
import { workThrough } from "../issue/work.ts";
import type { Job } from "../job.ts";
import { openProject } from "../open-project.ts";
import { table } from "../print/table.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  const { takeoff, cutFindings: findings } = workThrough(job, opened);
  const options = { reader, waivers: project.waivers };
  return {
    exit: exitOf(findings, project.waivers),
    json: job.options.json ? takeoffJson({ project, takeoff, findings }, reader) : undefined,
    text: [
      quantities(takeoff, reader),
      "",
      say(message("cli.takeoff.order"), reader),
      orderTable(takeoff, reader),
      say(
        message("cli.takeoff.sum", {
          sum: takeoff.order.sum,
          currency: takeoff.order.currency,
          without: takeoff.order.withoutPrice,
        }),
        reader,
      ),
      "",
      printFindings(unsettled(findings), options) + countLine(findings, options),
      "",
    ].join("\n"),
  };
}

function quantities({ areas, massKg, masses, screws, finishes }: Takeoff, reader: Reader): string {
  return [
    ...areas.map(({ face, zone, net, pieces, openSharePercent }) =>
      say(message("cli.takeoff.area", { face, zone, net, pieces, open: openSharePercent }), reader),
    ),
    ...masses.map(({ kind, material, count, massKg: own }) =>
      say(message("cli.takeoff.mass", { kind, material, count, massKg: own }), reader),
    ),
    say(message("cli.takeoff.mass-sum", { massKg }), reader),
    ...screws.map(({ screw, count }) => say(message("cli.takeoff.screws", { screw, count }), reader)),
    ...finishes.map(({ cladding, finish, areaM2, litres }) =>
      litres === undefined
        ? say(message("cli.takeoff.finish", { cladding, finish, areaM2 }), reader)
        : say(message("cli.takeoff.finish-litres", { cladding, finish, areaM2, ...litres }), reader),
    ),
  ].join("\n");
}

function orderTable({ order: { lines, consumables, currency } }: Takeoff, reader: Reader): string {
  const rows = [...lines, ...consumables].map(({ item, unit, ordered, amount }) => [
    sayNumber(ordered, Number.isInteger(ordered) ? 0 : 2, reader),
    say(message(`schedule.unit.${unit}`), reader),
    amount === undefined ? "–" : `${sayNumber(amount, 2, reader)} ${currency}`,
    say(item, reader),
  ]);
  return table(rows, { indent: 2, right: [0, 2] });
}
