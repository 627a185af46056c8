/** Drawings that can be read: no text over text, none too small, for every reader. */
import { describe, expect, it } from "vitest";
import { type Rect, rectsOverlap } from "../../src/geometry/rect.ts";
import { READERS, shapeBounds } from "../../src/scene/bounds.ts";
import { drawList } from "../../src/scene/draw-list.ts";
import type { Scene } from "../../src/scene/model.ts";
import { fixtureScenes, fixtureSheet } from "../helpers/fixture-drawings.ts";

const scenes = fixtureScenes();
const front = scenes["face-front"];
if (!front) throw new Error("no face-front");
const all: Readonly<Record<string, Scene>> = { ...scenes, "sheet-frame": fixtureSheet(front).frame };

function textBoxes(scene: Scene, reader: (typeof READERS)[number]): { text: string; box: Rect }[] {
  return drawList(scene, reader).flatMap((mark) => {
    if (mark.shape !== "text" || mark.text === "") return [];
    const { x, y } = shapeBounds(mark, scene.scale);
    // A tenth of a millimetre of paper may be shared.
    const slack = 0.1 / scene.scale;
    const box: Rect = { x: [x[0] + slack, x[1] - slack], y: [y[0] + slack, y[1] - slack] };
    return [{ text: mark.text, box }];
  });
}

describe.each(Object.entries(all))("%s", (_, scene) => {
  it.each(READERS)("has no text over text ($language, $units, 1/$denominator)", (reader) => {
    const boxes = textBoxes(scene, reader);
    expect(boxes.length).toBeGreaterThan(0);
    const clashes = boxes.flatMap((a, i) =>
      boxes.slice(i + 1).flatMap((b) => (rectsOverlap(a.box, b.box) ? [`${a.text} / ${b.text}`] : [])),
    );
    expect(clashes).toEqual([]);
  });

  it.each(READERS)("has no plate over another text ($language, $units, 1/$denominator)", (reader) => {
    const marks = drawList(scene, reader);
    const texts = textBoxes(scene, reader);
    const covered = marks.flatMap((mark, i) => {
      if (mark.shape !== "path" || mark.from !== "text") return [];
      const own = marks[i + 1];
      const plate = shapeBounds(mark, scene.scale);
      return texts
        .filter(({ text, box }) => rectsOverlap(plate, box) && !(own?.shape === "text" && own.text === text))
        .map(({ text }) => text);
    });
    expect(covered).toEqual([]);
  });

  it("has no capitals under 2.5 mm", () => {
    const heights = READERS.flatMap((reader) =>
      drawList(scene, reader).flatMap((mark) => (mark.shape === "text" ? [mark.height] : [])),
    );
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(2.5);
  });
});
