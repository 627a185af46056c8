/** What is read with the memo of earlier readings is what is read without: the project, its findings and the order of its keys. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyPatch } from "../../src/project/edit.ts";
import { readDocument } from "../../src/project/read.ts";
import { createReadMemo } from "../../src/project/read-memo.ts";

// biome-ignore lint/suspicious/noExplicitAny: places of the raw document.
type Loose = any;

/** Every place of a document, as a pointer of RFC 6901. */
function places(value: Loose, at = ""): string[] {
  if (typeof value !== "object" || value === null) return [at];
  const inner = Object.entries(value).flatMap(([key, entry]) =>
    places(entry, `${at}/${key.replaceAll("~", "~0").replaceAll("/", "~1")}`),
  );
  return at === "" ? inner : [at, ...inner];
}

const VALUES = [7, -3.5, 1200, "", "x", "3'-4\"", null, true, [], {}, { id: "x" }] as const;

const EXAMPLES = readdirSync("examples").filter((name) => name.endsWith(".outerleaf.json"));

describe.each(EXAMPLES)("%s", (name) => {
  const document = JSON.parse(readFileSync(`examples/${name}`, "utf8"));
  const all = places(document);

  it("says and gives the same after any run of edits", () => {
    const edit = fc.record({
      op: fc.constantFrom("replace", "remove", "add"),
      path: fc.oneof(
        fc.constantFrom(...all),
        // A face is what edits change most.
        fc.constantFrom(...all.filter((path) => path.startsWith("/faces"))),
      ),
      key: fc.constantFrom("", "/unheardOf"),
      value: fc.constantFrom(...VALUES),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        const memo = createReadMemo();
        let now = document;
        readDocument(now, "a file", memo);
        for (const { op, path, key, value } of edits) {
          const patched = applyPatch(now, [{ op, path: op === "add" ? path + key : path, value }]);
          if (!patched.ok) continue;
          const plain = readDocument(patched.document, "a file");
          const kept = readDocument(patched.document, "a file", memo);
          expect(kept).toEqual(plain);
          expect(JSON.stringify(kept)).toBe(JSON.stringify(plain));
          if (plain.ok) now = patched.document;
        }
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it("reads a part again only where an edit touched it", () => {
    const memo = createReadMemo();
    const first = readDocument(document, "a file", memo);
    const patched = applyPatch(document, [{ op: "replace", path: "/faces/0/openings", value: [] }]);
    if (!patched.ok || !first.ok) throw new Error("an example is not read");
    const second = readDocument(patched.document, "a file", memo);
    if (!second.ok) throw new Error(JSON.stringify(second.findings));
    expect(second.project.claddings).toBe(first.project.claddings);
    expect(second.project.faces.slice(1)).toEqual(first.project.faces.slice(1));
    for (const [i, face] of second.project.faces.slice(1).entries())
      expect(face).toBe(first.project.faces[i + 1]);
    expect(second.project.faces[0]).not.toBe(first.project.faces[0]);
  });
});
