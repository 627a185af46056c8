/** The catalogues and the program agree: every key that the program says exists, and every key that exists is said. */
import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { parseJson } from "../../src/project/json.ts";
import "../../src/project/intake/texts.ts";
import "../../src/server/texts.ts";
import "../../src/web/edit/help/texts.ts";
import "../../src/web/site/texts.ts";
import "../../src/web/kept/texts.ts";
import "../../src/web/progress/texts.ts";
import "../../src/web/survey/texts.ts";
import "../../src/web/upkeep/texts.ts";
import "../../src/web/walk/texts.ts";
import { doubledKeys, LANGUAGES, messageKeys, template } from "../../src/text/catalogue.ts";

const root = new URL("../../", import.meta.url);

/**
 * Keys that no literal in the program names, because a form of a template makes them. Add a line with its reason.
 * Keys made in the program by a template literal, such as `drawing.line.${kind}`, need no line: the literal is found.
 */
const MADE_BY_FORMS: readonly { readonly prefix: string; readonly reason: string }[] = [
  { prefix: "term.", reason: "`{kind:term}` in a template asks for the word that its value names" },
];

const files = readdirSync(new URL("data/text/", root)).filter((name) => name.endsWith(".json"));
const contents = files.map((name) => ({
  name,
  text: readFileSync(new URL(`data/text/${name}`, root), "utf8"),
}));
const keys = messageKeys();

/** Keys start with the name of their catalogue; terms.json holds `term.…`, and proof-air.json some more of `proof.…`. */
const subjects = files.map((name) => (name === "terms.json" ? "term" : name.replace(/(-\w+)?\.json$/, "")));
const KEY = new RegExp(`^(?:${subjects.join("|")})\\.`);
const FILE_NAME = /\.(?:json|ts|tsx|css|html|svg|pdf|csv|js|mjs)$/;

interface Said {
  readonly literals: ReadonlyMap<string, string>;
  readonly patterns: ReadonlyMap<string, RegExp>;
}

function literally(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

/** Every text in the program that reads like a key, and every template literal that makes keys. */
function saidBySource(): Said {
  const literals = new Map<string, string>();
  const patterns = new Map<string, RegExp>();
  const sources = readdirSync(new URL("src/", root), { recursive: true, encoding: "utf8" }).filter((name) =>
    /\.tsx?$/.test(name),
  );
  for (const name of sources) {
    const source = ts.createSourceFile(
      name,
      readFileSync(new URL(`src/${name}`, root), "utf8"),
      ts.ScriptTarget.Latest,
    );
    const visit = (node: ts.Node): void => {
      if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
      if (ts.isStringLiteralLike(node) && KEY.test(node.text) && !FILE_NAME.test(node.text)) {
        literals.set(node.text, name);
      }
      if (ts.isTemplateExpression(node) && KEY.test(node.head.text)) {
        const parts = [node.head.text, ...node.templateSpans.map((span) => span.literal.text)];
        patterns.set(`${name}: ${parts.join("…")}`, new RegExp(`^${parts.map(literally).join(".+")}$`));
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return { literals, patterns };
}

const said = saidBySource();

describe("the keys of the catalogues", () => {
  it("are in files that the program loads, all of them", () => {
    const inFiles = contents.flatMap(({ text }) => Object.keys(JSON.parse(text) as object));
    expect(new Set(keys)).toEqual(new Set(inFiles));
  });

  it("stand in one file, once", () => {
    expect(doubledKeys()).toEqual([]);
    for (const { name, text } of contents) {
      const parsed = parseJson(text);
      expect({ name, doubled: parsed.ok ? [] : parsed.faults.map(({ path }) => path) }).toEqual({
        name,
        doubled: [],
      });
    }
  });

  it("start with the name of their file", () => {
    const strays = contents.flatMap(({ name, text }, i) =>
      Object.keys(JSON.parse(text) as object)
        .filter((key) => !key.startsWith(`${subjects[i]}.`))
        .map((key) => `${name}: ${key}`),
    );
    expect(strays).toEqual([]);
  });

  it("exist where the program says them", () => {
    const known = new Set(keys);
    const missing = [...said.literals]
      .filter(([key]) => !known.has(key))
      .map(([key, name]) => `${name}: ${key}`);
    expect(missing).toEqual([]);
  });

  it("exist for every template literal that makes them", () => {
    const empty = [...said.patterns]
      .filter(([, pattern]) => !keys.some((key) => pattern.test(key)))
      .map(([at]) => at);
    expect(empty).toEqual([]);
  });

  it("are all said", () => {
    const patterns = [...said.patterns.values()];
    const unsaid = keys.filter(
      (key) =>
        !said.literals.has(key) &&
        !patterns.some((pattern) => pattern.test(key)) &&
        !MADE_BY_FORMS.some(({ prefix }) => key.startsWith(prefix)),
    );
    expect(unsaid).toEqual([]);
  });
});

const PLACEHOLDER = /\{(\w+)(?::((?:[^{}]|\{\})+))?\}/g;
const FORM = /^(?:mm|len|gap|fig|both|math|n[0-3]|term|plural\|[^|]*\|[^|]*\{\}[^|]*)$/;
/** The French singular also stands for nought and for one and a half, so it must show its number. */
const FRENCH_SINGULAR = /^plural\|[^|]*\{\}/;
/** Shorter texts may be the same word in both languages. */
const SENTENCE_LENGTH = 30;

describe("the sentences", () => {
  it.each(files)("of %s are there in both languages, with the same values and known forms", (name) => {
    const entries = JSON.parse(contents.find((file) => file.name === name)?.text ?? "{}") as Record<
      string,
      object
    >;
    const faults = Object.entries(entries).flatMap(([key, entry]) => {
      if (Object.keys(entry).join() !== LANGUAGES.join()) return [`${key}: has ${Object.keys(entry).join()}`];
      return faultsOf(key);
    });
    expect(faults).toEqual([]);
  });

  it("a sentence that is the same in both languages was not translated", () => {
    const same = keys.filter((key) => {
      const text = template(key, "en") ?? "";
      return text.length >= SENTENCE_LENGTH && text === template(key, "fr");
    });
    expect(same).toEqual([]);
  });
});

function faultsOf(key: string): string[] {
  const texts = LANGUAGES.map((language) => template(key, language) ?? "");
  const names = texts.map((text) =>
    [...new Set([...text.matchAll(PLACEHOLDER)].map(([, name]) => name))].sort().join(),
  );
  const forms = texts.map((text) => [...text.matchAll(PLACEHOLDER)].map(([, , form]) => form ?? ""));
  return [
    ...(texts.some((text) => text.trim() === "") ? [`${key}: empty`] : []),
    ...(names[0] === names[1] ? [] : [`${key}: values ${names.join(" / ")}`]),
    ...forms
      .flat()
      .filter((form) => form !== "" && !FORM.test(form))
      .map((form) => `${key}: form ${form}`),
    ...(forms[1] ?? [])
      .filter((form) => form.startsWith("plural|") && !FRENCH_SINGULAR.test(form))
      .map((form) => `${key}: the French singular of ${form} hides its number`),
    ...texts
      .filter((text) => /\{\w/.test(text.replace(PLACEHOLDER, "")))
      .map(() => `${key}: a brace is not closed`),
  ];
}
