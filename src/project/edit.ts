/**
 * JSON Patch (RFC 6902) on the raw document. The document handed in is never changed; what an operation leaves alone is
 * shared with the result, so that an edit of one face costs that face.
 */
import type { Finding } from "../findings/finding.ts";
import { finding } from "../findings/finding.ts";
import { type Message, message } from "../text/message.ts";
import { isGroup, parsePointer, valueAt } from "./pointer.ts";
import { shown } from "./problem.ts";
import { sameJson } from "./versions.ts";

export type PatchResult =
  | { readonly ok: true; readonly document: unknown }
  | { readonly ok: false; readonly findings: readonly Finding[] };

type Attempt = { readonly document: unknown } | { readonly refused: Message };
type Steps = readonly string[];

/** Applies the operations in turn, all or none. `operations` may be any JSON: what is wrong with it is told. */
export function applyPatch(document: unknown, operations: unknown): PatchResult {
  if (!Array.isArray(operations))
    return refusal(message("project.patch.not-a-list", { found: shown(operations) }));
  let patched = document;
  for (const [index, operation] of operations.entries()) {
    const attempt = applyOne(patched, operation);
    if ("refused" in attempt) return refusal(attempt.refused, { index, operation });
    patched = attempt.document;
  }
  return { ok: true, document: patched };
}

function refusal(why: Message, at?: { index: number; operation: unknown }): PatchResult {
  const path = isGroup(at?.operation) ? at.operation.path : undefined;
  const says =
    at === undefined
      ? why
      : message("project.patch.refused", { number: at.index + 1, path: shown(path), why });
  const where = typeof path === "string" ? { path } : {};
  const hint = message("project.hint.patch");
  return { ok: false, findings: [finding({ code: "F021", outcome: "fail", where, says, hint })] };
}

function applyOne(document: unknown, operation: unknown): Attempt {
  if (!isGroup(operation)) return refused(message("project.patch.not-an-operation"));
  const { op } = operation;
  const path = pointerIn(operation, "path");
  if (path === undefined) return badPointer(operation, "path");
  if (op === "remove") return remove(document, path);
  if (op === "add" || op === "replace" || op === "test") {
    if (!Object.hasOwn(operation, "value")) return refused(message("project.patch.value-missing"));
    if (op === "add") return add(document, path, operation.value);
    return op === "replace"
      ? replace(document, path, operation.value)
      : test(document, path, operation.value);
  }
  if (op !== "move" && op !== "copy") return refused(message("project.patch.unknown-op", { op: shown(op) }));
  const from = pointerIn(operation, "from");
  if (from === undefined) return badPointer(operation, "from");
  return relocate(document, { from, path, keep: op === "copy" });
}

function pointerIn(operation: Record<string, unknown>, key: "path" | "from"): Steps | undefined {
  const pointer = operation[key];
  return typeof pointer === "string" ? parsePointer(pointer) : undefined;
}

function badPointer(operation: Record<string, unknown>, key: "path" | "from"): Attempt {
  return refused(message("project.patch.bad-pointer", { key, found: shown(operation[key]) }));
}

function refused(why: Message): Attempt {
  return { refused: why };
}

const NOTHING_THERE = message("project.patch.nothing-there");

/** `undefined` is no JSON value, so it can stand for "nothing there". */
function at(document: unknown, steps: Steps): unknown {
  // "-" and indices like "01" name no entry of a list.
  let value = document;
  for (const step of steps) {
    if (Array.isArray(value) && !isIndex(step)) return undefined;
    value = valueAt(value, [step]);
  }
  return value;
}

function isIndex(step: string): boolean {
  return /^(?:0|[1-9]\d*)$/.test(step);
}

function remove(document: unknown, steps: Steps): Attempt {
  if (steps.length === 0) return refused(message("project.patch.whole-file"));
  if (at(document, steps) === undefined) return refused(NOTHING_THERE);
  return {
    document: changed(document, steps.slice(0, -1), (owner) => {
      const key = steps.at(-1) ?? "";
      if (Array.isArray(owner)) return owner.toSpliced(Number(key), 1);
      return Object.fromEntries(Object.entries(owner as object).filter(([name]) => name !== key));
    }),
  };
}

function add(document: unknown, steps: Steps, value: unknown): Attempt {
  const key = steps.at(-1);
  if (key === undefined) return { document: value };
  const owner = at(document, steps.slice(0, -1));
  if (Array.isArray(owner)) {
    const index = key === "-" ? owner.length : isIndex(key) ? Number(key) : Number.NaN;
    if (!(index <= owner.length))
      return refused(message("project.patch.no-such-index", { count: owner.length }));
    return { document: changed(document, steps.slice(0, -1), () => owner.toSpliced(index, 0, value)) };
  }
  if (!isGroup(owner)) return refused(NOTHING_THERE);
  return { document: changed(document, steps.slice(0, -1), () => withKey(owner, key, value)) };
}

function replace(document: unknown, steps: Steps, value: unknown): Attempt {
  if (at(document, steps) === undefined) return refused(NOTHING_THERE);
  return { document: changed(document, steps, () => value) };
}

function test(document: unknown, steps: Steps, value: unknown): Attempt {
  const found = at(document, steps);
  if (found === undefined) return refused(NOTHING_THERE);
  if (sameJson(found, value)) return { document };
  return refused(message("project.patch.test-failed", { found: shown(found), wanted: shown(value) }));
}

function relocate(
  document: unknown,
  { from, path, keep }: { from: Steps; path: Steps; keep: boolean },
): Attempt {
  const value = at(document, from);
  if (value === undefined) return refused(message("project.patch.nothing-at-from"));
  if (keep) return add(document, path, value);
  if (path.length > from.length && from.every((step, i) => step === path[i])) {
    return refused(message("project.patch.into-itself"));
  }
  const without = from.length === 0 ? { document } : remove(document, from);
  return "refused" in without ? without : add(without.document, path, value);
}

/** The document with the value at an existing place changed; only what lies on the way there is copied. */
function changed(document: unknown, steps: Steps, change: (value: unknown) => unknown): unknown {
  const [step, ...rest] = steps;
  if (step === undefined) return change(document);
  const inner = changed(valueAt(document, [step]), rest, change);
  if (Array.isArray(document)) return document.with(Number(step), inner);
  return withKey(document as Record<string, unknown>, step, inner);
}

/** A copy with a key set in its place, or at the end; a key named "__proto__" is a key like any other. */
function withKey(group: Record<string, unknown>, key: string, value: unknown): Record<string, unknown> {
  const entries = Object.entries(group);
  return Object.fromEntries(
    Object.hasOwn(group, key)
      ? entries.map(([name, old]) => [name, name === key ? value : old])
      : [...entries, [key, value]],
  );
}
