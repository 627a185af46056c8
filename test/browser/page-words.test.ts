/** What the page says of findings and of places, reckoned without a browser. */
import { expect, it } from "vitest";
import { RULES } from "../../src/findings/codes.ts";
import { finding } from "../../src/findings/finding.ts";
import { template } from "../../src/text/catalogue.ts";
import { message } from "../../src/text/message.ts";
import { ENGLISH_MM } from "../../src/text/say.ts";
import { fieldAt, fieldsOf, letter } from "../../src/web/drawing/fields.ts";
import { notesOf } from "../../src/web/notes/groups.ts";

it("every rule has a title in both languages", () => {
  const untitled = Object.keys(RULES).filter(
    (code) => !template(`page.rule.${code}`, "en") || !template(`page.rule.${code}`, "fr"),
  );
  expect(untitled).toEqual([]);
});

// ISO 5457: fields are lettered from top to bottom and numbered from left to right; I and O are not used.
it("fields of the sheet are named as the standard names them", () => {
  expect([0, 7, 8, 12, 13].map(letter)).toEqual(["A", "H", "J", "N", "P"]);
  const fields = fieldsOf({ x: [0, 1000], y: [0, 400] }, { width: 1220, height: 488 });
  expect(fields).toMatchObject({ columns: 10, rows: 4 });
  expect(fieldAt(fields, [550, 150])).toBe("6 C");
  expect(fieldAt(fields, [5, 395])).toBe("1 A");
  expect(fieldAt(fields, [1001, 10])).toBeUndefined();
});

it("findings that say the same stand as one note with all their places, and none is lost from the count", () => {
  const at = (zone: string, outcome: "attention" | "pass", mm: number) =>
    finding({
      code: "P006",
      outcome,
      where: { face: "west", zone },
      says: message("page.value.length", { value: mm }),
    });
  const notes = notesOf(
    [at("a", "attention", 760), at("b", "attention", 760), at("c", "attention", 500), at("d", "pass", 760)],
    ENGLISH_MM,
  );
  expect(notes.toSettle.map(({ findings }) => findings.map(({ where }) => where.zone))).toEqual([
    ["a", "b"],
    ["c"],
  ]);
  expect(notes).toMatchObject({ toSettleCount: 3, holdingCount: 1, provisionalCount: 0 });
});
