/** Keys that the schema does not know: they are kept, and each is told once, with the known key that is nearest. */
import type { Finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import { nearest } from "./nearest.ts";
import { isGroup, type Path } from "./pointer.ts";
import { problem, type SourceFile } from "./problem.ts";
import { ANY_FACE, type ReadMemo } from "./read-memo.ts";
import { inside, knownKeys, wholeFile } from "./schema-at.ts";

type Places = ReturnType<typeof wholeFile>;

/** With a memo, parts whose keys were all known before are not gone through again. */
export function unknownKeyFindings(file: SourceFile, memo?: ReadMemo): Finding[] {
  const findings: Finding[] = [];
  const visit = (value: object, places: Places, path: Path): void => {
    if (places.length === 0) return;
    const clean = memo && cleanAt(memo, path);
    if (clean?.has(value)) return;
    const before = findings.length;
    visitNew(value, places, path);
    if (findings.length === before) clean?.add(value);
  };
  const visitNew = (value: object, places: Places, path: Path): void => {
    const known = isGroup(value) ? knownKeys(places) : undefined;
    for (const [key, entry] of Object.entries(value)) {
      const step = Array.isArray(value) ? Number(key) : key;
      if (known !== undefined && !known.includes(key)) {
        const unused = known.filter((word) => !Object.hasOwn(value, word));
        findings.push(unknownKey(file, [...path, step], nearest(key, unused)));
      } else if (isHolding(entry)) visit(entry, inside(places, step, entry), [...path, step]);
    }
  };
  if (isHolding(file.document)) visit(file.document, wholeFile(), []);
  return findings;
}

/** Where the memo keeps parts that stand at such a path; undefined where it keeps none. */
function cleanAt({ known }: ReadMemo, path: Path): WeakSet<object> | undefined {
  const [field, at, ...more] = path;
  if (field === undefined || more.length > 0) return undefined;
  if (at !== undefined && field !== "faces") return undefined;
  const place = at === undefined ? String(field) : ANY_FACE;
  const clean = known.get(place) ?? new WeakSet();
  known.set(place, clean);
  return clean;
}

const isHolding = (value: unknown): value is object => typeof value === "object" && value !== null;

function unknownKey(file: SourceFile, path: Path, near: string | undefined): Finding {
  const key = String(path.at(-1));
  return problem(file, {
    code: "F008",
    outcome: "attention",
    path,
    says: message("project.unknown-key", { key }),
    hint:
      near === undefined ? message("project.hint.key-kept") : message("project.hint.key-nearest", { near }),
  });
}

/** The keys of one group that the schema does not know. */
export function unknownKeysOf(document: unknown, path: Path): string[] {
  let places = wholeFile();
  let value = document;
  for (const step of path) {
    value = (value as Record<string | number, unknown>)[step];
    places = inside(places, step, value);
  }
  const known = knownKeys(places);
  return known === undefined || !isGroup(value)
    ? []
    : Object.keys(value).filter((key) => !known.includes(key));
}
