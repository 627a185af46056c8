/** How a step's choices are put into words, and what is said where there is none. */
import type { BuildUp, Project } from "../project/schema/project.ts";
import { type Message, message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import type { PassingCombination, PlaneCombination, PlaneSearchResult } from "./plane-search/index.ts";

/** What other battens and packers bring along; the other looks a combination deserves, the wall deserves as it stands. */
const BROUGHT_ALONG: readonly string[] = ["soft-packers", "narrower-batten"];

/**
 * What is built otherwise than it stands, and what then deserves a look.
 * @param laps how the laps of corners turn with it
 */
export function choiceSaid(
  project: Project,
  one: PassingCombination,
  laps: readonly Message[] = [],
): Message {
  const changes = listed([...changesOf(project, one), ...laps]);
  const rules = [...new Set(one.attention.map(({ rule }) => rule))]
    .filter((rule) => BROUGHT_ALONG.includes(rule))
    .map((rule) => message(`planes.rule.${rule}`));
  return rules.length === 0
    ? message("planes.choice", { changes })
    : message("planes.choice.look", { changes, rules });
}

/** Why a step is offered nothing. */
export interface NoneHolds {
  readonly result: PlaneSearchResult;
  /** How many of the passing combinations the whole wall was set out with. */
  readonly tried: number;
  /** What the first of them upsets. */
  readonly upsets?: Message;
}

/** The proof that nothing in stock mends a step, as its hint; undefined where it was not searched to an end. */
export function noneSaid(project: Project, { result, tried, upsets }: NoneHolds): Message | undefined {
  const { counts, failing, nearest } = result;
  const { all, meeting, passing } = counts;
  if (passing > 0) return upsets && message("planes.none.wall", { all, passing, tried, says: upsets });
  const [least] = failing;
  const rule = least?.failed[0];
  if (least && rule) {
    const changes = changesOf(project, least);
    if (changes.length === 0) return undefined;
    return message("planes.none.rules", { all, meeting, changes: listed(changes), says: rule.says });
  }
  const steps = (nearest?.meetings ?? []).map(({ step, limit }) => Math.abs(step) - limit);
  if (steps.length === 0) return message("planes.none.far", { all });
  return message("planes.none.apart", { all, over: snap(Math.max(...steps)) });
}

function listed(changes: readonly Message[]): Message {
  return changes.reduce((first, second) => message("planes.choice.and", { first, second }));
}

function changesOf(project: Project, { buildUps, claddings }: PlaneCombination): Message[] {
  const stacks = buildUps.flatMap((plan) => {
    const present = project.buildUps.find(({ id }) => id === plan.buildUp);
    return present ? stackSaid(present, plan) : [];
  });
  const screws = claddings.flatMap(({ cladding, screw }) => {
    const changed = project.claddings.some((one) => one.id === cladding && one.screw !== screw);
    return changed ? [message("planes.choice.cladding", { cladding, screw })] : [];
  });
  return [...stacks, ...screws];
}

function stackSaid(present: BuildUp, plan: PlaneCombination["buildUps"][number]): Message[] {
  const { buildUp, battens, packers, battenScrew, railScrew } = plan;
  const packing = snap(packers.reduce((sum, one) => sum + one, 0));
  const stood = {
    battens: present.layers.flatMap((layer) => ("stock" in layer ? [layer.stock] : [])),
    packing: snap(
      present.layers.reduce((sum, layer) => (layer.kind === "packer" ? sum + layer.thickness : sum), 0),
    ),
  };
  const screws = [
    ...(battenScrew === present.battenScrew ? [] : [battenScrew]),
    ...(railScrew === undefined || railScrew === present.railScrew ? [] : [railScrew]),
  ];
  const same = battens.join() === stood.battens.join() && packing === stood.packing;
  if (same && screws.length === 0) return [];
  const stack =
    packing === 0
      ? message("planes.choice.stack", { buildUp, battens })
      : message("planes.choice.packed", { buildUp, battens, packing });
  return [screws.length === 0 ? stack : message("planes.choice.screws", { stack, screws })];
}
