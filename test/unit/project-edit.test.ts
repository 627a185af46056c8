import { describe, expect, it } from "vitest";
import { applyPatch } from "../../src/project/edit.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";

/** Examples of RFC 6902 (April 2013), appendix A, by their numbers. */
const APPENDIX_A: readonly {
  name: string;
  before: unknown;
  patch: readonly Record<string, unknown>[];
  after: unknown;
}[] = [
  {
    name: "A.1 adding an object member",
    before: { foo: "bar" },
    patch: [{ op: "add", path: "/baz", value: "qux" }],
    after: { baz: "qux", foo: "bar" },
  },
  {
    name: "A.2 adding an array element",
    before: { foo: ["bar", "baz"] },
    patch: [{ op: "add", path: "/foo/1", value: "qux" }],
    after: { foo: ["bar", "qux", "baz"] },
  },
  {
    name: "A.3 removing an object member",
    before: { baz: "qux", foo: "bar" },
    patch: [{ op: "remove", path: "/baz" }],
    after: { foo: "bar" },
  },
  {
    name: "A.4 removing an array element",
    before: { foo: ["bar", "qux", "baz"] },
    patch: [{ op: "remove", path: "/foo/1" }],
    after: { foo: ["bar", "baz"] },
  },
  {
    name: "A.5 replacing a value",
    before: { baz: "qux", foo: "bar" },
    patch: [{ op: "replace", path: "/baz", value: "boo" }],
    after: { baz: "boo", foo: "bar" },
  },
  {
    name: "A.6 moving a value",
    before: { foo: { bar: "baz", waldo: "fred" }, qux: { corge: "grault" } },
    patch: [{ op: "move", from: "/foo/waldo", path: "/qux/thud" }],
    after: { foo: { bar: "baz" }, qux: { corge: "grault", thud: "fred" } },
  },
  {
    name: "A.7 moving an array element",
    before: { foo: ["all", "grass", "cows", "eat"] },
    patch: [{ op: "move", from: "/foo/1", path: "/foo/3" }],
    after: { foo: ["all", "cows", "eat", "grass"] },
  },
  {
    name: "A.8 testing a value: success",
    before: { baz: "qux", foo: ["a", 2, "c"] },
    patch: [
      { op: "test", path: "/baz", value: "qux" },
      { op: "test", path: "/foo/1", value: 2 },
    ],
    after: { baz: "qux", foo: ["a", 2, "c"] },
  },
  {
    name: "A.10 adding a nested member object",
    before: { foo: "bar" },
    patch: [{ op: "add", path: "/child", value: { grandchild: {} } }],
    after: { foo: "bar", child: { grandchild: {} } },
  },
  {
    name: "A.11 ignoring unrecognised elements",
    before: { foo: "bar" },
    patch: [{ op: "add", path: "/baz", value: "qux", xyz: 123 }],
    after: { foo: "bar", baz: "qux" },
  },
  {
    name: "A.14 ~ escape ordering",
    before: { "/": 9, "~1": 10 },
    patch: [{ op: "test", path: "/~01", value: 10 }],
    after: { "/": 9, "~1": 10 },
  },
  {
    name: "A.16 adding an array value",
    before: { foo: ["bar"] },
    patch: [{ op: "add", path: "/foo/-", value: ["abc", "def"] }],
    after: { foo: ["bar", ["abc", "def"]] },
  },
];

const REFUSED: readonly { name: string; before: unknown; patch: unknown; told: string }[] = [
  {
    name: "RFC 6902 A.9 testing a value: error",
    before: { baz: "qux" },
    patch: [{ op: "test", path: "/baz", value: "bar" }],
    told: '"qux" stands there, not "bar"',
  },
  {
    name: "RFC 6902 A.12 adding to a nonexistent target",
    before: { foo: "bar" },
    patch: [{ op: "add", path: "/baz/bat", value: "qux" }],
    told: "nothing at that place",
  },
  {
    name: "RFC 6902 A.15 comparing strings and numbers",
    before: { "/": 9, "~1": 10 },
    patch: [{ op: "test", path: "/~01", value: "10" }],
    told: 'not "10"',
  },
  {
    name: "removing what is not there",
    before: { a: 1 },
    patch: [{ op: "remove", path: "/b" }],
    told: "nothing at that place",
  },
  {
    name: "replacing what is not there",
    before: { a: [1] },
    patch: [{ op: "replace", path: "/a/1", value: 2 }],
    told: "nothing at that place",
  },
  {
    name: "an index past the end",
    before: { a: [1] },
    patch: [{ op: "add", path: "/a/2", value: 2 }],
    told: "1 entry",
  },
  {
    name: "an index with a leading zero",
    before: { a: [1, 2] },
    patch: [{ op: "add", path: "/a/01", value: 2 }],
    told: "2 entries",
  },
  {
    name: "a list's own length",
    before: { a: [1] },
    patch: [{ op: "replace", path: "/a/length", value: 0 }],
    told: "nothing at that place",
  },
  {
    name: "an inherited name",
    before: { a: 1 },
    patch: [{ op: "remove", path: "/constructor" }],
    told: "nothing at that place",
  },
  {
    name: "moving into itself",
    before: { a: { b: 1 } },
    patch: [{ op: "move", from: "/a", path: "/a/b/c" }],
    told: "into itself",
  },
  {
    name: "copying nothing",
    before: { a: 1 },
    patch: [{ op: "copy", from: "/x", path: "/y" }],
    told: 'nothing at "from"',
  },
  {
    name: "an unknown operation",
    before: {},
    patch: [{ op: "swap", path: "/a" }],
    told: '"swap" is no operation',
  },
  {
    name: "a path without its slash",
    before: { a: 1 },
    patch: [{ op: "remove", path: "a" }],
    told: "not a JSON Pointer",
  },
  {
    name: "a path with a bare tilde",
    before: { "~": 1 },
    patch: [{ op: "remove", path: "/~" }],
    told: "not a JSON Pointer",
  },
  { name: "no path", before: {}, patch: [{ op: "remove" }], told: '"path" is nothing' },
  { name: "no from", before: {}, patch: [{ op: "move", path: "/a" }], told: '"from" is nothing' },
  { name: "no value", before: {}, patch: [{ op: "add", path: "/a" }], told: '"value" is missing' },
  { name: "a word for an operation", before: {}, patch: ["remove"], told: "no group of fields" },
  { name: "no list", before: {}, patch: { op: "remove", path: "/a" }, told: "a list of operations" },
  { name: "removing everything", before: {}, patch: [{ op: "remove", path: "" }], told: "whole project" },
];

describe("JSON Patch", () => {
  it.each(APPENDIX_A)("RFC 6902 $name", ({ before, patch, after }) => {
    const copy = structuredClone(before);
    const result = applyPatch(before, patch);
    expect(result).toEqual({ ok: true, document: after });
    expect(before).toEqual(copy);
  });

  it.each(REFUSED)("refuses $name, and leaves the document", ({ before, patch, told }) => {
    const copy = structuredClone(before);
    const result = applyPatch(before, patch);
    expect(result.ok).toBe(false);
    expect(before).toEqual(copy);
    const [finding, ...rest] = result.ok ? [] : result.findings;
    expect(rest).toEqual([]);
    expect(finding).toMatchObject({ code: "F021", outcome: "fail" });
    if (finding) expect(say(finding.says, ENGLISH_MM)).toContain(told);
  });

  it("all or none: the number of the refused operation is told, and nothing of the others is kept", () => {
    const before = { a: 1 };
    const result = applyPatch(before, [
      { op: "replace", path: "/a", value: 2 },
      { op: "remove", path: "/b" },
    ]);
    expect(before).toEqual({ a: 1 });
    expect(result.ok ? [] : result.findings.map(({ says }) => say(says, ENGLISH_MM))).toEqual([
      'Operation 2 of the patch, at "/b": there is nothing at that place.',
    ]);
  });

  it("shares what it leaves alone and keeps the order of keys", () => {
    const before = { first: { x: 1 }, second: { y: 1 }, third: 3 };
    const result = applyPatch(before, [{ op: "replace", path: "/second/y", value: 2 }]);
    const after = result.ok ? (result.document as typeof before) : undefined;
    expect(after?.first).toBe(before.first);
    expect(Object.keys(after ?? {})).toEqual(["first", "second", "third"]);
  });

  it("a key named __proto__ is a key like any other", () => {
    const result = applyPatch({ a: 1 }, [{ op: "add", path: "/__proto__", value: { b: 2 } }]);
    expect(result.ok && JSON.stringify(result.document)).toBe('{"a":1,"__proto__":{"b":2}}');
  });

  it("replaces the whole document and moves it onto itself", () => {
    expect(applyPatch({ a: 1 }, [{ op: "replace", path: "", value: [] }])).toEqual({
      ok: true,
      document: [],
    });
    expect(applyPatch({ a: 1 }, [{ op: "move", from: "/a", path: "/a" }])).toEqual({
      ok: true,
      document: { a: 1 },
    });
    expect(applyPatch({ a: 1 }, [{ op: "test", path: "", value: { a: 1 } }]).ok).toBe(true);
  });
});
