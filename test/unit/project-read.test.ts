import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyPatch } from "../../src/project/edit.ts";
import { parseJson } from "../../src/project/json.ts";
import {
  battenById,
  buildUpOf,
  claddingOf,
  cornerAt,
  faceById,
  rodOf,
  screwById,
  sheetById,
  zoneByRef,
} from "../../src/project/lookup.ts";
import { editDistance, nearest } from "../../src/project/nearest.ts";
import { parsePointer, pointerOf } from "../../src/project/pointer.ts";
import { printProject } from "../../src/project/print.ts";
import { type ReadResult, readDocument, readProject } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { starterProject } from "../../src/project/starter.ts";

const examples = new URL("../../examples/", import.meta.url);
const names = readdirSync(examples).filter((name) => name.endsWith(".outerleaf.json"));
const textOf = (name: string): string => readFileSync(new URL(name, examples), "utf8");

function projectOf(result: ReadResult): Project {
  if (!result.ok) throw new Error(JSON.stringify(result.findings));
  return result.project;
}

describe("the examples", () => {
  it("are the demo and four further buildings", () => {
    expect(names).toEqual([
      "atelier-bouleau.outerleaf.json",
      "imperial.outerleaf.json",
      "l-plan.outerleaf.json",
      "porch.outerleaf.json",
      "two-storey.outerleaf.json",
    ]);
  });

  it.each(names)("%s reads without any finding", (name) => {
    expect(readProject(textOf(name), name)).toMatchObject({ ok: true, findings: [] });
  });

  it.each(names)("%s is the same document after printing and reading again", (name) => {
    const first = readProject(textOf(name), name);
    const again = readProject(printProject(first.ok && first.document), name);
    expect(again).toEqual(first);
    expect(first.ok && first.document).toEqual(JSON.parse(textOf(name)));
  });

  it("feet, inches and fractions are read exactly: 1 in = 25.4 mm (international yard and pound agreement, 1959)", () => {
    const project = projectOf(readProject(textOf("imperial.outerleaf.json"), ""));
    expect(faceById(project, "front")?.plan.to).toEqual([6096, 0]);
    expect(faceById(project, "front")?.outline[0]).toEqual([0, -50.8]);
    expect(project.structure.studs.spacing).toBe(406.4);
    expect(project.structure.sheathingThickness).toBe(11.1125);
    expect(project.stock.sheets.map(({ height }) => height)).toEqual([2438.4, 3048]);
  });
});

describe("the starter project", () => {
  it("reads without any finding, before and after printing", () => {
    const text = printProject(starterProject());
    expect(readProject(text, "new.outerleaf.json")).toMatchObject({ ok: true, findings: [] });
    expect(text.endsWith("}\n")).toBe(true);
    expect(text).toContain('\n  "schemaVersion": 1,');
  });

  it("explains itself in notes", () => {
    expect(printProject(starterProject()).match(/"note":/g)?.length).toBeGreaterThanOrEqual(8);
  });
});

describe("older versions", () => {
  const older = (): unknown => {
    const patched = applyPatch(JSON.parse(textOf("atelier-bouleau.outerleaf.json")), [
      { op: "replace", path: "/schemaVersion", value: 0 },
      { op: "remove", path: "/claddings/0/gapBand" },
      { op: "add", path: "/claddings/0/gap", value: { min: 6, max: 12 } },
      ...[0, 1, 2, 3].map((i) => ({
        op: "move",
        from: `/faces/${i}/azimuthDeg`,
        path: `/faces/${i}/azimuth`,
      })),
    ]);
    return patched.ok ? patched.document : undefined;
  };

  it("version 0 is brought up to the present one, and says so", () => {
    const now = readProject(textOf("atelier-bouleau.outerleaf.json"), "old.json");
    const result = readDocument(older(), "old.json");
    expect(projectOf(result)).toEqual(projectOf(now));
    expect(result.findings.map(({ code, outcome }) => [code, outcome])).toEqual([["F027", "attention"]]);
    expect(result.ok && result.document).toMatchObject({ schemaVersion: 1 });
  });

  it("what is wrong in an older file is told like in any other", () => {
    const broken = applyPatch(older(), [
      { op: "replace", path: "/claddings/0/gap", value: 6 },
      { op: "replace", path: "/faces/0", value: null },
    ]);
    const { findings } = readDocument(broken.ok && broken.document, "old.json");
    expect(findings.map(({ code, where }) => `${code} ${where.path}`)).toEqual([
      "F004 /claddings/0/gapBand",
      "F005 /faces/0",
      "F027 /schemaVersion",
      "F008 /claddings/0/gap",
    ]);
  });
});

describe("lookups", () => {
  const project = projectOf(readProject(textOf("atelier-bouleau.outerleaf.json"), ""));
  const zone = zoneByRef(project, { face: "front", zone: "sheets" });

  it("find what an id names", () => {
    if (zone === undefined) throw new Error("the demo has lost a zone");
    expect(claddingOf(project, zone)?.kind).toBe("sheets");
    expect(buildUpOf(project, zone)?.battenScrew).toBe("batten-140");
    expect(screwById(project, "batten-140")?.length).toBe(140);
    expect(battenById(project, "b25x64")?.thickness).toBe(25);
    expect(sheetById(project, "s3050")?.height).toBe(3050);
    expect(rodOf(project, { face: "west", zone: "boards" })?.id).toBe("rod");
    expect(cornerAt(project, { face: "front", end: "left" })?.left).toBe("west");
    expect(cornerAt(project, { face: "front", end: "right" })?.right).toBe("east");
  });

  it("say nothing of what is not there", () => {
    expect(faceById(project, "roof")).toBeUndefined();
    expect(zoneByRef(project, { face: "sheets", zone: "front" })).toBeUndefined();
    expect(rodOf(project, { face: "front", zone: "sheets" })).toBeUndefined();
  });
});

describe("the JSON reader", () => {
  it("reads what the engine's own parser reads", () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), (text) => {
        expect(parseJson(text)).toEqual({ ok: true, value: JSON.parse(text) });
      }),
    );
  });

  it("refuses what the engine's own parser refuses, wherever a sign is lost or put in", () => {
    const text = '{"a": [1, -2.5e3, "x\\u00e9\\n"], "b": {"c": null, "d": true}}';
    fc.assert(
      fc.property(
        fc.nat(text.length - 1),
        fc.constantFrom("", ",", "}", "]", '"', "0", ":", "x", "\\", " "),
        (at, sign) => {
          const changed = text.slice(0, at) + sign + text.slice(at + 1);
          let expected: unknown;
          try {
            expected = { ok: true, value: JSON.parse(changed) };
          } catch {
            expected = expect.objectContaining({ ok: false });
          }
          expect(parseJson(changed)).toEqual(expected);
        },
      ),
      { numRuns: 400 },
    );
  });

  it("keeps __proto__ as a key", () => {
    const result = parseJson('{"__proto__": {"a": 1}}');
    expect(result.ok && Object.keys(result.value as object)).toEqual(["__proto__"]);
  });
});

describe("junk anywhere in a project", () => {
  const document = JSON.parse(textOf("l-plan.outerleaf.json")) as unknown;
  const pointers: string[] = [];
  const collect = (value: unknown, path: (string | number)[]): void => {
    if (path.length > 0) pointers.push(pointerOf(path));
    if (typeof value !== "object" || value === null) return;
    for (const [key, entry] of Object.entries(value)) collect(entry, [...path, key]);
  };
  collect(document, []);

  it("never throws, and every failure names its place", () => {
    const junk = fc.oneof(
      fc.constantFrom<unknown>(
        null,
        true,
        "",
        "wide",
        "left end",
        "12'-0\"",
        0,
        -1,
        1e9,
        1e-9,
        [],
        [0],
        [1, 0],
        [[0, 0]],
        {},
      ),
      fc.constantFrom(...pointers).map((pointer) => (parsePointer(pointer) ?? []).at(-1)),
      fc.jsonValue({ maxDepth: 2 }),
    );
    const change = fc.record({ path: fc.constantFrom(...pointers), value: junk });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        let changed = document;
        for (const { path, value } of changes) {
          const patched = applyPatch(changed, [{ op: "replace", path, value }]);
          if (patched.ok) changed = patched.document;
        }
        const result = readDocument(changed, "junk.json");
        if (result.ok) return;
        expect(result.findings.length).toBeGreaterThan(0);
        for (const { where, says } of result.findings) {
          expect(where.path).toBeTypeOf("string");
          expect(says.values.file).toBe("junk.json");
        }
      }),
      { numRuns: 250 },
    );
  });
});

describe("the nearest known word", () => {
  it("counts added, dropped, changed and swapped letters", () => {
    expect(editDistance("azimuth", "azimuth")).toBe(0);
    expect(editDistance("azimutDeg", "azimuthDeg")).toBe(1);
    expect(editDistance("baord", "board")).toBe(1);
    expect(editDistance("", "rod")).toBe(3);
    expect(editDistance("kitten", "sitting")).toBe(3); // the example of Levenshtein distance in common use
  });

  it("is none where nothing is near", () => {
    expect(nearest("widht", ["height", "width"])).toBe("width");
    expect(nearest("colour", ["height", "width"])).toBeUndefined();
    expect(nearest("A", ["B", "C"])).toBeUndefined();
    expect(nearest("x".repeat(100_000), ["width"])).toBeUndefined();
  });
});

describe("JSON Pointers", () => {
  it("RFC 6901 (April 2013), section 5: the evaluations of its example document", () => {
    expect(parsePointer("")).toEqual([]);
    expect(parsePointer("/foo/0")).toEqual(["foo", "0"]);
    expect(parsePointer("/")).toEqual([""]);
    expect(parsePointer("/a~1b")).toEqual(["a/b"]);
    expect(parsePointer("/c%d")).toEqual(["c%d"]);
    expect(parsePointer("/ ")).toEqual([" "]);
    expect(parsePointer("/m~0n")).toEqual(["m~n"]);
    expect(parsePointer("/~01")).toEqual(["~1"]);
  });

  it("come back as they were", () => {
    fc.assert(
      fc.property(fc.array(fc.string()), (steps) => {
        expect(parsePointer(pointerOf(steps))).toEqual(steps);
      }),
    );
  });
});
