/**
 * How often the saw is set: the fence for the cuts of sheets, the stop for those of lengths. What is cut alike is cut together,
 * side by side or one on another, at one setting each cut; `docs/decisions/0013` tells why that is counted.
 */
import { toGridSteps } from "../units/length.ts";
import { numberedCuts } from "./cut-order.ts";
import type { CutBar, CutSheet } from "./model.ts";

/** What a sheet or bar asks of the saw, cut after cut, in grid steps. */
export interface Settings {
  /** Of the same name are sheets or bars that are cut alike. */
  readonly name: string;
  readonly list: readonly number[];
}

/** From the left or lower edge of each part to the blade. */
export function sheetSettings({ stockId, tree }: Pick<CutSheet, "stockId" | "tree">): Settings {
  const cuts = numberedCuts(tree).map(({ region: { x, y, width, height }, from, to }) => {
    const upright = from[0] === to[0];
    const setting = toGridSteps(upright ? from[0] - x : from[1] - y);
    return { setting, name: [upright, ...[x, y, width, height].map(toGridSteps), setting].join(" ") };
  });
  return {
    name: [stockId, ...cuts.map(({ name }) => name)].join(" | "),
    list: cuts.map(({ setting }) => setting),
  };
}

/** From the stop to the blade: the length of each piece. */
export function barSettings({ stockId, pieces }: Pick<CutBar, "stockId" | "pieces">): Settings {
  const list = pieces.map(({ from, to }) => toGridSteps(to - from));
  return { name: [stockId, ...list].join(" | "), list };
}

/** For sheets or bars in their order: those cut alike count once where they follow one another. */
export function countOf(units: readonly Settings[]): number {
  const cuts = units.flatMap(({ name, list }, at) => (name === units[at - 1]?.name ? [] : list));
  return cuts.filter((setting, at) => setting !== cuts[at - 1]).length;
}

/**
 * Units in an order that sets the saw less often: what is cut alike together, and where the saw can stay as it is, what begins with
 * that next. Otherwise they keep their order.
 *
 * @param settingsOf asked of a unit once
 */
export function inOrder<Unit>(units: readonly Unit[], settingsOf: (unit: Unit) => Settings): Unit[] {
  const lots = new Map<string, { readonly list: readonly number[]; readonly units: Unit[] }>();
  for (const unit of units) {
    const { name, list } = settingsOf(unit);
    const lot = lots.get(name);
    if (lot) lot.units.push(unit);
    else lots.set(name, { list, units: [unit] });
  }
  const left = [...lots.values()];
  const ordered: Unit[] = [];
  let last: number | undefined;
  while (left.length > 0) {
    const at = Math.max(
      0,
      left.findIndex(({ list: [first] }) => first === last),
    );
    const [lot] = left.splice(at, 1);
    ordered.push(...(lot?.units ?? []));
    last = lot?.list.at(-1) ?? last;
  }
  return ordered;
}
