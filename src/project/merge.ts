/**
 * Makes one document of two that were made from the same one. What only one of them changed is taken; what both changed
 * otherwise is a conflict, for the reader to choose. The documents handed in are never changed.
 */
import { pointerOf } from "./pointer.ts";
import { type Change, changesOf, type Form, formOf, type Place, partsOf, sameJson } from "./versions.ts";

export interface Versions {
  /** What both were made from. */
  readonly base: unknown;
  readonly mine: unknown;
  readonly other: unknown;
}

export type Side = "mine" | "other";

export interface Conflict extends Versions {
  /** Names the conflict among those of one merge. */
  readonly key: string;
  readonly place: Place;
  /** `order`: both moved the entries of a list; the versions are their names in order. Undefined stands for what is not there. */
  readonly kind: Change["kind"];
}

export interface Merged {
  /** With mine wherever a conflict was not chosen yet. */
  readonly document: unknown;
  /** All of them, chosen or not. */
  readonly conflicts: readonly Conflict[];
}

/** @param chosen sides by the keys of conflicts */
export function mergeDocuments(versions: Versions, chosen: ReadonlyMap<string, Side> = new Map()): Merged {
  const conflicts: Conflict[] = [];
  const settle: Settle = (conflict) => {
    const key = `${conflict.kind} ${pointerOf(conflict.place)}`;
    conflicts.push({ ...conflict, key });
    return chosen.get(key) ?? "mine";
  };
  return { document: mergeAt([], versions, settle), conflicts };
}

/** What the other changed and I left as it was: a merge takes it without asking. */
export function takenFrom({ base, other }: Versions, conflicts: readonly Conflict[]): readonly Change[] {
  const within = (place: Place, outer: Place): boolean => outer.every((name, at) => place[at] === name);
  return changesOf(base, other).filter(
    ({ place, kind }) =>
      !conflicts.some((one) =>
        one.kind === "order" ? sameAs(one, { place, kind }) : within(place, one.place),
      ),
  );
}

function sameAs(a: Pick<Change, "place" | "kind">, b: Pick<Change, "place" | "kind">): boolean {
  return a.kind === b.kind && sameJson(a.place, b.place);
}

const EMPTY: Readonly<Record<Form, unknown>> = { list: [], group: {}, whole: undefined };

type Settle = (conflict: Omit<Conflict, "key">) => Side;

/** Undefined where nothing is left. */
function mergeAt(place: Place, versions: Versions, settle: Settle): unknown {
  const { base, mine, other } = versions;
  if (sameJson(mine, other) || sameJson(base, other)) return mine;
  if (sameJson(base, mine)) return other;
  // A list or group that neither found is begun by both: what each put in stands in one.
  const begun = base === undefined ? EMPTY[formOf([mine, other])] : base;
  const form = formOf([mine, other, begun]);
  if (form === "whole") return versions[settle({ ...versions, place, kind: "value" })];
  const parts = { base: partsOf(begun, form), mine: partsOf(mine, form), other: partsOf(other, form) };
  const merged = new Map<string, unknown>();
  for (const name of new Set([...parts.mine.keys(), ...parts.other.keys()])) {
    const of = {
      base: parts.base.get(name),
      mine: parts.mine.get(name),
      other: parts.other.get(name),
    };
    const value = mergeAt([...place, name], of, settle);
    if (value !== undefined) merged.set(name, value);
  }
  if (form === "group") return Object.fromEntries(merged);
  const left = {
    base: [...parts.base.keys()],
    mine: [...parts.mine.keys()].filter((name) => merged.has(name)),
    other: [...parts.other.keys()].filter((name) => merged.has(name)),
  };
  return orderOf(place, left, settle).map((name) => merged.get(name));
}

interface Orders {
  readonly base: readonly string[];
  readonly mine: readonly string[];
  readonly other: readonly string[];
}

/**
 * The names that all three know stand as whoever moved them put them; what one alone knows comes after what it stood
 * behind there. The same whoever is called mine.
 */
function orderOf(place: Place, { base, mine, other }: Orders, settle: Settle): readonly string[] {
  const isShared = (name: string): boolean =>
    base.includes(name) && mine.includes(name) && other.includes(name);
  const shared = {
    base: base.filter(isShared),
    mine: mine.filter(isShared),
    other: other.filter(isShared),
  };
  let stand = shared.mine;
  if (!sameJson(shared.mine, shared.other)) {
    if (sameJson(shared.base, shared.mine)) stand = shared.other;
    else if (!sameJson(shared.base, shared.other))
      stand = shared[settle({ ...shared, place, kind: "order" })];
  }
  const [behindMine, behindOther] = [runsOf(mine, isShared), runsOf(other, isShared)];
  const behind = (name: string | undefined): readonly string[] => {
    const runs = [behindMine.get(name) ?? [], behindOther.get(name) ?? []];
    return runs.sort((a, b) => (a.join("\n") < b.join("\n") ? -1 : 1)).flat();
  };
  return [
    ...new Set(
      [undefined, ...stand].flatMap((name) => [...(name === undefined ? [] : [name]), ...behind(name)]),
    ),
  ];
}

/** What stands behind each shared name up to the next; behind undefined what stands in front of all. */
function runsOf(
  names: readonly string[],
  isShared: (name: string) => boolean,
): ReadonlyMap<string | undefined, readonly string[]> {
  const runs = new Map<string | undefined, string[]>();
  let last: string | undefined;
  for (const name of names) {
    if (isShared(name)) last = name;
    else runs.set(last, [...(runs.get(last) ?? []), name]);
  }
  return runs;
}
