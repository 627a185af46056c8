/** Marks of sections on elevations: strokes where they cut, arrows apart (ISO 128-3 for stroke and arrow). */
import { describe, expect, it } from "vitest";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { rectsOverlap } from "../../src/geometry/rect.ts";
import type { Item, Scene } from "../../src/scene/model.ts";
import { type SectionMark, withSectionMarks } from "../../src/scene/views/section-marks.ts";
import { message } from "../../src/text/message.ts";

const SCALE = 1 / 50;
const bare: Scene = {
  id: "face-front",
  title: message("drawing.title.face-elevation", { face: "Front" }),
  scale: SCALE,
  bounds: { x: [0, 7000], y: [0, 3000] },
  items: [],
};

function marked(cut: SectionMark["cut"], heights: readonly number[]): Item[] {
  const marks = heights.map((at, i): SectionMark => ({ mark: `F-${i}`, cut, at, scene: `cut-${i}` }));
  return [...withSectionMarks(bare, marks).items];
}

const AT: Readonly<Record<string, readonly number[]>> = {
  "far apart": [500, 1500, 2500],
  "near one another": [1000, 1085, 1170],
  "at one height": [1200, 1200],
};

describe.each(["level", "upright"] as const)("%s cuts", (cut) => {
  it.each(Object.entries(AT))("%s have their strokes where they cut, at both ends", (_, heights) => {
    const across = cut === "level" ? 1 : 0;
    const strokes = marked(cut, heights).flatMap((item) =>
      item.kind === "line" && item.line === "cut" ? [[item.from[across], item.to[across]]] : [],
    );
    const wanted = heights.flatMap((at) => [
      [at, at],
      [at, at],
    ]);
    expect(strokes).toEqual(wanted);
  });

  it.each(Object.entries(AT))("%s have no arrow in another, and no circle", (_, heights) => {
    const items = marked(cut, heights);
    const boxes = items.flatMap((item) => {
      if (item.kind === "polygon") return [polygonBounds(item.outline)];
      if (item.kind !== "circle") return [];
      const { centre, radius } = item;
      return [
        {
          x: [centre[0] - radius, centre[0] + radius] as const,
          y: [centre[1] - radius, centre[1] + radius] as const,
        },
      ];
    });
    expect(boxes.length).toBe(3 * heights.length);
    const clashes = boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => rectsOverlap(a, b)));
    expect(clashes).toEqual([]);
  });

  it("stand straight before their strokes where there is room", () => {
    const items = marked(cut, [500, 1500, 2500]);
    const across = cut === "level" ? 1 : 0;
    const leaders = items.flatMap((item) => (item.kind === "line" && item.line === "leader" ? [item] : []));
    expect(leaders.length).toBe(3);
    for (const { from, to } of leaders) expect(from[across]).toBeCloseTo(to[across], 9);
  });
});
