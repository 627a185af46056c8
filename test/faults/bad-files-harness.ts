/** One bad file with what must be said of it, and the check that it is. */
import { readFileSync } from "node:fs";
import { expect } from "vitest";
import type { RuleCode } from "../../src/findings/codes.ts";
import type { Finding, PatchOperation } from "../../src/findings/finding.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { readProject } from "../../src/project/read.ts";
import { type Reader, say } from "../../src/text/say.ts";

export const FILE = "bad.outerleaf.json";

const demoText = readFileSync(
  new URL("../../examples/atelier-bouleau.outerleaf.json", import.meta.url),
  "utf8",
);

export interface BadFile {
  readonly kind: string;
  /** What makes the demo bad; or the whole text of a file. */
  readonly by: readonly PatchOperation[] | { readonly text: string };
  readonly code: RuleCode;
  readonly outcome?: "fail" | "attention";
  /** JSON Pointer of the finding. */
  readonly path: string;
  /** The value found, as both sentences show it; French apart where its sign differs. */
  readonly value: string;
  readonly valueFr?: string;
  /** Part of the English hint. */
  readonly mend: string;
  /** The edit offered. Applied, it must take the finding away. */
  readonly edit?: readonly PatchOperation[];
  /** Codes of further findings that follow from the same fault. */
  readonly also?: readonly RuleCode[];
}

export const replace = (path: string, value: unknown): PatchOperation => ({ op: "replace", path, value });
export const add = (path: string, value: unknown): PatchOperation => ({ op: "add", path, value });
export const remove = (path: string): PatchOperation => ({ op: "remove", path });

/** The demo's document, changed. */
export function changedDemo(operations: readonly PatchOperation[]): unknown {
  const patched = applyPatch(JSON.parse(demoText), operations);
  if (!patched.ok) throw new Error(`the test's own patch fails: ${JSON.stringify(patched.findings)}`);
  return patched.document;
}

function textOf({ by }: BadFile): string {
  return "text" in by ? by.text : JSON.stringify(changedDemo(by), null, 1);
}

const READERS: Readonly<Record<"en" | "fr", Reader>> = {
  en: { language: "en", units: "mm", denominator: 16 },
  fr: { language: "fr", units: "mm", denominator: 16 },
};

/** Both sentences of a finding, complete: a key or a value that is missing shows as `[key]`. */
function sentences({ says, hint }: Finding): Record<"en" | "fr", { says: string; hint: string }> {
  const both = (["en", "fr"] as const).map((language) => {
    const said = { says: say(says, READERS[language]), hint: hint ? say(hint, READERS[language]) : "" };
    expect(said.says).not.toMatch(/\[project\./);
    expect(said.hint).not.toMatch(/\[project\./);
    return [language, said] as const;
  });
  return Object.fromEntries(both) as Record<"en" | "fr", { says: string; hint: string }>;
}

export function expectTold(bad: BadFile): void {
  const result = readProject(textOf(bad), FILE);
  const { code, outcome = "fail", path, also = [] } = bad;
  expect(result.ok).toBe(outcome === "attention");
  expect(result.findings.map((one) => one.code).sort()).toEqual([code, ...also].sort());
  const told = result.findings.find((one) => one.code === code && (one.where.path ?? "") === path);
  if (told === undefined) throw new Error(`no ${code} at ${path}: ${JSON.stringify(result.findings)}`);
  expect(told).toEqual({
    code,
    outcome,
    provisional: false,
    where: expect.objectContaining(code === "F022" ? {} : { path }),
    says: { key: expect.stringMatching(/^project\./), values: expect.objectContaining({ file: FILE }) },
    hint: { key: expect.stringMatching(/^project\./), values: expect.anything() },
    source: { kind: "your project" },
    ...(bad.edit === undefined ? {} : { edit: bad.edit }),
  });
  const said = sentences(told);
  expect(said.en.says).toContain(FILE);
  expect(said.fr.says).toContain(FILE);
  expect(said.en.says).toContain(bad.value);
  expect(said.fr.says).toContain(bad.valueFr ?? bad.value);
  expect(said.en.hint).toContain(bad.mend);
  expect(said.fr.hint).not.toBe("");
  expect(said.fr.says).not.toBe(said.en.says);
  if (told.edit !== undefined && !("text" in bad.by)) expectMended(changedDemo(bad.by), told);
}

/** An edit that is offered must take its own finding away. */
function expectMended(document: unknown, { code, where, edit }: Finding): void {
  const mended = applyPatch(document, edit);
  if (!mended.ok) throw new Error(`the edit offered cannot be applied: ${JSON.stringify(mended.findings)}`);
  const left = readProject(JSON.stringify(mended.document), FILE).findings;
  expect(left.filter((one) => one.code === code && one.where.path === where.path)).toEqual([]);
}
