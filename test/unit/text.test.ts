import { describe, expect, it } from "vitest";
import { layer } from "../../src/project/schema/cladding.ts";
import { corner, opening } from "../../src/project/schema/face.ts";
import { stock } from "../../src/project/schema/stock.ts";
import { type Language, template } from "../../src/text/catalogue.ts";
import { message } from "../../src/text/message.ts";
import { ENGLISH_MM, type Reader, say, sayLength, sayNumber } from "../../src/text/say.ts";

const french: Reader = { language: "fr", units: "mm", denominator: 16 };
const feet: Reader = { language: "en", units: "feet-inch", denominator: 16 };

describe("sentences", () => {
  it("put values in: words as they stand, lists with commas, messages as sentences of their own", () => {
    const list = message("project.hint.words", { words: ["rim", "beam"] });
    expect(say(list, ENGLISH_MM)).toBe("Write one of: rim, beam.");
    expect(say(list, french)).toBe("Écrivez l’un de ceux-ci : rim, beam.");
    const nested = message("project.hint.replace", { found: "7", wanted: message("project.wanted.list") });
    expect(say(nested, ENGLISH_MM)).toBe("Replace 7 by a list in [ ].");
  });

  it("lengths follow the reader's units", () => {
    const told = message("project.hint.wane", { width: 95.25 });
    expect(say(told, ENGLISH_MM)).toBe("Write less than 95.25 mm.");
    expect(say(told, french)).toBe("Écrivez moins de 95,25 mm.");
    expect(say(told, feet)).toBe('Write less than 3 3/4".');
  });

  it("the singular and the plural follow the language: nought is plural in English, singular in French", () => {
    const told = (count: number) => message("project.patch.no-such-index", { count });
    expect([0, 1, 2].map((count) => say(told(count), ENGLISH_MM))).toEqual([
      "the list has 0 entries.",
      "the list has 1 entry.",
      "the list has 2 entries.",
    ]);
    expect([0, 1, 2].map((count) => say(told(count), french))).toEqual([
      "la liste a 0 élément.",
      "la liste a 1 élément.",
      "la liste a 2 éléments.",
    ]);
  });

  it("words come from the list of terms", () => {
    const told = message("project.screw-use", {
      file: "f",
      path: "/p",
      found: '"a"',
      is: "board",
      use: "sheet",
    });
    expect(say(told, french)).toContain("une vis de planche ; il faut ici une vis de panneau");
  });

  it("what is missing shows, and nothing throws", () => {
    expect(say(message("project.no-such-key"), ENGLISH_MM)).toBe("[project.no-such-key]");
    expect(say(message("project.hint.near"), ENGLISH_MM)).toContain("[project.hint.near.near]");
  });
});

describe("numbers", () => {
  it("have the language's decimal sign and a true minus", () => {
    expect(sayNumber(-1.5, undefined, ENGLISH_MM)).toBe("−1.5");
    expect(sayNumber(-1.5, 2, french)).toBe("−1,50");
    expect(sayNumber(-0.001, 1, ENGLISH_MM)).toBe("0.0");
  });

  it("lengths print as short as they are", () => {
    expect(sayLength(950, ENGLISH_MM)).toBe("950");
    expect(sayLength(9.0625, ENGLISH_MM)).toBe("9.06");
    expect(sayLength(9.0625, ENGLISH_MM, 1)).toBe("9.1");
    expect(sayLength(950, feet)).toBe("3'-1 3/8\"");
  });
});

describe("terms", () => {
  const words = [
    ...opening.shape.kind.options,
    ...corner.shape.kind.options,
    ...layer.options.flatMap((option) => [...option.shape.kind.values]),
    ...stock.shape.screws.element.shape.use.options,
    ...["pass", "fail", "attention", "not applicable", "cannot evaluate"],
    ...["given", "typical", "derived", "memory"],
    ...[
      "sheet",
      "board",
      "batten",
      "counter-batten",
      "rail",
      "post",
      "backing",
      "packer",
      "closure",
      "flashing",
      "return",
    ],
    ...["stud", "trimmer", "rim", "bottom plate", "top plates", "header", "beam"],
    ...["left end", "right end", "jamb", "head", "sill", "penetration", "fixed", "sliding", "plain"],
  ];

  it.each<Language>(["en", "fr"])("hold every word of the file and the facade (%s)", (language) => {
    expect(words.filter((word) => template(`term.${word}`, language) === undefined)).toEqual([]);
  });
});
