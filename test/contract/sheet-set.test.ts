/**
 * Every sheet of the set can be worked from: no text over text, none too small, every dimension the length of what it measures
 * on the printed page. ISO 129-1 for what a dimension says, ISO 3098-1 for the least height of letters (2.5 mm, from memory).
 */
import { beforeAll, describe, expect, it } from "vitest";
import { type Rect, rectsOverlap } from "../../src/geometry/rect.ts";
import { shapeBounds } from "../../src/scene/bounds.ts";
import { drawList, itemShapes } from "../../src/scene/draw-list.ts";
import type { DimensionItem } from "../../src/scene/model.ts";
import type { Reader } from "../../src/text/say.ts";
import {
  type PrintedSheets,
  printedSheets,
  type StandingScene,
  standingScenes,
} from "../helpers/printed-sheets.ts";

const SETS: readonly (readonly [name: string, reader: Reader | undefined])[] = [
  ["atelier-bouleau", undefined],
  ["atelier-bouleau", { language: "fr", units: "feet-inch", denominator: 16 }],
  ["porch", undefined],
];

/** Of paper, that boxes of texts may share: they are drawn up round the tallest letters. */
const SHARED = 0.1;

function textBoxes({ scene, place }: StandingScene, reader: Reader): { text: string; box: Rect }[] {
  return drawList(scene, reader).flatMap((mark) => {
    if (mark.shape !== "text" || mark.text === "") return [];
    const { x, y } = shapeBounds(mark, scene.scale);
    const [low, high] = [place([x[0], y[0]]), place([x[1], y[1]])];
    const box: Rect = { x: [low[0] + SHARED, high[0] - SHARED], y: [low[1] + SHARED, high[1] - SHARED] };
    return [{ text: mark.text, box }];
  });
}

/** A printed figure as millimetres, read by hand: `842.5`, `−98`, `10'-0"`, `3 1/16"`. */
function asMillimetres(text: string): number {
  const sign = /^[−-]/.test(text) ? -1 : 1;
  const bare = text.replace(/^[−-]/, "").replace(",", ".");
  const inches = /^(?:(\d+)'-)?(?:(\d+)(?= |"|$))? ?(?:(\d+)\/(\d+))?"$/.exec(bare);
  if (!inches) return sign * Number(bare);
  const [, feet = 0, whole = 0, over = 0, under = 1] = inches.map((part) =>
    part ? Number(part) : undefined,
  );
  return sign * 25.4 * (Number(feet) * 12 + Number(whole) + Number(over) / Number(under));
}

interface Figure {
  readonly text: string;
  /** What stands between the strokes on the page, at the drawing's scale (mm). */
  readonly measured: number;
}

/** The figures of a dimension, each with what its strokes on the page lie apart. */
function figures(
  item: DimensionItem,
  { scene, place }: StandingScene,
  { page, reader }: { page: ReadPage; reader: Reader },
): Figure[] {
  const shapes = itemShapes(item, { scale: scene.scale, reader });
  const texts = shapes.flatMap((shape) => (shape.shape === "text" ? [shape] : []));
  const at = (along: number): number => {
    const [x, y] = place(item.along === "x" ? [along, item.at] : [item.at, along]);
    return page.strokeAt([x, y], item.along);
  };
  for (const { text, at: spot, angleDeg } of texts) page.says(text, place(spot), angleDeg);
  if (item.labels) return [];
  const origin = item.origin ?? (item.points[0] as number);
  const measured =
    item.style === "running"
      ? item.points.map((point) => {
          const from = item.points.includes(origin)
            ? at(origin)
            : at(item.points[0] as number) + (origin - (item.points[0] as number)) * scene.scale;
          return (at(point) - from) / scene.scale;
        })
      : item.points
          .slice(1)
          .flatMap((to, i) =>
            item.skip?.includes(i) ? [] : [(at(to) - at(item.points[i] as number)) / scene.scale],
          );
  expect(texts.length).toBe(measured.length);
  return texts.map(({ text }, i) => ({ text, measured: measured[i] as number }));
}

interface ReadPage {
  /** Where the oblique stroke through the point stands along the direction, mm of the page. */
  strokeAt(point: readonly [number, number], along: "x" | "y"): number;
  says(text: string, at: readonly [number, number], angleDeg: number): void;
}

function readPage({ height, points, texts }: PrintedSheets["pages"][number]): ReadPage {
  const grid = new Map<string, (readonly [number, number])[]>();
  for (const [x, down] of points) {
    const key = `${Math.round(x)} ${Math.round(height - down)}`;
    grid.set(key, [...(grid.get(key) ?? []), [x, height - down]]);
  }
  const near = ([x, y]: readonly [number, number]) =>
    [-1, 0, 1]
      .flatMap((dx) =>
        [-1, 0, 1].flatMap((dy) => grid.get(`${Math.round(x) + dx} ${Math.round(y) + dy}`) ?? []),
      )
      .find(([px, py]) => Math.hypot(px - x, py - y) < 0.02);
  const lying = (turned: boolean) =>
    texts.flatMap(({ text, x, y, turned: up }, i) => (up === turned ? [{ text, x, y: height - y, i }] : []));
  const [flat, upright] = [lying(false), lying(true)];
  return {
    strokeAt([x, y], along) {
      const up = along === "x" ? 1 : -1;
      const [a, b] =
        along === "x"
          ? [near([x - 1.2, y - 1.2 * up]), near([x + 1.2, y + 1.2 * up])]
          : [near([x - 1.2 * up, y - 1.2]), near([x + 1.2 * up, y + 1.2])];
      if (!a || !b) throw new Error(`no stroke at ${x.toFixed(2)}, ${y.toFixed(2)}`);
      const axis = along === "x" ? 0 : 1;
      return (a[axis] + b[axis]) / 2;
    },
    says(text, [x, y], angleDeg) {
      const on = angleDeg === 0 ? flat : upright;
      const found = on.some((one) => {
        const [off, along] = angleDeg === 0 ? [one.y - y, one.x - x] : [one.x - x, one.y - y];
        if (Math.abs(off) > 0.05 || Math.abs(along) > 40) return false;
        // Signs that the first font lacks are written in runs of their own.
        let whole = "";
        for (let i = one.i; i < texts.length && whole.length < text.length; i++) whole += texts[i]?.text;
        return whole === text;
      });
      if (!found) throw new Error(`"${text}" is not written at ${x.toFixed(1)}, ${y.toFixed(1)}`);
    },
  };
}

describe.each(SETS)("the sheets of %s for %o", (name, asked) => {
  let set: PrintedSheets = {
    papers: [],
    pages: [],
    reader: { language: "en", units: "mm", denominator: 16 },
  };
  beforeAll(async () => {
    set = await printedSheets(name, asked);
  }, 400_000);

  it("have no text over another", () => {
    const clashes = set.papers.flatMap((paper) => {
      const boxes = standingScenes(paper).flatMap((one) => textBoxes(one, set.reader));
      boxes.sort((a, b) => a.box.x[0] - b.box.x[0]);
      return boxes.flatMap((a, i) => {
        const found: string[] = [];
        for (let k = i + 1; k < boxes.length; k++) {
          const b = boxes[k] as (typeof boxes)[number];
          if (b.box.x[0] >= a.box.x[1]) break;
          if (rectsOverlap(a.box, b.box)) found.push(`${paper.name}: ${a.text} / ${b.text}`);
        }
        return found;
      });
    });
    expect(clashes).toEqual([]);
  });

  it("have every text within the frame of their paper", () => {
    const outside = set.papers.flatMap((paper) => {
      const { drawing } = paper;
      if (!("viewports" in drawing)) return [];
      const { width, height } = drawing.size;
      return standingScenes(paper)
        .flatMap((one) => textBoxes(one, set.reader))
        .filter(({ box: { x, y } }) => x[0] < 10 || y[0] < 4 || x[1] > width - 4 || y[1] > height - 4)
        .map(({ text }) => `${paper.name}: ${text}`);
    });
    expect(outside).toEqual([]);
  });

  it("say places in words, not as paths of the file", () => {
    const texts = set.papers.flatMap((paper) =>
      standingScenes(paper).flatMap(({ scene }) =>
        drawList(scene, set.reader).flatMap((mark) => (mark.shape === "text" ? [mark.text] : [])),
      ),
    );
    expect(texts.length).toBeGreaterThan(1000);
    expect(texts.filter((text) => text.startsWith("/"))).toEqual([]);
  });

  it("have no capitals under 2.5 mm", () => {
    const heights = set.papers.flatMap((paper) =>
      standingScenes(paper).flatMap(({ scene }) =>
        drawList(scene, set.reader).flatMap((mark) => (mark.shape === "text" ? [mark.height] : [])),
      ),
    );
    expect(heights.length).toBeGreaterThan(1000);
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(2.5);
  });

  it("print beside every dimension what its strokes lie apart", () => {
    const { reader } = set;
    // Half a millimetre, or a sixteenth of an inch, is printed: half a step may be rounded off, besides what a PDF rounds.
    const step = reader.units === "mm" ? 0.5 : 25.4 / reader.denominator;
    let counted = 0;
    const wrong = set.papers.flatMap((paper, i) => {
      const page = readPage(set.pages[i] as PrintedSheets["pages"][number]);
      return standingScenes(paper).flatMap((standing) =>
        standing.scene.items.flatMap((item) => {
          if (item.kind !== "dimension" || item.points.length < 2) return [];
          return figures(item, standing, { page, reader }).flatMap(({ text, measured }) => {
            counted += 1;
            const off = Math.abs(asMillimetres(text) - measured);
            const allowed = step / 2 + 0.001 / standing.scene.scale;
            return off <= allowed ? [] : [`${paper.name}: ${text} is ${measured.toFixed(2)}`];
          });
        }),
      );
    });
    expect(counted).toBeGreaterThan(100);
    expect(wrong).toEqual([]);
  });
});
