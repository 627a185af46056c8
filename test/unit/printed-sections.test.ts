/** Where the printed sections stand: down a joint they would show no cladding (common practice: a section is cut where there is something to show). */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { drawingSheets } from "../../src/output/drawings/drawing-sheets.ts";
import { readProject } from "../../src/project/read.ts";

const EXAMPLES = ["atelier-bouleau", "imperial", "l-plan", "porch", "two-storey"];

describe.each(EXAMPLES)("the printed sections of %s", (name) => {
  const result = readProject(readFileSync(`examples/${name}.outerleaf.json`, "utf8"), name);
  if (!result.ok) throw new Error(`${name} does not read`);
  const made = design(result.project);
  const reader = { language: "en", units: "mm", denominator: 16 } as const;

  it("cut cladding of their zone", () => {
    const sheets = drawingSheets({ design: made, findings: [], reader }).filter(({ name: file }) =>
      file.startsWith("section-"),
    );
    expect(sheets.length).toBeGreaterThan(0);
    for (const { name: file, svg } of sheets) {
      const [, of = "", at = ""] = /data-view="section-(.+?)-(-?\d+)(?:-[a-z]+)?"/.exec(svg) ?? [];
      const face = made.facade.faces.find(({ id }) => id === of);
      const zone = file.slice(`section-${of}-`.length).replace(/-\d+$/, "");
      const cut = face?.pieces.filter(({ kind, zone: its, outline }) => {
        const { x } = polygonBounds(outline);
        return (
          (kind === "board" || kind === "sheet") && its === zone && x[0] < Number(at) && Number(at) < x[1]
        );
      });
      expect({ file, cut: cut?.length }).not.toEqual({ file, cut: 0 });
      expect(face).toBeDefined();
    }
  });

  it("show the base of every zone of a wall, beside a recess that begins there", () => {
    const sheets = drawingSheets({ design: made, findings: [], reader, only: ["sections"] });
    const walls = made.facade.faces.filter(({ frame }) => frame.level === undefined);
    for (const { id, zones, openings } of walls) {
      for (const zone of zones) {
        const shown = sheets
          .filter(({ name: file }) => file.replace(/-\d+$/, "") === `section-${id}-${zone.id}`)
          .flatMap(({ svg }) => [...svg.matchAll(/data-view="section-.+?-(-?\d+)-base"/g)])
          .map(([, at]) => Number(at));
        expect({ id, zone: zone.id, bases: shown.length }).toEqual({ id, zone: zone.id, bases: 1 });
        const low = polygonBounds(zone.region).y[0];
        const recesses = openings.filter(({ kind, region }) => kind === "recess" && region.y[0] <= low);
        const [at = Number.NaN] = shown;
        expect(recesses.filter(({ region: { x } }) => x[0] < at && at < x[1])).toEqual([]);
      }
    }
  });
});
