/** Wind as it is typed on the sheet: each edit changes its own value, keeps what stood beside it, and reads again. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { structureDemand } from "../../src/codes/packs/index.ts";
import { applyPatch } from "../../src/project/edit.ts";
import type { Change } from "../../src/project/editing/change.ts";
import {
  removeRelief,
  setHourlyPressure,
  setPlanSide,
  setRoofHeight,
  setWindCode,
  setWindFigure,
  setWindWord,
} from "../../src/project/editing/wind.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { STRUCTURE_CODES, TERRAINS_OF } from "../../src/project/schema/wind.ts";

function demo(change: (site: Record<string, unknown>) => void = () => undefined) {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  change(document.site);
  return sourced(document);
}

function sourced(document: unknown) {
  const read = readDocument(document, "demo");
  if (!read.ok) throw new Error("the file cannot be read");
  return { document, project: read.project };
}

function edited({ document }: { document: unknown }, change: Change | undefined): Project {
  const made = applyPatch(document, change?.operations);
  if (!made.ok) throw new Error("the edit does not apply");
  return sourced(made.document).project;
}

describe("edits of the wind", () => {
  it("choose a code, with or without wind before, and keep what is known", () => {
    const before = demo();
    const chosen = edited(before, setWindCode(before, "europe-en-1991-1-4"));
    expect(chosen.site.wind).toMatchObject({ code: "europe-en-1991-1-4", roofHeight: 3400 });
    const bare = demo((site) => {
      delete site.wind;
    });
    expect(edited(bare, setWindCode(bare, "usa-asce-7-22")).site.wind).toEqual({ code: "usa-asce-7-22" });
  });

  it("give pressure and speed with their source, as given", () => {
    const before = demo();
    const pressed = edited(before, setHourlyPressure(before, { value: 440, source: "table, Abbotsford" }));
    expect(pressed.site.windPressure1in50Pa).toMatchObject({
      value: 440,
      basis: "given",
      source: "table, Abbotsford",
    });
    const typed = { value: 51, source: "map" };
    expect(edited(before, setWindFigure(before, "speedMPerS", typed)).site.wind?.speedMPerS).toEqual({
      ...typed,
      basis: "given",
    });
  });

  it("take relief off again, where there is some", () => {
    const before = demo();
    expect(removeRelief(before)).toBeUndefined();
    const relieved = applyPatch(
      before.document,
      setWindFigure(before, "reliefPercent", { value: 20, source: "test report" })?.operations,
    );
    if (!relieved.ok) throw new Error("no relief");
    const source = sourced(relieved.document);
    expect(source.project.site.wind?.reliefPercent?.value).toBe(20);
    expect(edited(source, removeRelief(source)).site.wind?.reliefPercent).toBeUndefined();
  });

  it("set words and sizes, each by itself", () => {
    const before = demo();
    expect(edited(before, setWindWord(before, "terrain", "open")).site.wind?.terrain).toBe("open");
    expect(edited(before, setRoofHeight(before, 5200)).site.wind?.roofHeight).toBe(5200);
    expect(edited(before, setPlanSide(before, 1, 9000)).site.wind?.plan).toEqual([4800, 9000]);
  });

  it("offer for every code the words that its pack reads", () => {
    const before = demo();
    for (const code of STRUCTURE_CODES)
      for (const terrain of TERRAINS_OF[code]) {
        const document = structuredClone(before.document) as { site: { wind: Record<string, unknown> } };
        Object.assign(document.site.wind, { code, terrain });
        const answer = structureDemand(sourced(document).project);
        const wind = answer.known ? answer.wind : undefined;
        const lacks = wind?.known === false ? wind.lacks.map(({ path }) => path) : [];
        expect(lacks).not.toContain("/site/wind/terrain");
      }
  });
});
