/**
 * After an edit the sheets are what a set from scratch has, byte for byte, and those that show nothing of the edit are the very
 * ones of before: neither drawn nor written again. Held against drawing everything anew, which knows of no memo.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import type { CutPlan } from "../../src/cutting/facade/plan.ts";
import { designFile } from "../../src/design.ts";
import { createDrawMemo } from "../../src/output/drawings/draw-memo.ts";
import { type DrawingSheet, drawingSheets } from "../../src/output/drawings/drawing-sheets.ts";
import type { DrawingFacts } from "../../src/output/drawings/facts.ts";
import type { ProjectDocument } from "../../src/project/schema/project.ts";
import { SHEET_KINDS } from "../../src/project/schema/sheets.ts";
import { createFaceMemo } from "../../src/setout/memo.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { ENGLISH_MM, type Reader } from "../../src/text/say.ts";

const demo: ProjectDocument = JSON.parse(
  readFileSync(new URL("../../examples/atelier-bouleau.outerleaf.json", import.meta.url), "utf8"),
);
const FRENCH: Reader = { ...ENGLISH_MM, language: "fr" };
const FEET: Reader = { ...ENGLISH_MM, units: "feet-inch" };

interface Edited {
  /** Cut again: no other edit here is known to the saw. */
  readonly cut?: true;
  readonly file?: (document: ProjectDocument) => unknown;
  readonly reader?: Reader;
}

/** What the page keeps from one edit to the next. */
function page() {
  const faces = createFaceMemo({ spare: 24, shareds: 2 });
  const memo = createDrawMemo();
  let sawn: CutPlan | undefined;
  const known = new Map<Edited, DrawingFacts>();
  const make = ({ file, reader = ENGLISH_MM, cut }: Edited): DrawingFacts => {
    const document = structuredClone(demo);
    file?.(document);
    const made = designFile({ name: "demo", document }, { faces });
    if (made.kind === "refused") throw new Error(JSON.stringify(made.findings[0]));
    const { project, facade, findings } = made.design;
    const plan = (!cut && sawn) || cutFacade(project, facade).plan;
    sawn ??= plan;
    return { design: made.design, findings, reader, plan, takeoff: takeOff(project, facade, plan) };
  };
  const factsOf = (edited: Edited): DrawingFacts => {
    const facts = known.get(edited) ?? make(edited);
    known.set(edited, facts);
    return facts;
  };
  return {
    draw: (edited: Edited) => drawingSheets(factsOf(edited), memo),
    anew: (edited: Edited) => drawingSheets(factsOf(edited)),
    made: () => memo.made,
  };
}

/** Names of sheets that are not those of before. */
function drawnAgain(before: readonly DrawingSheet[], after: readonly DrawingSheet[]): string[] {
  const old = new Set(before);
  return after.filter((sheet) => !old.has(sheet)).map(({ name }) => name);
}

const faceOf = ({ faces }: ProjectDocument, id: string) => {
  const face = faces.find((one) => one.id === id);
  if (!face) throw new Error(`no face ${id}`);
  return face;
};

const AS_IT_WAS: Edited = {};

/** The window of the west face, a little to the right. */
const moved: Edited = {
  cut: true,
  file: (document) => {
    const [window] = faceOf(document, "west").openings;
    if (window) window.x = [2120, 2720];
  },
};

describe("a set after an edit", () => {
  const kept = page();
  const first = kept.draw(AS_IT_WAS);

  it.each<readonly [string, Edited]>([
    ["a window", moved],
    [
      "the title and the revision",
      {
        file: (document) => {
          Object.assign(document, { title: "Another workshop", revision: "C" });
        },
      },
    ],
    [
      "the paper",
      {
        file: (document) => {
          document.sheets = { paper: "A2" };
        },
      },
    ],
    ["the language", { reader: FRENCH }],
    ["the units", { reader: FEET }],
  ])("of %s is the set drawn anew, and again after a step back", (_, edited) => {
    expect(kept.draw(edited)).toEqual(kept.anew(edited));
    const made = kept.made();
    expect(drawnAgain(first, kept.draw(AS_IT_WAS))).toEqual([]);
    expect(kept.made()).toBe(made);
  });

  it("of one window draws again what shows its wall or is reckoned from all walls, and nothing else", () => {
    const again = drawnAgain(first, kept.draw(moved));
    const others = ["front", "east", "north", "recess-left", "recess-back", "recess-right"];
    const kinds = ["face", "battens", "fixings", "wind", "hold-points", "section"];
    for (const { name } of first) {
      const ofAnother = kinds.some((kind) =>
        others.some((face) => name === `${kind}-${face}` || name.startsWith(`${kind}-${face}-`)),
      );
      if (ofAnother) expect(again, name).not.toContain(name);
    }
    expect(again).toContain("face-west");
    expect(again).toContain("developed-elevation");
    expect(again.length).toBeLessThan(first.length / 2);
  });

  it("writes every sheet anew in another language, with no view drawn again but the pages of the book", () => {
    const order = SHEET_KINDS.filter((kind) => kind !== "book");
    const file = (document: ProjectDocument): void => {
      document.sheets = { ...document.sheets, order };
    };
    const before = kept.draw({ file });
    const made = kept.made();
    const again = drawnAgain(before, kept.draw({ file, reader: FRENCH }));
    expect(again.length).toBe(before.length);
    // A sheet's writing counts as one.
    expect(kept.made() - made).toBeLessThanOrEqual(before.length);
  });

  it("draws the frames alone where the title changes, but for the views that bear it", () => {
    kept.draw(AS_IT_WAS);
    const made = kept.made();
    const titled = kept.draw({
      file: (document) => {
        document.title = "A third workshop";
      },
    });
    expect(drawnAgain(first, titled).length).toBe(first.length);
    // Frame and writing of each sheet, the developed elevation, the job on the cover, the first page of the book, and the index,
    // which names the elevation: three times, since it counts itself, and its own count takes it onto one page more.
    expect(kept.made() - made).toBeLessThanOrEqual(2 * first.length + 6);
  });
});
