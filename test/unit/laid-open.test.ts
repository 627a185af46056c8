/** What stays open beside pieces that were laid again: as wide as it is, and no failure where nothing gapes. */
import { describe, expect, it } from "vitest";
import { type Design, design } from "../../src/design.ts";
import type { Finding } from "../../src/findings/finding.ts";
import { newlyFailing } from "../../src/findings/newly.ts";
import type { Polygon } from "../../src/geometry/polygon.ts";
import { regionArea } from "../../src/geometry/region.ts";
import { setMeasured, takeLaid } from "../../src/project/editing/as-built.ts";
import { breadth, straightStrips } from "../../src/setout/laid/strips.ts";
import { layAgain } from "../../src/site/as-built/lay-again.ts";
import { measuredOf } from "../../src/site/as-built/measured.ts";
import { takenFaces } from "../../src/site/as-built/taken.ts";
import { edited, exampleSource } from "../helpers/editing.ts";

const source = exampleSource("atelier-bouleau");
const drawn = design(source.project);

/** The design with a face laid again for one opening as measured, and what fails in it that did not as drawn. */
function taken(
  face: string,
  opening: string,
  measures: { readonly left: number; readonly width: number },
): { readonly after: Design; readonly fresh: readonly Finding[] } {
  const wide = edited(source, setMeasured(source, { face, opening }, measures));
  const layout = drawn.facade.faces.find(({ id }) => id === face);
  if (!layout) throw new Error("no such face");
  const measured = measuredOf(wide.project);
  const laid = layAgain({ project: wide.project, demands: drawn.demands, face: layout, measured });
  if (laid.kind !== "found") throw new Error(`cannot be laid: ${laid.marks.join(", ")}`);
  const after = design(edited(wide, takeLaid(wide, takenFaces(wide.project, measured, [laid]))).project);
  return { after, fresh: newlyFailing(drawn.findings, after.findings) };
}

describe("joints of a face that is laid again", () => {
  it.each([
    // Under its rake the west is open as it was; that is no joint of 300 mm.
    ["west", "W3", { left: 2088, width: 612 }],
    ["west", "W3", { left: 2112, width: 576 }],
    // Upright boards on both sides of a door: two strips beside the frame are no joint of its width.
    ["recess-back", "D2", { left: 257, width: 986 }],
    ["recess-back", "D2", { left: 233, width: 1022 }],
  ] as const)("of %s at %s fail nowhere that they did not", (face, opening, measures) => {
    const { after, fresh } = taken(face, opening, measures);
    expect(fresh).toEqual([]);
    const joints = after.facade.faces.find(({ id }) => id === face)?.joints ?? [];
    const before = drawn.facade.faces.find(({ id }) => id === face)?.joints ?? [];
    const widest = (all: typeof joints) => Math.max(...all.map(({ width }) => width));
    expect(widest(joints)).toBeLessThanOrEqual(widest(before) + 3);
  });

  it("fail where sheets hang too far past their screws, and that is said", () => {
    const { fresh } = taken("front", "D1", { left: 3581.5, width: 2447 });
    expect(fresh.map(({ code }) => code)).toEqual(["S010", "P047", "P050"]);
  });
});

describe("strips round an opening", () => {
  const rect = (x: readonly [number, number], y: readonly [number, number]): Polygon => [
    [x[0], y[0]],
    [x[1], y[0]],
    [x[1], y[1]],
    [x[0], y[1]],
  ];

  it("are cut where they bend, so that each has its own width", () => {
    const round = { outline: rect([0, 100], [0, 80]), holes: [rect([3, 95], [4, 70]).toReversed()] };
    const strips = straightStrips(round);
    // By hand: the sides are 3 and 5 wide, under and over it 4 and 10.
    expect(strips.map(({ outline }) => breadth(outline)).sort((a, b) => a - b)).toEqual([3, 4, 5, 10]);
    expect(strips.reduce((sum, one) => sum + regionArea(one), 0)).toBe(regionArea(round));
    expect(regionArea(round)).toBe(100 * 80 - 92 * 66);
  });

  it("have the breadth that stands square on them where they slant", () => {
    // A strip along a side of 3 : 4 : 5, 10 wide across.
    const slanted: Polygon = [
      [0, 0],
      [400, 300],
      [394, 308],
      [-6, 8],
    ];
    expect(breadth(slanted)).toBeCloseTo(10, 9);
  });
});
