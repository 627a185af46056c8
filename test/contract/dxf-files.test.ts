/** The drawings of an issue as DXF: at full size, read back by two readers that are not ours. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { IPoint } from "dxf-parser";
import { describe, expect, it } from "vitest";
import { dxfOfDrawing, writeDxf } from "../../src/output/dxf/dxf.ts";
import { LINE_STYLES, LINE_WIDTHS } from "../../src/scene/roles.ts";
import { ENGLISH_MM } from "../../src/text/say.ts";
import { parseDxf } from "../helpers/dxf-reader.ts";
import { fixtureScenes, fixtureSheet } from "../helpers/fixture-drawings.ts";
import { sampleScene } from "../helpers/sample-scene.ts";

const scenes = fixtureScenes();
const front = scenes["face-front"]!;

/** Debian's package python3-ezdxf, for the system's own Python. */
const PYTHON = "/usr/bin/python3";
const hasAudit = spawnSync(PYTHON, ["-c", "import ezdxf"]).status === 0;

const AUDIT = `
import json, sys, ezdxf
told = []
for name in sys.argv[1:]:
    drawing = ezdxf.readfile(name)
    audit = drawing.audit()
    dimensions = [d for d in drawing.modelspace() if d.dxftype() == "DIMENSION"]
    told.append({
        "errors": [e.message for e in audit.errors] + [f.message for f in audit.fixes],
        "units": drawing.units,
        "encoding": drawing.encoding,
        "measured": [[d.get_measurement(), d.dxf.text] for d in dimensions],
        "textScales": sorted({drawing.dimstyles.get(d.dxf.dimstyle).dxf.dimscale for d in dimensions}),
    })
print(json.dumps(told))
`;

interface Audit {
  readonly errors: readonly string[];
  readonly units: number;
  readonly measured: readonly (readonly [number, string])[];
  readonly textScales: readonly number[];
}

function audited(files: Readonly<Record<string, Uint8Array>>): Audit[] {
  const folder = mkdtempSync(join(tmpdir(), "outerleaf-dxf-"));
  try {
    const names = Object.entries(files).map(([name, bytes]) => {
      writeFileSync(join(folder, name), bytes);
      return join(folder, name);
    });
    return JSON.parse(execFileSync(PYTHON, ["-c", AUDIT, ...names], { encoding: "utf8" })) as Audit[];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

describe("a view as DXF", () => {
  const read = parseDxf(writeDxf([front], ENGLISH_MM));

  it("is at full size in millimetres, its texts as high as on paper at the view's scale", () => {
    expect(read.header.$INSUNITS).toBe(4);
    expect((read.header.$EXTMAX as IPoint).x).toBeCloseTo(front.bounds.x[1], 5);
    const heights = new Set(read.entities.flatMap(({ textHeight }) => textHeight ?? []));
    expect(Math.max(...heights) * front.scale).toBeLessThan(10);
    expect(Math.min(...heights) * front.scale).toBeGreaterThanOrEqual(1.5);
  });

  it("keeps each thing on a layer named after ISO 13567-2, and its line's width by its role", () => {
    for (const layer of read.layers.filter((name) => name !== "0"))
      expect(layer).toMatch(/^A-[A-Z-]{6}(?:[EDTH]-|HF)$/);
    const widths = new Set(read.entities.flatMap(({ lineweight }) => lineweight ?? []));
    const known = new Set(
      Object.values(LINE_STYLES).map(({ width }) => Math.round(LINE_WIDTHS[width] * 100)),
    );
    expect([...widths].filter((width) => !known.has(width))).toEqual([]);
  });

  it("fills materials on layers of their own, switched off, so that lines read on dark and light alike", () => {
    const filled = read.entities.filter(({ type, layer }) => type === "HATCH" && layer.endsWith("HF"));
    expect(filled.length).toBeGreaterThan(10);
    expect(read.off).toEqual(read.layers.filter((name) => name.endsWith("HF")));
    expect(read.entities.filter(({ type, layer }) => type !== "HATCH" && layer.endsWith("HF"))).toEqual([]);
  });

  it("carries the marks of pieces, so that they can be found", () => {
    const marks = new Set(front.items.flatMap(({ of }) => of ?? []));
    const found = new Set(
      read.entities.map(({ extendedData }) => extendedData.customStrings[0]).filter((of) => of !== ""),
    );
    expect(found).toEqual(marks);
  });

  it("puts the views of a sheet side by side, each with its title", () => {
    const all = [front, scenes["section-sill"]!];
    const { entities } = parseDxf(writeDxf(all, ENGLISH_MM));
    const texts = entities.flatMap(({ text }) => text ?? []);
    expect(
      texts.filter((text) => text.startsWith("Section") || text.includes("Front")).length,
    ).toBeGreaterThanOrEqual(1);
    expect(dxfOfDrawing(fixtureSheet(front), ENGLISH_MM)).toEqual(writeDxf([front], ENGLISH_MM));
  });
});

describe.skipIf(!hasAudit)(
  `the audit of python3-ezdxf${hasAudit ? "" : " (skipped: the package is not installed)"}`,
  () => {
    const files = Object.fromEntries(
      [...Object.entries(scenes), ["sample", sampleScene()] as const].map(([name, scene]) => [
        `${name}.dxf`,
        writeDxf([scene], ENGLISH_MM),
      ]),
    );

    it("finds nothing to mend in any view, and dimensions that measure what they say", () => {
      const told = audited({ ...files, "two.dxf": writeDxf([front, scenes["section-sill"]!], ENGLISH_MM) });
      expect(told.flatMap(({ errors }) => errors)).toEqual([]);
      expect(told.every(({ units }) => units === 4)).toBe(true);
      const measured = told.flatMap((one) => one.measured);
      expect(measured.length).toBeGreaterThan(30);
      expect(measured.every(([mm]) => mm > 0)).toBe(true);
      // In a drawing of two scales each dimension's figures keep their height on paper.
      expect(told.at(-1)?.textScales).toEqual(
        [...new Set([1 / scenes["section-sill"]!.scale, 1 / front.scale])].sort((a, b) => a - b),
      );
    }, 60_000);
  },
);
