/** Screws before and after: what holds stays as it is; what gives gets the fewest rows that hold, by an edit that makes it hold. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { readDocument } from "../../src/project/read.ts";
import { fixingDesign } from "../../src/proof/wind/fixing-design.ts";

interface Demo {
  site: { windPressure1in50Pa: { value: number } };
  claddings: { kind: string; dataSheet?: { pullThroughN?: number } }[];
}

function demo(change: (document: Demo) => void = () => undefined) {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8")) as Demo;
  change(document);
  const read = readDocument(document, "demo");
  if (!read.ok) throw new Error("the demo cannot be read");
  return { document, designed: design(read.project) };
}

describe("fixing design", () => {
  it("changes nothing where every sheet holds", () => {
    const { designed } = demo();
    const sheets = fixingDesign(designed).filter(({ of }) => of !== "battens");
    expect(sheets.length).toBeGreaterThan(2);
    for (const { screwsNow, screwsAfter, edit } of sheets) {
      expect(screwsAfter).toBe(screwsNow);
      expect(edit).toBeUndefined();
    }
  });

  it("never asks for more screws in battens that hold as they stand", () => {
    const battens = fixingDesign(demo().designed).filter(({ of }) => of === "battens");
    expect(battens.length).toBeGreaterThan(3);
    for (const { screwsNow, screwsAfter } of battens) expect(screwsAfter ?? 0).toBeLessThanOrEqual(screwsNow);
  });

  it("closes the rows of sheets that give, and its edit makes them hold", () => {
    const { document, designed } = demo((one) => {
      one.site.windPressure1in50Pa.value *= 1.6;
    });
    const gives = (found: typeof designed) =>
      found.findings.filter(({ code, outcome }) => code === "P050" && outcome === "fail");
    expect(gives(designed).length).toBeGreaterThan(0);
    const plans = fixingDesign(designed).filter(({ edit }) => edit);
    const [plan] = plans;
    if (!plan?.edit) throw new Error("nothing is closed");
    expect(plan.screwsAfter ?? 0).toBeGreaterThan(plan.screwsNow);
    // Of zones that share a data sheet the closest spacing serves all.
    const closest = plans.reduce((a, b) => ((b.spacingAfter ?? 0) < (a.spacingAfter ?? 0) ? b : a));
    const mended = applyPatch(document, closest.edit);
    const again = mended.ok && readDocument(mended.document, "demo");
    if (again === false || !again.ok) throw new Error("the edit spoils the file");
    expect(gives(design(again.project))).toEqual([]);
  });
});
