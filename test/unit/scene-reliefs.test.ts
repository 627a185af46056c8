/** Relief holes on the face elevation: a ring at each that set-out tells, and a note that counts them. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { readProject } from "../../src/project/read.ts";
import type { Item } from "../../src/scene/model.ts";
import { faceElevation } from "../../src/scene/views/face-elevation.ts";
import { type Reader, say } from "../../src/text/say.ts";

const result = readProject(readFileSync("examples/two-storey.outerleaf.json", "utf8"), "two-storey");
if (!result.ok) throw new Error("two-storey does not read");
const { project } = result;
const { facade } = design(project);

function itemsOf(face: string): readonly Item[] {
  const scene = faceElevation(facade, project, face);
  if (!scene) throw new Error(`no face ${face}`);
  return scene.items;
}

function notes(face: string, reader: Reader): string[] {
  return itemsOf(face).flatMap((item) =>
    item.kind === "text" && typeof item.text !== "string" && item.text.key === "drawing.reliefs"
      ? [say(item.text, reader)]
      : [],
  );
}

const MM: Reader = { language: "en", units: "mm", denominator: 16 };
const rings = (face: string) =>
  itemsOf(face).filter((item) => item.kind === "circle" && item.line === "visible" && item.of !== undefined);

describe("relief holes on the face elevation", () => {
  it("are ringed at every inner corner of a notched sheet, under the sheet's own mark", () => {
    const north = facade.faces.find(({ id }) => id === "north")!;
    const told = north.pieces.flatMap(({ mark, reliefs = [] }) => reliefs.map(({ x, y }) => [mark, x, y]));
    expect(told.length).toBeGreaterThan(1);
    expect(rings("north").map((item) => item.kind === "circle" && [item.of, ...item.centre])).toEqual(told);
    // Each lies at a corner of the outline of its piece, inside its box.
    for (const [mark, x, y] of told) {
      const { outline } = north.pieces.find((piece) => piece.mark === mark)!;
      const box = polygonBounds(outline);
      expect(outline.some((point) => point[0] === x && point[1] === y)).toBe(true);
      expect([box.x.includes(Number(x)), box.y.includes(Number(y))]).not.toEqual([true, true]);
    }
  });

  it("are counted in a note under everything else, in the reader's language and units", () => {
    expect(notes("north", MM)).toEqual([
      "3 relief holes 8 mm across at inner corners: drilled first, then sawn into",
    ]);
    expect(notes("north", { ...MM, language: "fr" })[0]).toContain("3 trous de 8 mm aux angles rentrants");
    expect(notes("north", { ...MM, units: "feet-inch" })[0]).toContain('5/16" across');
    const all = itemsOf("north").flatMap((item) => (item.kind === "text" ? [item] : []));
    const note = all.find(({ text }) => typeof text !== "string" && text.key === "drawing.reliefs");
    expect(Math.min(...all.map(({ at }) => at[1]))).toBe(note?.at[1]);
  });

  it("are neither ringed nor noted where no sheet is notched", () => {
    expect(facade.faces.find(({ id }) => id === "east")?.pieces.some(({ reliefs }) => reliefs)).toBe(false);
    expect(rings("east")).toEqual([]);
    expect(notes("east", MM)).toEqual([]);
  });
});
