/** Every field that can be typed or chosen on the sheet says what it is, where its value is found, and what is usual. */
import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { inside, wholeFile } from "../../src/project/schema-at.ts";
import { LANGUAGES } from "../../src/text/catalogue.ts";
import { FIELDS, type Helped, SAID } from "../../src/web/edit/help/fields.ts";
import "../../src/web/edit/help/texts.ts";
import { wordsFor } from "../../src/web/words.ts";

const fields = Object.entries<Helped>(FIELDS);
/** What a reader types into. */
const TYPED = new Set(["input", "select", "textarea"]);
/** The fields of the sheet that stand alone; `help` of these is asked for by their types. */
const SHARED = new Set(["LengthField", "ChoiceField", "NumberField", "FieldFrame"]);

interface Field {
  readonly file: string;
  readonly tag: string;
  readonly help: string | undefined;
}

/** Whether an element stands in a frame, whose own help is asked for. */
function isFramed(node: ts.Node): boolean {
  if (ts.isJsxElement(node) && node.openingElement.tagName.getText() === "FieldFrame") return true;
  return node.parent !== undefined && isFramed(node.parent);
}

/** The fields in the page's own source: elements that are typed into, and the shared fields with their help. */
function fieldsInSource(): { readonly typed: readonly Field[]; readonly asks: ReadonlySet<string> } {
  const typed: Field[] = [];
  const asks = new Set<string>();
  const files = readdirSync("src/web/edit", { recursive: true, encoding: "utf8" }).filter((name) =>
    name.endsWith(".tsx"),
  );
  for (const file of files) {
    const text = readFileSync(`src/web/edit/${file}`, "utf8");
    const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
    const visit = (node: ts.Node): void => {
      if (ts.isCallExpression(node) && node.expression.getText() === "useHelp") asks.add(file);
      if (ts.isJsxSelfClosingElement(node) || ts.isJsxOpeningElement(node)) {
        const tag = node.tagName.getText();
        const help = node.attributes.properties.find((one) => one.name?.getText() === "help");
        if ((TYPED.has(tag) && !isFramed(node)) || SHARED.has(tag))
          typed.push({ file, tag, help: help?.getText() });
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return { typed, asks };
}

describe("help beside the fields", () => {
  it("stands beside every field of the source that is typed into", () => {
    const { typed, asks } = fieldsInSource();
    expect(typed.length).toBeGreaterThan(20);
    const bare = typed.filter(({ file, tag, help }) =>
      TYPED.has(tag) ? !asks.has(file) : help === undefined,
    );
    expect(bare).toEqual([]);
  });

  it.each(fields)("of %s says all three in both languages and both systems", (field, { usual }) => {
    for (const language of LANGUAGES) {
      for (const units of ["mm", "feet-inch"] as const) {
        const { w } = wordsFor({ language, units, denominator: 16 });
        const values = Object.fromEntries(Object.entries(usual ?? {}).map(([name, [mm]]) => [name, mm]));
        const said = SAID.map((part) => w(`page.help.${field}.${part}`, values));
        expect(said.filter((text) => text.includes("["))).toEqual([]);
        for (const text of said) expect(text).toMatch(/^\p{Lu}.*\.$/u);
        expect(new Set(said).size).toBe(SAID.length);
      }
    }
  });

  it.each(fields.filter(([, { at }]) => at))(
    "of %s belongs to a place that the file has",
    (_, { at = [] }) => {
      const places = at.reduce((held, step) => inside(held, step, undefined), wholeFile());
      expect(places.length).toBeGreaterThan(0);
    },
  );

  it("speaks of no field that the sheet has not", () => {
    const source = readdirSync("src/web/edit", { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".tsx"))
      .map((name) => readFileSync(`src/web/edit/${name}`, "utf8"))
      .join();
    const unused = fields.filter(([name]) => {
      const family = name.replace(/-[xy]$/, "-");
      return !source.includes(`"${name}"`) && !source.includes(`\`${family}$`);
    });
    expect(unused.map(([name]) => name)).toEqual([]);
  });
});
