/** Figures of one's own, put into the file and taken out of it again. */
import { describe, expect, it } from "vitest";
import { catalogueWith } from "../../src/catalogue/own-figures.ts";
import { removeFigure, setFigure } from "../../src/project/editing/figures.ts";
import { changed, edited, exampleSource } from "../helpers/editing.ts";

const KEY = "heat.fasteners.factor";
const OTHER = "clearances.clearances.germany-ground.figures.0";
const OWN = { value: 0.7, unit: undefined, source: "our own test" } as const;

describe("a figure of one's own", () => {
  const bare = exampleSource("atelier-bouleau");
  const one = edited(bare, setFigure(bare, KEY, OWN));
  const two = edited(one, setFigure(one, OTHER, { value: 250, unit: "mm", source: "local code" }));

  it("stands in the catalogue's place", () => {
    expect(one.project.figures).toEqual({ [KEY]: { value: 0.7, source: "our own test" } });
    expect(catalogueWith(one.project.figures).heat.fasteners.factor).toEqual({
      value: 0.7,
      unit: "1",
      source: "our own test",
      basis: "given",
    });
  });

  it("lets those beside it be, and takes another value with what was noted of it", () => {
    expect(Object.keys(two.project.figures ?? {})).toEqual([KEY, OTHER]);
    const noted = edited(two, {
      operations: [{ op: "add", path: `/figures/${KEY}/note`, value: "ask again" }],
      says: { key: "project.edit.figure", values: { key: KEY } },
    });
    const again = edited(noted, setFigure(noted, KEY, { ...OWN, value: 0.6 }));
    expect(again.project.figures?.[KEY]).toEqual({ value: 0.6, source: "our own test", note: "ask again" });
    expect(again.project.figures?.[OTHER]).toEqual(two.project.figures?.[OTHER]);
  });

  it("comes out again and leaves the file as it was, whatever the order", () => {
    for (const [first, second] of [
      [KEY, OTHER],
      [OTHER, KEY],
    ] as const) {
      const less = edited(two, removeFigure(two, first));
      expect(Object.keys(less.project.figures ?? {})).toEqual([second]);
      expect(changed(less, removeFigure(less, second))).toEqual(bare.document);
    }
  });

  it("cannot be taken out where there is none", () => {
    expect(removeFigure(bare, KEY)).toBeUndefined();
    expect(removeFigure(one, OTHER)).toBeUndefined();
  });

  it("may have a name with strokes and tildes", () => {
    const odd = edited(one, setFigure(one, "a/b~c", OWN));
    expect(odd.project.figures?.["a/b~c"]).toEqual({ value: 0.7, source: "our own test" });
    expect(edited(odd, removeFigure(odd, "a/b~c")).document).toEqual(one.document);
  });
});
