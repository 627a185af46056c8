/** One French word for one thing: the trade's terms as terms.json has them, and none of their neighbours beside them. */
import { describe, expect, it } from "vitest";
import { messageKeys, template } from "../../src/text/catalogue.ts";
import "../../src/project/intake/texts.ts";
import "../../src/server/texts.ts";
import "../../src/web/edit/help/texts.ts";
import "../../src/web/kept/texts.ts";
import "../../src/web/progress/texts.ts";
import "../../src/web/site/texts.ts";
import "../../src/web/survey/texts.ts";
import "../../src/web/upkeep/texts.ts";
import "../../src/web/walk/texts.ts";

/** Each thing by its key, its word, and what else a text might call it. Fields of the file keep their names. */
const TERMS: readonly (readonly [key: string, word: string, others: RegExp])[] = [
  ["term.batten", "latte", /tasseau|liteau/i],
  ["term.sheet", "panneau", /\bplaques?\b/i],
  ["term.membrane", "pare-pluie", /(?<![.\p{L}])membranes?(?![.\p{L}])/iu],
  ["term.jamb", "tableau", /jambage/i],
  ["term.sill", "appui", /allège/i],
  ["term.junction", "raccord", /jonction/i],
  ["term.rake", "rampant", /rive inclinée/i],
  ["term.flashing", "solin", /bavette/i],
  ["term.sleeve", "manchon", /fourreau/i],
  ["term.backing", "renfort", /fonds? de clouage/i],
  ["term.sliding", "point coulissant", /point\S* glissant/i],
  ["drawing.layer.sheathing", "voile {thickness:len}", /revêtement intermédiaire/i],
  ["drawing.layer.upright", "planche verticale {thickness:len}", /planches? debout/i],
];

const french = messageKeys().map((key) => [key, template(key, "fr") ?? ""] as const);

describe.each(TERMS)("%s", (key, word, others) => {
  it(`is ${word} in every text`, () => {
    expect(template(key, "fr")).toBe(word);
    expect(french.filter(([, text]) => others.test(text))).toEqual([]);
  });
});

it("French texts elide with one apostrophe", () => {
  expect(french.filter(([, text]) => /\p{L}'\p{L}/u.test(text))).toEqual([]);
});
