/** Versions of one document beside each other: what of them is the same thing, and what differs. */
import { isGroup } from "./pointer.ts";

/** Names from the outside in: keys of groups, and of an entry of a list what names it there, mostly its id. */
export type Place = readonly string[];

export interface Change {
  readonly place: Place;
  /** `order`: the same entries stand in another order; before and after are their names. */
  readonly kind: "value" | "order";
  /** Undefined where there was nothing. */
  readonly before: unknown;
  /** Undefined where nothing is left. */
  readonly after: unknown;
}

/** What leads from one version to another, from the outside in and in the order of the first; none where they are the same. */
export function changesOf(before: unknown, after: unknown): readonly Change[] {
  return changesAt([], before, after);
}

function changesAt(place: Place, before: unknown, after: unknown): readonly Change[] {
  if (sameJson(before, after)) return [];
  const form = formOf([before, after]);
  if (form === "whole") return [{ place, kind: "value", before, after }];
  const [was, is] = [partsOf(before, form), partsOf(after, form)];
  const names = [...was.keys(), ...[...is.keys()].filter((name) => !was.has(name))];
  const inner = names.flatMap((name) => changesAt([...place, name], was.get(name), is.get(name)));
  if (form === "group") return inner;
  const [stood, stand] = [
    [...was.keys()].filter((name) => is.has(name)),
    [...is.keys()].filter((name) => was.has(name)),
  ];
  if (sameJson(stood, stand)) return inner;
  return [...inner, { place, kind: "order", before: stood, after: stand }];
}

/**
 * How versions of one thing are looked into: field by field, entry by entry, or not at all. A list is looked into where
 * each of its entries has a name of its own; what has changed its kind is another thing.
 */
export type Form = "group" | "list" | "whole";

export function formOf(versions: readonly unknown[]): Form {
  const [first] = versions;
  if (isGroup(first)) {
    const same = versions.every(
      (one) => isGroup(one) && sameJson(one.kind, first.kind) && sameJson(one.id, first.id),
    );
    return same ? "group" : "whole";
  }
  const lists = versions.every((one) => Array.isArray(one) && namesIn(one) !== undefined);
  return lists && versions.some((one) => (one as unknown[]).length > 0) ? "list" : "whole";
}

/** What a version of this form consists of, by name. */
export function partsOf(version: unknown, form: Exclude<Form, "whole">): ReadonlyMap<string, unknown> {
  if (form === "group") return new Map(Object.entries(version as Record<string, unknown>));
  const list = version as readonly unknown[];
  return new Map((namesIn(list) ?? []).map((name, at) => [name, list[at]]));
}

/** The names of a list's entries, or undefined where one has none or two have the same. */
function namesIn(list: readonly unknown[]): readonly string[] | undefined {
  const names = list.map(nameOf);
  const all = names.filter((name) => name !== undefined);
  return all.length === list.length && new Set(all).size === list.length ? all : undefined;
}

/** An entry's id; a word stands for itself, and what was read or measured of a face for that face and what of it. */
function nameOf(entry: unknown): string | undefined {
  if (typeof entry === "string") return entry;
  if (!isGroup(entry)) return undefined;
  const { id, face, opening, end } = entry;
  const names = id === undefined ? [face, opening, end].filter((one) => one !== undefined) : [id];
  const told = names.filter((one) => typeof one === "string");
  return told.length > 0 && told.length === names.length ? told.join(" ") : undefined;
}

/** Equality of JSON values by RFC 6902 section 4.6: the order of keys does not count. */
export function sameJson(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (Array.isArray(a)) {
    return Array.isArray(b) && a.length === b.length && a.every((entry, i) => sameJson(entry, b[i]));
  }
  if (!isGroup(a) || !isGroup(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && sameJson(a[key], b[key]))
  );
}
