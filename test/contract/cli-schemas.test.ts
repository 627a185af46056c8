/** Each command's JSON is of its published shape, on all four examples; the published schemas are those of the program. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import { afterAll, describe, expect, it } from "vitest";
import { commandSchemaFiles } from "../../scripts/docs-schemas-cli.ts";
import { bench, checkout, EXAMPLES } from "../helpers/cli.ts";
import { box, dxf, lightLine } from "../helpers/dxf.ts";

const ajv = new Ajv2020({ strict: true, strictTuples: false, allErrors: true, formats: { uri: true } });
const schemas = new Map<string, ValidateFunction>();
const desk = bench();
afterAll(() => desk.clear());

function published(name: string): ValidateFunction {
  const text = readFileSync(join(checkout, "schemas", `${name}.schema.json`), "utf8");
  const held = schemas.get(name) ?? ajv.compile(JSON.parse(text));
  schemas.set(name, held);
  return held;
}

/** The parsed output, held to its schema. */
function held(name: string, out: string): Record<string, unknown> {
  const value = JSON.parse(out) as Record<string, unknown>;
  const validate = published(name);
  validate(value);
  expect(validate.errors?.slice(0, 5) ?? []).toEqual([]);
  return value;
}

describe("the published schemas", () => {
  it("are those of the shapes that the program prints by", () => {
    for (const [file, text] of Object.entries(commandSchemaFiles())) {
      expect({ file, schema: JSON.parse(readFileSync(join(checkout, "schemas", file), "utf8")) }).toEqual({
        file,
        schema: JSON.parse(text),
      });
    }
  });

  it("are there for every command and for nothing else", () => {
    const files = readdirSync(join(checkout, "schemas")).filter((name) => name !== "project.schema.json");
    expect(files.sort()).toEqual(Object.keys(commandSchemaFiles()).sort());
  });

  it("refuse an answer that lacks a field, and one with a field too many", () => {
    const validate = published("prove");
    expect(validate({ schemaVersion: 1, findings: [] })).toBe(true);
    expect(validate({ schemaVersion: 1 })).toBe(false);
    expect(validate({ schemaVersion: 1, findings: [], more: 1 })).toBe(false);
  });
});

describe.each(EXAMPLES)("%s", (file) => {
  it("check", async () => {
    const { exit, out, err } = await desk.run("check", file, "--json");
    expect({ exit, err }).toEqual({ exit: 0, err: "" });
    expect(held("check", out)).toMatchObject({ schemaVersion: 1, file, usable: true });
  });

  it("planes", async () => {
    const { exit, out, err } = await desk.run("planes", file, "--planing", "2", "--json");
    expect({ exit, err }).toEqual({ exit: 0, err: "" });
    const { searches } = held("planes", out) as {
      searches: {
        counts: { passing: number; failing: number };
        passing: { present: boolean; edit: unknown[] }[];
        failing: { failed: unknown[]; edit?: unknown[] }[];
        leftOut: { passing: number; failing: number };
      }[];
    };
    for (const { counts, passing, failing, leftOut } of searches) {
      expect(passing.length + leftOut.passing).toBe(counts.passing);
      expect(failing.length + leftOut.failing).toBe(counts.failing);
      expect(passing.every(({ present, edit }) => present === (edit.length === 0))).toBe(true);
      expect(failing.every(({ failed, edit }) => failed.length > 0 && edit === undefined)).toBe(true);
    }
  });

  it("set-out", async () => {
    const { exit, out } = await desk.run("set-out", file, "--json");
    const { faces, planes, findings } = held("set-out", out) as {
      faces: { pieces: { mark: string }[]; joints: { between: string[] }[]; rods: { courses: number[] }[] }[];
      planes: unknown[];
      findings: { code: string; outcome: string }[];
    };
    expect(faces.every(({ pieces }) => pieces.length > 10)).toBe(true);
    expect(faces.flatMap(({ joints }) => joints).every(({ between }) => between.length > 0)).toBe(true);
    expect(planes.length).toBeGreaterThan(0);
    expect(findings.every(({ code }) => code.startsWith("S"))).toBe(true);
    expect(exit).toBe(
      findings.some(({ outcome }) => outcome === "fail" || outcome === "cannot evaluate") ? 1 : 0,
    );
  });

  it("prove", async () => {
    const { exit, out } = await desk.run("prove", file, "--json");
    const { findings } = held("prove", out) as { findings: { outcome: string }[] };
    expect(findings.length).toBeGreaterThan(20);
    expect(exit).toBe(
      findings.some(({ outcome }) => outcome === "fail" || outcome === "cannot evaluate") ? 1 : 0,
    );
  });

  it("rips", async () => {
    const { out } = await desk.run("rips", file, "--narrowest", "90", "--widest", "110", "--json");
    const { rods } = held("rips", out) as { rods: { curve: unknown[] }[] };
    expect(rods.every(({ curve }) => curve.length === 21)).toBe(true);
  });

  it("cut", async () => {
    const { out } = await desk.run("cut", file, "--json");
    const cut = held("cut", out) as { cost: number; bound: number; gap: number; sheets: unknown[] };
    expect(cut.sheets.length).toBeGreaterThan(0);
    expect(cut.gap).toBeCloseTo(cut.cost > 0 ? (cut.cost - cut.bound) / cut.cost : 0, 9);
  });

  it("takeoff", async () => {
    const { out } = await desk.run("takeoff", file, "--json");
    const { order, massKg } = held("takeoff", out) as {
      order: { lines: { amount?: number }[]; sum: number };
      massKg: number;
    };
    expect(massKg).toBeGreaterThan(100);
    expect(order.sum).toBeCloseTo(
      order.lines.reduce((sum, { amount = 0 }) => sum + amount, 0),
      2,
    );
  });

  it("upkeep, and its calendar where the hand-over is told", async () => {
    const { exit, out } = await desk.run("upkeep", file, "--json");
    expect(exit).toBe(0);
    const { since, lines } = held("upkeep", out) as {
      since?: string;
      lines: { face: string; months?: number; next?: string }[];
    };
    expect(lines.length).toBeGreaterThan(0);
    for (const { months, next } of lines) {
      expect(next === undefined).toBe(since === undefined || months === undefined);
    }
    const calendar = await desk.run("upkeep", file, "--calendar");
    expect(calendar.exit).toBe(since === undefined ? 2 : 0);
    if (since !== undefined) expect(calendar.out).toMatch(/^BEGIN:VCALENDAR\r\n/);
  });

  it("lay-again of an opening told wider, what is cut kept where it can be, or word that nothing was measured", async () => {
    expect(held("refused", (await desk.run("lay-again", file, "--json")).out)).toMatchObject({
      refused: "No opening or end of this project has been measured.",
    });
    if (!file.startsWith("atelier")) return;
    const entry = { id: "0123456789abcdef-1", told: "2026-05-04T08:00:00Z", kind: "opening" };
    const body = { left: 2094, width: 606, sill: 1500, height: 600 };
    desk.write("told.json", [{ ...entry, place: { face: "west", opening: "W3" }, body }]);
    const { out } = await desk.run(
      "lay-again",
      file,
      "--journal",
      "told.json",
      "--to",
      "laid.json",
      "--json",
    );
    const { faces, edit, written } = held("lay-again", out) as {
      faces: { face: string; cost: number; pieces: { fate: string }[] }[];
      edit: { path: string }[];
      written: { file: string };
    };
    expect(faces).toMatchObject([{ face: "west", possible: true, cost: 0, least: 0 }]);
    expect(faces[0]?.pieces.every(({ fate }) => fate === "new size")).toBe(true);
    expect(edit.map(({ path }) => path)).toEqual(["/faces/0/openings/0/x", "/asBuilt"]);
    expect(JSON.parse(desk.read(written.file))).toMatchObject({ asBuilt: { laid: [{ face: "west" }] } });
    const again = await desk.run("lay-again", written.file, "--journal", "told.json");
    expect(again.out).toContain("0 pieces move or change, re-cuts cost 0 (at least 0)");
    desk.write("told.json", { entries: 7 });
    expect((await desk.run("lay-again", file, "--journal", "told.json")).exit).toBe(2);
  });

  it("pack, or word that nothing was read", async () => {
    const { exit, out } = await desk.run("pack", file, "--json");
    if (exit === 2) {
      expect(held("refused", out)).toMatchObject({ refused: "No face of this project has been read." });
      return;
    }
    const { faces, findings } = held("pack", out) as {
      faces: {
        packings: { kind: string; sum: number; crossings: { wanted: number; packers: number[] }[] }[];
      }[];
      findings: { outcome: string }[];
    };
    expect(exit).toBe(findings.some(({ outcome }) => outcome === "fail") ? 1 : 0);
    for (const { packings } of faces) {
      expect(packings.map(({ kind }) => kind)).toContain("outer");
      for (const { sum, crossings } of packings) {
        const packed = crossings.reduce((all, { wanted }) => all + Math.max(wanted, 0), 0);
        expect(sum).toBeCloseTo(packed, 6);
      }
    }
  });

  it("reach, a piece and a place before it", async () => {
    const { faces } = JSON.parse((await desk.run("set-out", file, "--json")).out) as {
      faces: { id: string; pieces: { mark: string; kind: string; outline: [number, number][] }[] }[];
    };
    const { id, pieces } = faces[0]!;
    const one = pieces.find(({ kind }) => kind === "sheet" || kind === "board")!;
    const toPiece = await desk.run("reach", file, "--mark", one.mark, "--json");
    expect(toPiece.exit).toBe(0);
    const way = held("reach", toPiece.out) as { steps: { mark: string; screws: { count: number }[] }[] };
    expect(way.steps.at(-1)?.mark).toBe(one.mark);
    const at = [0, 1].map((axis) => {
      const along = one.outline.map((point) => point[axis]!);
      return (Math.min(...along) + Math.max(...along)) / 2;
    });
    const place = ["--face", id, "--at", at.map((mm) => `${mm} mm`).join(";"), "--depth", "batten"];
    const toPlace = await desk.run("reach", file, ...place, "--json");
    expect(held("reach", toPlace.out)).toMatchObject({ face: id, depth: "batten" });
    expect(toPlace.out).toContain(`"mark": "${one.mark}"`);
  });

  it("issue, its manifest and its documents", async () => {
    const folder = `issue-${file}`;
    const { out } = await desk.run("issue", file, "--to", folder, "--json");
    held("issue", out);
    const manifest = held("manifest", desk.read(join(folder, "manifest.json")));
    const documents = manifest.documents as { name: string }[];
    // What the documents were drawn from lies hidden beside them.
    const shown = desk.names(folder).filter((name) => !name.startsWith("."));
    expect(shown).toEqual([...documents.map(({ name }) => name), "manifest.json"].sort());
    held("prove", desk.read(join(folder, "findings.json")));
    for (const name of ["set-out", "cut", "takeoff"]) held(name, desk.read(join(folder, `${name}.json`)));
  });

  it("serve", async () => {
    const { exit, out, url } = await desk.serve(
      async () => undefined,
      "serve",
      file,
      "--port",
      "0",
      "--json",
    );
    expect(exit).toBe(0);
    expect(held("serve", out)).toEqual({ schemaVersion: 1, address: url, file });
  });
});

it("new", async () => {
  const { exit, out } = await desk.run("new", "wall.json", "--json");
  expect(exit).toBe(0);
  expect(held("new", out)).toMatchObject({
    file: "wall.json",
    bytes: Buffer.byteLength(desk.read("wall.json")),
  });
});

it("take-in, a drawing", async () => {
  const front = dxf({ units: 4, entities: [lightLine(box(0, 0, 4000, 2500))] });
  writeFileSync(join(desk.folder, "front.dxf"), front);
  const { exit, out } = await desk.run("take-in", "front.dxf", "--to", "front.json", "--json");
  expect(exit).toBe(0);
  expect(held("take-in", out)).toMatchObject({ file: "front.dxf", written: { file: "front.json" } });
});

it("saw, sheets and lengths, and a list with problems", async () => {
  const list = {
    schema: "cutting-bench-1",
    instances: [
      { id: "a", sheets: [[1220, 2440]], items: [[600, 800, 5]], kerf: 3 },
      { id: "b", stock: [[2440, 5]], items: [[1200, 3]] },
      { id: "c", sheets: [[1220]], items: [] },
    ],
  };
  const { exit, out } = await desk.run("saw", desk.write("list.json", list), "--json", "--turn");
  expect(exit).toBe(2);
  const { answers, problems } = held("saw", out) as { answers: { id: string }[]; problems: unknown[] };
  expect(answers.map(({ id }) => id)).toEqual(["a", "b"]);
  expect(problems).toMatchObject([{ where: "/instances/2/sheets/0/1" }]);
});

it("reckon, the list and one of it", async () => {
  expect(
    (held("reckon", (await desk.run("reckon", "--json")).out).equations as unknown[]).length,
  ).toBeGreaterThan(9);
  const inputs = ["openingMm=3", "wireMm=0.5"];
  const { out } = await desk.run("reckon", "woven-free-share", ...inputs, "--json");
  // (3 / 3.5)² worked by hand.
  expect((held("reckon", out).result as { value: number }).value).toBeCloseTo(0.7347, 4);
});

it("set-out and prove, of a rod with ways to mend it", async () => {
  const path = "/claddings/0/widths";
  const edit = desk.write("no-rod.json", [{ op: "replace", path, value: [94] }]);
  for (const command of ["set-out", "prove"]) {
    const { exit, out } = await desk.run(command, "atelier-bouleau.outerleaf.json", "--edit", edit, "--json");
    expect(exit).toBe(1);
    const { findings } = held(command, out) as {
      findings: { choices?: { says: string; edit?: unknown[] }[] }[];
    };
    const choices = findings.flatMap((finding) => finding.choices ?? []);
    expect(choices.length).toBeGreaterThan(2);
    expect(choices.every(({ says }) => says.length > 10)).toBe(true);
    expect(choices.some((choice) => choice.edit !== undefined)).toBe(true);
  }
});

it("what is refused", async () => {
  const { exit, out, err } = await desk.run("set-out", "nowhere.json", "--json");
  expect(exit).toBe(2);
  expect(err).toContain(held("refused", out).refused);
});

// It writes what `issue` writes, which is held above for every example.
describe.each(["imperial.outerleaf.json", "porch.outerleaf.json"])("%s", (file) => {
  it("start", async () => {
    const { exit, out } = await desk.run("start", file, "--once", "--json");
    expect(exit).toBe(0);
    expect(held("start", out)).toMatchObject({
      file,
      folder: join("out", file.replace(".outerleaf.json", "")),
    });
  });
});
