/** The reference data keeps its promises: its schemas, its sources, its units, and no remembered figure passing for a confirmed one. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type SourcedRecord, sourcedRecords, unconfirmed } from "../../src/catalogue/records.ts";
import { catalogueSchemas } from "../../src/catalogue/schema/all.ts";
import { basisSchema, unitSchema } from "../../src/catalogue/schema/figure.ts";
import { source, sourceKeys } from "../../src/catalogue/sources.ts";

const dataFolder = new URL("../../data/", import.meta.url);
const fileNames = readdirSync(dataFolder).filter((name) => name.endsWith(".json"));
const readData = (name: string): unknown => JSON.parse(readFileSync(new URL(name, dataFolder), "utf8"));
const place = (entry: SourcedRecord): string => `${entry.file}: ${entry.path}`;

/** Every object of a file that names a basis, found without the catalogue's own walk. */
function rawRecords(node: unknown): { basis: string; unit?: string }[] {
  if (typeof node !== "object" || node === null) return [];
  const own = "basis" in node ? [node as { basis: string; unit?: string }] : [];
  return [...own, ...Object.values(node).flatMap(rawRecords)];
}

describe("data files", () => {
  it("each has a schema, and each schema has its file", () => {
    expect(fileNames.map((name) => name.replace(".json", "")).sort()).toEqual(
      Object.keys(catalogueSchemas).sort(),
    );
  });

  it.each(Object.entries(catalogueSchemas))("%s passes its schema", (name, schema) => {
    const result = schema.safeParse(readData(`${name}.json`));
    expect(result.error?.issues ?? []).toEqual([]);
  });

  it("a schema refuses an unknown unit, a missing basis and an unknown field", () => {
    const schema = catalogueSchemas.finishes;
    const good = readData("finishes.json") as { moistureAtPainting: Record<string, unknown> };
    expect(schema.safeParse(good).success).toBe(true);
    const { basis: _basis, ...withoutBasis } = good.moistureAtPainting;
    for (const bad of [
      { ...good.moistureAtPainting, unit: "furlong" },
      { ...good.moistureAtPainting, certain: true },
      withoutBasis,
    ]) {
      expect(schema.safeParse({ ...good, moistureAtPainting: bad }).success).toBe(false);
    }
  });

  it("ids are used once in their list", () => {
    const lists: [string, unknown[]][] = [];
    const collect = (where: string, node: unknown): void => {
      if (typeof node !== "object" || node === null) return;
      if (Array.isArray(node)) lists.push([where, node]);
      for (const [key, child] of Object.entries(node)) collect(`${where}.${key}`, child);
    };
    for (const name of fileNames) collect(name, readData(name));
    for (const [where, list] of lists) {
      // A place may have several spans, told apart by their period.
      const ids = list.flatMap((entry) =>
        typeof entry === "object" && entry !== null && "id" in entry
          ? [`${entry.id} ${"period" in entry ? entry.period : ""}`]
          : [],
      );
      expect(new Set(ids).size, where).toBe(ids.length);
    }
  });
});

describe("sources", () => {
  const used = new Set(sourcedRecords().map((entry) => entry.source));

  it("every source a record names exists", () => {
    const missing = sourcedRecords().filter((entry) => source(entry.source) === undefined);
    expect(missing.map(place)).toEqual([]);
  });

  it("every source is used", () => {
    expect(sourceKeys().filter((key) => !used.has(key))).toEqual([]);
  });

  it("an unknown key gives nothing, names of object methods included", () => {
    expect(source("no-such-source")).toBeUndefined();
    expect(source("toString")).toBeUndefined();
  });
});

describe("basis", () => {
  const raw = fileNames
    .filter((name) => name !== "sources.json")
    .flatMap((name) => rawRecords(readData(name)));

  it("the walk misses no record", () => {
    expect(sourcedRecords()).toHaveLength(raw.length);
    expect(raw.length).toBeGreaterThan(500);
  });

  it("unconfirmed() finds every remembered and invented record and no other", () => {
    const expected = raw.filter(({ basis }) => basis === "memory" || basis === "invented").length;
    expect(unconfirmed()).toHaveLength(expected);
    expect(unconfirmed().every((entry) => ["memory", "invented"].includes(entry.basis))).toBe(true);
  });

  it("what is said to stand in no document, or in one that was not opened, is never given as read", () => {
    const closed = sourcedRecords().filter((entry) => {
      const named = source(entry.source);
      return named?.kind === "memory" || named?.note?.startsWith("not opened") === true;
    });
    expect(closed.length).toBeGreaterThan(0);
    expect(closed.filter((entry) => entry.basis !== "memory").map(place)).toEqual([]);
  });

  it("the basis of practice and invention agrees with the kind of source", () => {
    const unlike = sourcedRecords().filter((entry) => {
      const practice = entry.basis === "common-practice" || entry.basis === "invented";
      return practice !== (source(entry.source)?.kind === "common-practice");
    });
    expect(unlike.map(place)).toEqual([]);
  });

  it("units and bases come from their closed lists, and every one listed is used", () => {
    expect([...new Set(raw.map(({ basis }) => basis))].sort()).toEqual([...basisSchema.options].sort());
    const units = new Set(raw.flatMap(({ unit }) => (unit === undefined ? [] : [unit])));
    expect([...units].sort()).toEqual([...unitSchema.options].sort());
  });
});
