/** The calculation book says what the findings say, every number and every word of it, and nothing that is not escaped. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { RULES } from "../../src/findings/codes.ts";
import { type Finding, finding } from "../../src/findings/finding.ts";
import { bookHtml } from "../../src/output/book/book-html.ts";
import { findingJson } from "../../src/output/json/finding.ts";
import { escapeXml } from "../../src/output/svg/markup.ts";
import { readProject } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { waiverOf } from "../../src/project/waivers.ts";
import { bookPages } from "../../src/scene/book/book-pages.ts";
import { likeEntries } from "../../src/scene/book/like.ts";
import { likeBlocks } from "../../src/scene/book/like-blocks.ts";
import { makeBook } from "../../src/scene/book/make-book.ts";
import { SUBJECTS } from "../../src/scene/book/model.ts";
import { subjectOf } from "../../src/scene/book/subjects.ts";
import { sayText } from "../../src/scene/shapes.ts";
import { template } from "../../src/text/catalogue.ts";
import { message } from "../../src/text/message.ts";
import { ENGLISH_MM, type Reader, sayFigure } from "../../src/text/say.ts";

const EXAMPLES = ["atelier-bouleau", "imperial", "l-plan", "porch", "two-storey"];
const FRENCH_FEET: Reader = { language: "fr", units: "feet-inch", denominator: 16 };

function example(name: string): Project {
  const text = readFileSync(new URL(`../../examples/${name}.outerleaf.json`, import.meta.url), "utf8");
  const read = readProject(text, name);
  if (!read.ok) throw new Error(name);
  return read.project;
}

function bookOf(project: Project, findings: readonly Finding[]) {
  return makeBook({ project, findings, waiverOf: (one) => waiverOf(one, project.waivers) });
}

/** The entry's own HTML, or its row in the table of what is alike, cut out by its number. */
function entryText(page: string, number: string): string {
  const from = page.indexOf(`id="${number}"`);
  const isRow = page.slice(0, from).endsWith("<tr ");
  return page.slice(from, page.indexOf(isRow ? "</tr>" : "</article>", from));
}

function numbersIn(text: string): { value: number; shown: string }[] {
  return [...text.matchAll(/<data value="([^"]+)">([^<]+)<\/data>/g)].map(([, value, shown = ""]) => ({
    value: Number(value),
    shown,
  }));
}

describe.each(EXAMPLES)("the book of %s", (name) => {
  const project = example(name);
  const { findings } = design(project);
  const book = bookOf(project, findings);
  const entries = book.chapters.flatMap(({ rules }) => rules.flatMap((rule) => rule.entries));

  it("holds every finding once", () => {
    expect(entries).toHaveLength(findings.length);
    expect(new Set(entries.map((entry) => entry.finding))).toEqual(new Set(findings));
    expect(new Set(entries.map(({ number }) => number)).size).toBe(findings.length);
  });

  it("stands on paper with every entry in its place, whether worked in full or beside one that is alike", () => {
    const type = { reader: ENGLISH_MM, width: 165 };
    const pages = bookPages(book, {
      reader: ENGLISH_MM,
      room: { width: 165, height: 200 },
      nameOf: String,
      blocksOf: (group) => likeBlocks(group, type),
    });
    const held = pages.flatMap(({ holds }) => holds);
    expect(entries.filter(({ number }) => !held.includes(number))).toEqual([]);
    // What holds by the same working is followed by hand from the row: every value that differs stands in it.
    const groups = book.chapters.flatMap(({ rules }) => rules.flatMap((rule) => likeEntries(rule.entries)));
    const alike = groups.filter((group) => group.length > 1);
    for (const group of alike) {
      for (const [at, { finding }] of group.entries()) {
        expect(finding.working?.formula).toBe(group[0]?.finding.working?.formula);
        const row = JSON.stringify(
          likeBlocks(group, type).filter(({ anchor }) => anchor === group[at]?.number),
        );
        const shown = finding.working?.inputs.filter(
          ({ value }, i) => at > 0 && group.some((one) => one.finding.working?.inputs[i]?.value !== value),
        );
        for (const { value } of shown ?? []) expect(row).toContain(`"value":${value}`);
      }
    }
  });

  it("says in words where each holds: what a path of the file leads to, the whole building only without one", () => {
    const whole = sayText(message("book.whole-building"), ENGLISH_MM);
    for (const { number, finding: one, place } of entries) {
      const { face, zone, opening, marks = [], path = "" } = one.where;
      const said = sayText(place, ENGLISH_MM);
      const isNamed = [face, zone, opening, ...marks].some((id) => id !== undefined);
      expect({ number, whole: said === whole }).toEqual({ number, whole: !isNamed && path === "" });
      expect(said).not.toMatch(/^\/|\[drawing/);
    }
  });

  it("puts the governing place of a rule first", () => {
    for (const { rules } of book.chapters) {
      for (const rule of rules) {
        const ratios = rule.entries
          .filter(({ finding: one }) => one.outcome === rule.entries[0]?.finding.outcome)
          .map(({ finding: one }) => one.ratio ?? 0);
        expect(ratios).toEqual([...ratios].sort((a, b) => b - a));
      }
    }
  });

  it.each([
    ["English, millimetres", ENGLISH_MM],
    ["French, feet and inches", FRENCH_FEET],
  ] as const)("prints in %s every number as the JSON has it, and every sentence", (_, reader) => {
    const page = pageOf(book, reader);
    const ids = [...page.matchAll(/ id="([A-Z]+\d+-\d+)"/g)].map(([, id]) => id);
    expect(ids.sort()).toEqual(entries.map(({ number }) => number).sort());
    for (const group of book.chapters.flatMap(({ rules }) =>
      rules.flatMap((rule) => likeEntries(rule.entries)),
    )) {
      for (const [at, { number, finding: one }] of group.entries()) {
        const told = findingJson(one, { reader });
        // A row tells what differs from the entry that is worked in full over it.
        const isRow = at > 0;
        const text = entryText(page, number);
        const compared =
          told.demand === undefined || told.limit === undefined
            ? []
            : [told.demand, told.limit, ...(told.ratio === undefined ? [] : [told.ratio])];
        const inputs = (told.working?.inputs ?? []).filter(
          ({ value }, i) =>
            !isRow || group.some(({ finding }) => finding.working?.inputs[i]?.value !== value),
        );
        const expected = [...inputs.map(({ value }) => value), ...compared];
        const printed = numbersIn(text);
        expect({ number, values: printed.map(({ value }) => value) }).toEqual({ number, values: expected });
        for (const { value, shown } of printed) {
          const read = Number(shown.replace("−", "-").replace(",", "."));
          // Three decimals or four figures, whichever says more.
          expect(Math.abs(read - value)).toBeLessThanOrEqual(
            Math.min(5.001e-4, Math.abs(value) * 5.001e-4 + 1e-20),
          );
        }
        if (!isRow || inputs.length === 0) expect(text).toContain(escapeXml(told.says));
        if (told.working && reader.language === "en") {
          if (!isRow) expect(text).toContain(escapeXml(told.working.formula));
          if (!isRow || inputs.length > 0) expect(text).toContain(escapeXml(told.working.substituted));
        }
        const { document, clause } = told.source;
        for (const part of isRow ? [clause ?? document] : [document, clause]) {
          if (part) expect(text).toContain(escapeXml(part));
        }
        if (isRow) continue;
        if (told.hint) expect(text).toContain(escapeXml(told.hint));
        for (const { meaning } of told.working?.inputs ?? []) expect(text).toContain(escapeXml(meaning));
      }
    }
    expect(page).not.toMatch(/\[(?:book|page|proof|setout|light|term)\.|undefined|NaN|Infinity/);
    expect(page).not.toContain("<script");
    expect(page).not.toMatch(/(?:src|href)="(?!#)/);
  });

  it("names for each provisional pass what would settle it, in words of its own", () => {
    for (const { number, finding: one, unsettled } of entries) {
      if (!one.provisional) continue;
      expect({ number, settled: unsettled.length > 0 }).toEqual({ number, settled: true });
      if (one.code.startsWith("P")) {
        expect(unsettled.map(({ by }) => by.key)).not.toContain("book.settled.other");
      }
    }
  });
});

const BARE = { title: "T", site: { place: "P" } } as Project;
const HOSTILE = `<img src=x onerror="alert(1)">&'\\"};@import`;

function pageOf(...of: Parameters<typeof bookHtml>): string {
  return [...bookHtml(...of)].join("");
}

describe("an entry", () => {
  const one = finding({
    code: "P011",
    outcome: "cannot evaluate",
    where: {
      face: HOSTILE,
      marks: Array.from({ length: 15 }, (_, i) => `M${i}`),
      path: "/buildUps/0/layers",
    },
    says: message("proof.hung.foam-only", { mass: 9, thickness: 51, material: [HOSTILE] }),
    source: { kind: "document", document: HOSTILE, clause: "3" },
  });

  it("says what is missing where it cannot be evaluated, and counts marks beyond a dozen", () => {
    const text = entryText(pageOf(bookOf(BARE, [one]), ENGLISH_MM), "P011-1");
    expect(text).toContain("What is missing:");
    expect(text).toContain("/buildUps/0/layers");
    expect(text).toContain("M11 and 3 more");
  });

  it("escapes whatever the file brings, in the page and in its style sheet", () => {
    const hostile = { ...BARE, title: `${HOSTILE}</style>`, about: HOSTILE, revision: HOSTILE } as Project;
    const page = pageOf(bookOf(hostile, [one]), ENGLISH_MM);
    expect(page).not.toContain("<img");
    const style = page.slice(page.indexOf("<style>"), page.indexOf("</style>"));
    expect(style).not.toMatch(/@import|onerror="/);
    expect(page.match(/<\/style>/g)).toHaveLength(1);
  });

  it("is answered for where a waiver covers it", () => {
    const waived = {
      ...BARE,
      waivers: [{ code: "P011", who: "A. Engineer", when: "2026-03-02", why: "declared" }],
    };
    const page = pageOf(bookOf(waived as Project, [one]), ENGLISH_MM);
    expect(page.match(/Waived by A\. Engineer, 2026-03-02: declared/g)).toHaveLength(2);
  });

  it("sets rules that differ side by side", () => {
    const rules = [10, 25].map((value) =>
      message("proof.rule-asks.mm", { rule: message("proof.rule.switzerland-practice"), value }),
    );
    const apart = { ...one, says: message("proof.cavity.rules", { depth: 20, zones: 1, rules }) };
    const text = entryText(pageOf(bookOf(BARE, [apart]), ENGLISH_MM), "P011-1");
    expect(text.match(/<li>[^<]+<\/li>/g)).toHaveLength(2);
    expect(text).toContain("side by side");
  });
});

it("numbers read as written: small ones with four figures, none with an exponent", () => {
  const shown = [0, 12, 0.00001, 1.23456789e-7, -2943.7512].map((one) => sayFigure(one, FRENCH_FEET));
  expect(shown).toEqual(["0", "12", "0,00001", "0,0000001235", "−2943,751"]);
});

it("every rule has a name in both languages and a subject of the book", () => {
  for (const code of Object.keys(RULES) as (keyof typeof RULES)[]) {
    expect({ code, named: ["en", "fr"].every((one) => template(`page.rule.${code}`, one as "en")) }).toEqual({
      code,
      named: true,
    });
    expect(SUBJECTS).toContain(subjectOf(code));
  }
});
