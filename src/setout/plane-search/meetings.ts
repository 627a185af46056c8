/**
 * Every combination whose faces meet, found by sums: with the build-ups chosen one after another, each next one may only
 * lie in the window that the faces it meets leave open, and its choices are sorted by depth.
 */
import { snap } from "../../units/length.ts";
import type { Choice } from "./choices.ts";
import { type Meeting, type Scope, thicknessSets } from "./scope.ts";

/** One combination: the place of a choice for each build-up of the scope, and a thickness for each cladding. */
export interface Combination {
  readonly choices: readonly number[];
  readonly thicknesses: readonly number[];
}

export function choiceAt(scope: Scope, { choices }: Combination, buildUp: number): Choice {
  return scope.buildUps[buildUp]?.choices[choices[buildUp] ?? 0] as Choice;
}

/** Outer plane of a zone. */
export function planeAt(scope: Scope, combination: Combination, zone: number): number {
  const { buildUp, cladding } = scope.zones[zone] as Scope["zones"][number];
  return snap(choiceAt(scope, combination, buildUp).backZ + (combination.thicknesses[cladding] ?? 0));
}

/** How many combinations there are, faces meeting or not. */
export function countAll({ buildUps, claddings }: Scope): number {
  return [...buildUps.map(({ choices }) => choices), ...claddings.map(({ thicknesses }) => thicknesses)]
    .map(({ length }) => length)
    .reduce((product, count) => product * count, 1);
}

/**
 * Calls `found` for each combination whose faces meet.
 * @param wider added to each meeting's limit
 */
export function eachMeeting(scope: Scope, wider: number, found: (combination: Combination) => void): void {
  const order = searchOrder(scope);
  for (const thicknesses of thicknessSets(scope)) {
    const choices: number[] = scope.buildUps.map(() => 0);
    const place = (depth: number): void => {
      const next = order[depth];
      if (next === undefined) {
        found({ choices: [...choices], thicknesses });
        return;
      }
      const options = scope.buildUps[next.buildUp]?.choices ?? [];
      const inner = next.within.every(
        ({ left, right, limit }) =>
          Math.abs(snap(thick(scope, thicknesses, right) - thick(scope, thicknesses, left))) <= limit + wider,
      );
      if (!inner) return;
      let low = Number.NEGATIVE_INFINITY;
      let high = Number.POSITIVE_INFINITY;
      for (const { own, other, limit } of next.toEarlier) {
        const middle = planeAt(scope, { choices, thicknesses }, other) - thick(scope, thicknesses, own);
        low = Math.max(low, middle - limit - wider - SLACK_MM);
        high = Math.min(high, middle + limit + wider + SLACK_MM);
      }
      for (let i = firstFrom(options, low); i < options.length; i++) {
        if ((options[i] as Choice).backZ > high) break;
        choices[next.buildUp] = i;
        const meets = next.toEarlier.every(({ own, other, limit }) => {
          const planes = [own, other].map((zone) => planeAt(scope, { choices, thicknesses }, zone));
          return Math.abs(snap((planes[1] ?? 0) - (planes[0] ?? 0))) <= limit + wider;
        });
        if (meets) place(depth + 1);
      }
    };
    place(0);
  }
}

/** The window only narrows the search; each step is then measured on the grid. */
const SLACK_MM = 0.001;

interface Step {
  readonly buildUp: number;
  /** Meetings of two zones on this build-up: their claddings alone decide. */
  readonly within: readonly Meeting[];
  /** Meetings with zones whose build-up is placed before it. */
  readonly toEarlier: readonly { readonly own: number; readonly other: number; readonly limit: number }[];
}

/** Fixed build-ups first, then each next one that meets one already placed, so that windows are narrow from the start. */
function searchOrder(scope: Scope): Step[] {
  const on = (zone: number): number => scope.zones[zone]?.buildUp ?? -1;
  const placed: number[] = [];
  const left = scope.buildUps.map((_, i) => i);
  const meetsPlaced = (buildUp: number): boolean =>
    scope.meetings.some(
      (one) =>
        (on(one.left) === buildUp && placed.includes(on(one.right))) ||
        (on(one.right) === buildUp && placed.includes(on(one.left))),
    );
  while (left.length > 0) {
    const next =
      left.find((i) => !scope.buildUps[i]?.varied) ?? left.find(meetsPlaced) ?? (left[0] as number);
    placed.push(next);
    left.splice(left.indexOf(next), 1);
  }
  return placed.map((buildUp, at) => ({
    buildUp,
    within: scope.meetings.filter((one) => on(one.left) === buildUp && on(one.right) === buildUp),
    toEarlier: scope.meetings.flatMap(({ left: a, right: b, limit }) => {
      const earlier = (zone: number): boolean => placed.indexOf(on(zone)) < at;
      if (on(a) === buildUp && earlier(b)) return [{ own: a, other: b, limit }];
      return on(b) === buildUp && earlier(a) ? [{ own: b, other: a, limit }] : [];
    }),
  }));
}

function thick({ zones }: Scope, thicknesses: readonly number[], zone: number): number {
  return thicknesses[zones[zone]?.cladding ?? -1] ?? 0;
}

/** The first of the choices, sorted by depth, that is no shallower than `low`. */
function firstFrom(options: readonly Choice[], low: number): number {
  let [from, to] = [0, options.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((options[middle] as Choice).backZ < low) from = middle + 1;
    else to = middle;
  }
  return from;
}
