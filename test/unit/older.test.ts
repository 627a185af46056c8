/** Addresses and names of older revisions. */
import { describe, expect, it } from "vitest";
import { fragmentOf, olderName, revisionAt } from "../../src/web/sheet/older.ts";

const ID = "0123456789abcdef01234567";

describe("the address of a revision", () => {
  it("is read as it was written", () => {
    expect(fragmentOf({ id: ID, number: 12 })).toBe(`#revision/${ID}/12`);
    expect(revisionAt(`#revision/${ID}/12`)).toEqual({ id: ID, number: 12 });
  });

  it.each([
    "",
    "#",
    `#revision/${ID}/0`,
    `#revision/${ID}/-1`,
    `#revision/${ID}/1e3`,
    `#revision/${ID}/1234567890`,
    `#revision/${ID}/1/restore`,
    `#revision/${ID.toUpperCase()}/1`,
    `#revision/../people/1`,
    `#revision/${ID}?x/1`,
  ])("is none in %s", (fragment) => {
    expect(revisionAt(fragment)).toBeUndefined();
  });
});

describe("the name of an older file", () => {
  it.each([
    ["house.outerleaf.json", "house.revision-3.outerleaf.json"],
    ["house.json", "house.revision-3.json"],
    ["house", "house.revision-3"],
  ])("of %s is %s", (file, name) => {
    expect(olderName(file, 3)).toBe(name);
  });
});
