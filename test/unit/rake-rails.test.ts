/** Rails along rakes, on the demo's west face made upright with a gable over it. Common practice throughout. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { polygonBounds, sliceVertical } from "../../src/geometry/polygon.ts";
import { readDocument } from "../../src/project/read.ts";
import { UPRIGHT } from "../helpers/buildings.ts";
import { facadeProblems } from "../helpers/facade-checks.ts";

/** One wall of upright boards with a gable: 6000 wide, eaves at 2400, the ridge a third along. */
function gable(ridge: number, at = 2000) {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  document.claddings.push({ ...document.claddings[0], id: "upright", direction: "vertical" });
  document.buildUps.push({ ...UPRIGHT, id: "upright-on-rails" });
  const west = document.faces.find(({ id }: { id: string }) => id === "west");
  document.faces = [
    {
      ...west,
      plan: { from: [0, 6000], to: [0, 0] },
      outline: [
        [0, -50],
        [6000, -50],
        [6000, 2400],
        [at, ridge],
        [0, 2400],
      ],
      ground: [
        [0, -350],
        [6000, -350],
      ],
      openings: [],
      penetrations: [],
      zones: [
        { id: "boards", cladding: "upright", buildUp: "upright-on-rails", x: ["left end", "right end"] },
      ],
    },
  ];
  document.corners = [];
  document.rods = [];
  document.survey = [];
  document.crews = [];
  document.waivers = [];
  const read = readDocument(document, "gable");
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  const { facade } = design(read.project);
  const [face] = facade.faces;
  if (!face) throw new Error("no face");
  const cladding = read.project.claddings.find(({ id }) => id === "upright");
  if (cladding?.kind !== "boards") throw new Error("no boards");
  const boards = face.pieces.filter(({ kind }) => kind === "board");
  const rails = face.pieces.filter(({ kind }) => kind === "rail");
  return { project: read.project, facade, face, cladding, boards, rails };
}

const isSloping = ({ outline }: { outline: readonly (readonly [number, number])[] }): boolean =>
  outline.some(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length] as readonly [number, number];
    return ax !== bx && ay !== by;
  });

describe.each([2900, 3800, 5000])("a gable with its ridge at %i", (ridge) => {
  const { project, facade, cladding, boards, rails } = gable(ridge);
  const rakes = rails.filter(isSloping);
  const top = (x: number): number =>
    x < 2000 ? 2400 + ((ridge - 2400) * x) / 2000 : ridge - ((ridge - 2400) * (x - 2000)) / 4000;

  it("holds the upper end of every board within the greatest overhang", () => {
    for (const { outline, fixings } of boards) {
      const { x, y } = polygonBounds(outline);
      if (y[1] < Math.min(top(x[0]), top(x[1])) - 1) continue;
      const highest = Math.max(...fixings.map((one) => one.y));
      expect(Math.min(top(x[0]), top(x[1])) - highest).toBeLessThanOrEqual(cladding.maxOverhang.value);
    }
    const overhang = facade.findings.find(({ code }) => code === "S010");
    expect(overhang?.outcome).toBe("pass");
  });

  it("lays a rail along each rake, its full width under the edge, clear of the mesh", () => {
    expect(rakes.length).toBeGreaterThanOrEqual(2);
    for (const rail of rakes) {
      const { x } = polygonBounds(rail.outline);
      const middle = (x[0] + x[1]) / 2;
      const [low, high] = sliceVertical(rail.outline, middle)[0] ?? [0, 0];
      expect(top(middle) - high).toBeCloseTo(2, 2);
      const slope = (top(middle + 1) - top(middle - 1)) / 2;
      expect((high - low) / Math.hypot(1, slope)).toBeCloseTo(64, 2);
    }
  });

  it("screws each to two battens at least, and cuts it from a length in stock", () => {
    const longest = Math.max(...(project.stock.battens.find(({ id }) => id === "b25x64")?.lengths ?? []));
    for (const rail of rakes) {
      expect(new Set(rail.supports).size).toBeGreaterThanOrEqual(2);
      const points = rail.outline.flatMap((a) => rail.outline.map((b) => [a, b] as const));
      const middle = polygonBounds(rail.outline).x.reduce((sum, one) => sum + one / 2, 0);
      const angle = Math.atan(top(middle + 1) / 2 - top(middle - 1) / 2);
      const along = points.map(([p, q]) => Math.cos(angle) * (q[0] - p[0]) + Math.sin(angle) * (q[1] - p[1]));
      expect(rail.cut.length).toBeCloseTo(Math.max(...along), 1);
      expect(rail.cut.length).toBeLessThanOrEqual(longest);
    }
  });

  it("leaves nothing that overlaps, is missing or hangs on air", () => {
    expect(facadeProblems(project, facade)).toEqual([]);
    expect(facade.findings.filter(({ code, outcome }) => code === "S008" && outcome === "fail")).toEqual([]);
  });
});
