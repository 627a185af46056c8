/** The words of the wind's strips over a face: clear of one another and of their leaders, at the least height of letters (ISO 3098-1, 2.5 mm, from memory). */
import { describe, expect, it } from "vitest";
import { rectsOverlap } from "../../src/geometry/rect.ts";
import { READERS, shapeBounds } from "../../src/scene/bounds.ts";
import { drawList } from "../../src/scene/draw-list.ts";
import { windStripItems } from "../../src/scene/views/wind-strips.ts";

type Bands = Parameters<typeof windStripItems>[0];

/** Made for the test: strips at the ends of a face, and those between. */
function bandsOf(ends: readonly number[]): Bands {
  return ends.slice(1).map((to, i) => ({
    x: [ends[i] as number, to],
    strip: { id: i === 0 || i === ends.length - 2 ? "end" : "beside" },
    pullPa: 775,
    pushPa: 689,
  })) as unknown as Bands;
}

const CASES: readonly (readonly [what: string, ends: readonly number[]])[] = [
  ["a wide face", [0, 2000, 9000, 11000]],
  ["ends too narrow for their words", [0, 400, 7000, 7400]],
  ["a face narrower than any words", [0, 200, 600, 800]],
  ["one strip", [0, 300]],
  ["many narrow strips", [0, 150, 300, 2500, 2650, 2800]],
];

/** Half of a thin line at 1 : 50, mm. */
const LINE = 5;

describe.each(CASES)("the wind strips of %s", (_, ends) => {
  const scale = 1 / 50;
  const items = windStripItems(bandsOf(ends), { y: [0, 3000], scale });

  it.each(READERS)("have words that touch neither each other nor a leader, for %o", (reader) => {
    const marks = drawList({ items, scale }, reader);
    const texts = marks.filter((mark) => mark.shape === "text");
    expect(texts).toHaveLength(ends.length - 1);
    expect(Math.min(...texts.map(({ height }) => height))).toBeGreaterThanOrEqual(2.5);
    const boxes = texts.map((mark) => shapeBounds(mark, scale));
    const leaders = items.flatMap((item) =>
      item.kind === "line" && item.line === "dimension"
        ? [{ x: [item.from[0] - LINE, item.to[0] + LINE], y: [item.from[1], item.to[1]] } as const]
        : [],
    );
    const clashes = boxes.flatMap((box, i) =>
      [...boxes.slice(i + 1), ...leaders].filter((other) => rectsOverlap(box, other)),
    );
    expect(clashes).toEqual([]);
  });
});
