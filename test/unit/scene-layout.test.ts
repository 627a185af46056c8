import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/point.ts";
import { polygonBounds, polygonContains } from "../../src/geometry/polygon.ts";
import { makeScene, READERS } from "../../src/scene/bounds.ts";
import { drawList } from "../../src/scene/draw-list.ts";
import { hatchLines } from "../../src/scene/hatch.ts";
import type { DimensionItem, Item } from "../../src/scene/model.ts";
import { dashes, LINE_STYLES, LINE_WIDTHS, layerName } from "../../src/scene/roles.ts";
import { shiftItems } from "../../src/scene/shift.ts";
import { spread } from "../../src/scene/spread.ts";
import { textWidth, wrapText } from "../../src/scene/text-widths.ts";
import { fittingScale } from "../../src/scene/views/scales.ts";
import { boardSection } from "../../src/scene/views/section-cut.ts";
import { message } from "../../src/text/message.ts";
import { ENGLISH_MM } from "../../src/text/say.ts";
import { SAMPLE_ITEMS, sampleScene } from "../helpers/sample-scene.ts";

const layer = layerName("FRAME");

describe("spread", () => {
  it("leaves labels with room where they are", () => {
    expect(spread([0, 10, 20], { spacing: 4 })).toEqual([0, 10, 20]);
  });

  it("shares the move between labels that would touch", () => {
    expect(spread([10, 11, 40], { spacing: 5 })).toEqual([8, 13, 40]);
  });

  it("keeps the order and the spacing of any labels", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 1, maxLength: 25 }),
        (wanted) => {
          const places = spread(wanted, { spacing: 7 });
          const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
          for (let k = 1; k < order.length; k++) {
            const step = (places[order[k] ?? 0] ?? 0) - (places[order[k - 1] ?? 0] ?? 0);
            expect(step).toBeGreaterThanOrEqual(7 - 1e-6);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe("hatching", () => {
  const outline: Point[] = [
    [0, 0],
    [400, 0],
    [400, 100],
    [150, 100],
    [150, 300],
    [0, 300],
  ];

  it("stays inside an area that turns a corner", () => {
    const lines = hatchLines({ kind: "hatch", layer, outline, pattern: "diagonal", spacing: 2 }, 1 / 10);
    expect(lines.length).toBeGreaterThan(20);
    for (const [a, b] of lines) {
      if (!a || !b) continue;
      for (const t of [0.01, 0.5, 0.99]) {
        expect(polygonContains(outline, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])).toBe(true);
      }
    }
  });

  it("leaves holes clear", () => {
    const hole: Point[] = [
      [20, 20],
      [20, 80],
      [120, 80],
      [120, 20],
    ];
    const item = { kind: "hatch", layer, outline, holes: [hole], pattern: "diagonal", spacing: 2 } as const;
    for (const [a, b] of hatchLines(item, 1 / 10)) {
      if (a && b) expect(polygonContains(hole, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])).toBe(false);
    }
  });
});

describe("dimensions", () => {
  const chain: DimensionItem = {
    kind: "dimension",
    layer,
    style: "chain",
    along: "x",
    at: 0,
    from: 100,
    points: [0, 1191.5, 1199.5, 3590.5],
  };
  const texts = (item: DimensionItem, reader = ENGLISH_MM) =>
    drawList({ items: [item], scale: 1 / 50 }, reader).flatMap((mark) =>
      mark.shape === "text" ? [mark] : [],
    );

  it("print what they measure, above the line", () => {
    expect(texts(chain).map(({ text }) => text)).toEqual(["1191.5", "8", "2391"]);
    expect(texts(chain)[0]?.at[1]).toBeGreaterThan(0);
  });

  it("put a figure that does not fit beyond the line, away from the thing", () => {
    expect(texts(chain)[1]?.at[1]).toBeLessThan(0);
    expect(texts({ ...chain, from: -100 })[1]?.at[1]).toBeGreaterThan(texts(chain)[0]?.at[1] ?? 0);
  });

  it("read upwards along y", () => {
    const [first] = texts({ ...chain, along: "y" });
    expect(first?.angleDeg).toBe(90);
    expect(first?.at[0]).toBeLessThan(0);
  });

  it("run from their origin", () => {
    const running: DimensionItem = { ...chain, style: "running", points: [-98, 0, 910], origin: 0 };
    expect(texts(running).map(({ text }) => text)).toEqual(["−98", "0", "910"]);
  });

  it("leave out stretches that are not measured, line and figure", () => {
    const parted: DimensionItem = { ...chain, points: [0, 1000, 3000, 4000], skip: [1] };
    expect(texts(parted).map(({ text }) => text)).toEqual(["1000", "1000"]);
    const [lines] = drawList({ items: [parted], scale: 1 / 50 }, ENGLISH_MM);
    const level = lines?.shape === "path" ? lines.parts.filter(([a, b]) => a?.[1] === b?.[1]) : [];
    expect(level.map((part) => part.map(([x]) => x))).toEqual([
      [-75, 1075],
      [2925, 4075],
    ]);
  });

  it("print to the half millimetre, and to their own fraction in feet", () => {
    expect(texts({ ...chain, points: [0, 842.343, 1000] })[0]?.text).toBe("842.5");
  });

  it("follow the reader's units", () => {
    const feet = READERS.find(({ units, language }) => units === "feet-inch" && language === "en");
    expect(texts({ ...chain, points: [0, 3048] }, feet).map(({ text }) => text)).toEqual([`10'-0"`]);
  });
});

describe("texts", () => {
  const text = (fields: Partial<Extract<Item, { kind: "text" }>>): Item => {
    return { kind: "text", layer, at: [0, 0], text: "Fu1", height: 2.5, ...fields };
  };
  const drawn = (item: Item) => drawList({ items: [item], scale: 1 / 10 }, ENGLISH_MM);

  it("are left out where they do not fit", () => {
    const width = textWidth({ text: "Fu1", height: 2.5, weight: "regular" }) * 10;
    expect(drawn(text({ fitWidth: width + 1 }))).toHaveLength(1);
    expect(drawn(text({ fitWidth: width - 1 }))).toHaveLength(0);
  });

  it("break into lines that fit, and lose no word", () => {
    const long = "Measure the wall before cutting anything at all";
    const lines = wrapText({ text: long, width: 30, height: 2.5, weight: "regular" });
    expect(lines.length).toBeGreaterThan(2);
    expect(lines.join(" ")).toBe(long);
    for (const line of lines) {
      expect(textWidth({ text: line, height: 2.5, weight: "regular" })).toBeLessThanOrEqual(30);
    }
  });
});

describe("scenes", () => {
  it("shift whole: every mark moves alike", () => {
    const moved = sampleScene(shiftItems(SAMPLE_ITEMS, { dx: 5000, dy: -700 }));
    const { x, y } = sampleScene().bounds;
    // Hatches start from the frame's origin, so their lines may differ; their area may not.
    expect(moved.bounds.x[0]).toBeCloseTo(x[0] + 5000, 6);
    expect(moved.bounds.x[1]).toBeCloseTo(x[1] + 5000, 6);
    expect(moved.bounds.y[0]).toBeCloseTo(y[0] - 700, 6);
    expect(moved.bounds.y[1]).toBeCloseTo(y[1] - 700, 6);
  });

  it("have bounds even when nothing is drawn", () => {
    const empty = makeScene({ id: "empty", title: message("drawing.rod"), scale: 1, items: [] });
    expect(empty.bounds).toEqual({ x: [0, 0], y: [0, 0] });
  });

  it("take the largest usual scale that fits", () => {
    const box = { x: [0, 7200], y: [0, 3360] } as const;
    expect(fittingScale(box, { room: [290, 170] })).toBe(1 / 25);
    expect(fittingScale(box, { room: [280, 170] })).toBe(1 / 50);
  });
});

describe("lines and layers", () => {
  it("are narrow, wide and extra-wide as 1 : 2 : 4 (ISO 128-2), to the rounding of printed pens", () => {
    expect(LINE_WIDTHS.wide / LINE_WIDTHS.narrow).toBeCloseTo(2, 0);
    expect(LINE_WIDTHS.extraWide / LINE_WIDTHS.narrow).toBeCloseTo(4, 0);
    expect(LINE_WIDTHS.extraWide / LINE_WIDTHS.wide).toBe(2);
  });

  it("tell what is cut from what is seen and what is hidden", () => {
    expect(LINE_STYLES.cut.width).toBe("extraWide");
    expect(LINE_STYLES.visible.width).toBe("wide");
    expect(dashes(LINE_STYLES.hidden)).toHaveLength(2);
    expect(dashes(LINE_STYLES.control)).toHaveLength(4);
    expect(dashes(LINE_STYLES.visible)).toEqual([]);
  });

  it("name layers in fields of two, six and two characters", () => {
    expect(layerName("BOARD")).toBe("A-BOARD-E-");
    expect(layerName("ROD", "T")).toBe("A-ROD---T-");
  });
});

describe("a board in section", () => {
  // Own geometry: 20 mm at 15° rises 20 · tan 15° = 5.359 mm towards the back.
  const section = boardSection({ z: [82, 102], bevelDeg: 15 }, [100, 226]);

  it("falls outward at its top and runs parallel underneath", () => {
    const [lowBack, lowFront, highFront, highBack] = section;
    expect((highBack?.[1] ?? 0) - (highFront?.[1] ?? 0)).toBeCloseTo(5.359, 3);
    expect((lowBack?.[1] ?? 0) - (lowFront?.[1] ?? 0)).toBeCloseTo(5.359, 3);
    expect([lowFront, highFront]).toEqual([
      [102, 100],
      [102, 226],
    ]);
  });

  it("is a rectangle without a bevel", () => {
    expect(polygonBounds(boardSection({ z: [82, 102] }, [100, 226]))).toEqual({
      x: [82, 102],
      y: [100, 226],
    });
  });
});
