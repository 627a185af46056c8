/** RFC 4180, Common Format and MIME Type for CSV Files (2005), section 2: its numbered rules and their examples. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Cell, csvText } from "../../src/output/csv/write.ts";
import { readCsv } from "../contract/csv-reader.ts";

describe("the reader of these tests takes the RFC's own examples", () => {
  it.each([
    [
      "rule 1",
      "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "rule 2",
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "rule 5",
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "rule 6",
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "b\r\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ["rule 7", '"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
  ])("%s", (_rule, text, records) => {
    expect(readCsv(text)).toEqual(records);
  });

  it.each([
    ["a bare line feed between records", "a\nb"],
    ["a quote inside a bare field (rule 5)", 'a"b,c'],
    ["a quote left open", '"a,b\r\n'],
    ["text behind a closing quote", '"a"b'],
  ])("and refuses %s", (_what, text) => {
    expect(() => readCsv(text)).toThrow();
  });
});

describe("what is written", () => {
  it.each<[string, Cell[][], string]>([
    [
      "rule 1: every record ends with CRLF",
      [
        ["aaa", "bbb"],
        ["zzz", "yyy"],
      ],
      "aaa,bbb\r\nzzz,yyy\r\n",
    ],
    ["rule 4: spaces are part of a field", [[" a ", "b"]], " a ,b\r\n"],
    ["rule 6: a comma is put in quotes", [["a,b", "c"]], '"a,b",c\r\n'],
    ["rule 6: line breaks are put in quotes", [["b\r\nbb", "c\nc"]], '"b\r\nbb","c\nc"\r\n'],
    ["rule 7: a quote is doubled", [['b"bb', "c"]], '"b""bb",c\r\n'],
    ["an empty field is empty", [["a", undefined, ""]], "a,,\r\n"],
  ])("%s", (_rule, records, text) => {
    expect(csvText(records)).toBe(text);
  });

  it("reads back, whatever the text", () => {
    const text = fc.string({ unit: "grapheme-composite" }).filter((one) => !/^[=+\-@\t\r]/.test(one));
    // Control characters have no place in the grammar outside quotes: none is in the files' words.
    const plain = text.filter((one) => ![...one].some((sign) => sign < " " && !"\r\n".includes(sign)));
    const records = fc.array(fc.array(plain, { minLength: 2, maxLength: 2 }), { minLength: 1 });
    fc.assert(
      fc.property(records, (wanted) => {
        expect(readCsv(csvText(wanted))).toEqual(wanted);
      }),
      {
        numRuns: 300,
      },
    );
  });
});
