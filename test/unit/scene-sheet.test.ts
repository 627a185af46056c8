import { describe, expect, it } from "vitest";
import { arrange, drawingArea, fittingPaper } from "../../src/scene/sheet.ts";
import { fieldEnds, fieldOf, frameRect } from "../../src/scene/sheet-frame.ts";
import { PAPER_SIZES } from "../../src/units/paper-sizes.ts";
import { sampleScene } from "../helpers/sample-scene.ts";

describe("the frame", () => {
  // ISO 5457:1999, table of fields by sheet size; from memory.
  it.each([
    ["A0", 24, 16],
    ["A1", 16, 12],
    ["A2", 12, 8],
    ["A3", 8, 6],
    ["A4", 4, 6],
  ] as const)("%s has %d by %d fields", (name, columns, rows) => {
    expect(fieldEnds(PAPER_SIZES[name].width)).toHaveLength(columns + 1);
    expect(fieldEnds(PAPER_SIZES[name].height)).toHaveLength(rows + 1);
  });

  it("leaves 20 mm at the left and 10 elsewhere", () => {
    expect(frameRect(PAPER_SIZES.A3)).toEqual({ x: [20, 410], y: [10, 287] });
  });

  it("names fields from the upper left, without I and O", () => {
    expect(fieldOf(PAPER_SIZES.A3, [30, 280])).toBe("1 A");
    expect(fieldOf(PAPER_SIZES.A3, [400, 20])).toBe("8 F");
    expect(fieldOf(PAPER_SIZES.A3, [270, 170])).toBe("6 C");
    expect(fieldOf(PAPER_SIZES.A1, [5, 175])).toBe("1 J");
  });
});

describe("arranging", () => {
  const scene = sampleScene();

  it("stands scenes in rows without overlap, inside the area", () => {
    const area = drawingArea(PAPER_SIZES.A3);
    const scenes = [scene, scene, scene];
    const views = arrange(scenes, area) ?? [];
    expect(views).toHaveLength(3);
    const width = (scene.bounds.x[1] - scene.bounds.x[0]) * scene.scale;
    const height = (scene.bounds.y[1] - scene.bounds.y[0]) * scene.scale;
    views.forEach(({ at }, i) => {
      expect(at[0]).toBeGreaterThanOrEqual(area.x[0]);
      expect(at[0] + width).toBeLessThanOrEqual(area.x[1]);
      expect(at[1]).toBeGreaterThanOrEqual(area.y[0]);
      expect(at[1] + height).toBeLessThanOrEqual(area.y[1]);
      for (const other of views.slice(i + 1)) {
        const apart = Math.abs(other.at[0] - at[0]) >= width || Math.abs(other.at[1] - at[1]) >= height;
        expect(apart).toBe(true);
      }
    });
  });

  it("takes the first paper that holds them, and says when none does", () => {
    const many = Array.from({ length: 4 }, () => scene);
    expect(fittingPaper([scene], ["A3", "A2"])?.name).toBe("A3");
    expect(fittingPaper(many, ["A3", "A2"])?.name).toBe("A2");
    expect(
      fittingPaper(
        Array.from({ length: 200 }, () => scene),
        ["A3", "A2"],
      ),
    ).toBeUndefined();
  });
});
