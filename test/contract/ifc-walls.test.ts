/** Walls read from IFC models, against a general reader that is not ours: the same sides, sizes and places, whatever the body is made of. */
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { IFCWALL, IfcAPI } from "web-ifc";
import { design } from "../../src/design.ts";
import { signedArea } from "../../src/geometry/polygon.ts";
import { rectArea } from "../../src/geometry/rect.ts";
import { writeIfc } from "../../src/output/ifc/ifc.ts";
import { readWalls } from "../../src/project/intake/ifc/read-walls.ts";
import { startWithWalls, wallsInto } from "../../src/project/intake/ifc/take-walls.ts";
import type { WallSide } from "../../src/project/intake/ifc/wall-side.ts";
import { readDocument, readProject } from "../../src/project/read.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { EXAMPLES } from "../helpers/cli.ts";
import { IfcText, type ModelUnit } from "../helpers/ifc.ts";

const api = new IfcAPI();
beforeAll(() => api.Init());
let model = -1;
afterAll(() => api.CloseModel(model));

/** Area (mm²) of a wall's triangles in a side's plane, openings taken out by the reader, and their bounds along and up (mm of the file). */
function measured(id: number, { along, outward, offset }: WallSide, origin: readonly [number, number]) {
  let area = 0;
  const box = [Infinity, Infinity, -Infinity, -Infinity] as [number, number, number, number];
  const mesh = api.GetFlatMesh(model, id);
  for (let g = 0; g < mesh.geometries.size(); g++) {
    const { geometryExpressID, flatTransformation: m } = mesh.geometries.get(g);
    const geometry = api.GetGeometry(model, geometryExpressID);
    const vertices = api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize());
    const indices = api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
    // Metres with y up; six floats a vertex. Here: along, up, and how far out of the plane, in mm.
    const at = (i: number): [number, number, number] => {
      const [x, y, z] = [vertices[i * 6]!, vertices[i * 6 + 1]!, vertices[i * 6 + 2]!];
      const row = (k: number) => 1000 * (m[k]! * x + m[k + 4]! * y + m[k + 8]! * z + m[k + 12]!);
      const [px, py, pz] = [row(0) - origin[0], -row(2) - origin[1], row(1)];
      return [px * along[0] + py * along[1], pz, px * outward[0] + py * outward[1] - offset];
    };
    for (let i = 0; i < indices.length; i += 3) {
      const corners = [at(indices[i]!), at(indices[i + 1]!), at(indices[i + 2]!)] as const;
      if (corners.some(([, , out]) => Math.abs(out) > 0.1)) continue;
      area += Math.abs(signedArea(corners.map(([x, y]) => [x, y] as const)));
      for (const [x, y] of corners) {
        box[0] = Math.min(box[0], x);
        box[1] = Math.min(box[1], y);
        box[2] = Math.max(box[2], x);
        box[3] = Math.max(box[3], y);
      }
    }
  }
  return { area, box };
}

/** Both readers of one file: every wall's outer and inner side alike. */
function compare(text: string, origin: readonly [number, number] = [0, 0]): void {
  const read = readWalls(text, "model.ifc");
  if (!read.ok) throw new Error(read.findings.map(({ says }) => say(says, ENGLISH_MM)).join());
  model = api.OpenModel(new TextEncoder().encode(text));
  expect(read.model.walls).toHaveLength(api.GetLineIDsWithType(model, IFCWALL).size());
  for (const wall of read.model.walls) {
    expect(wall.faults.map(({ says }) => say(says, ENGLISH_MM))).toEqual([]);
    for (const side of wall.sides!) {
      expect(side.faults).toEqual([]);
      const { area, box } = measured(Number(wall.entity.slice(1)), side, origin);
      const own = signedArea(side.outline) - side.openings.reduce((sum, one) => sum + rectArea(one), 0);
      // Its triangles are of single precision: seven figures of metres.
      expect(Math.abs(area / own - 1)).toBeLessThan(1e-5);
      const xs = side.outline.map(([x]) => x + side.left);
      const ys = side.outline.map(([, y]) => y);
      const bounds = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
      for (const [i, one] of bounds.entries()) expect(box[i]).toBeCloseTo(one, 1);
    }
  }
}

/** A wall 5 m long, 300 thick and 4 m high along X, as a solid to be clipped. */
const block = (ifc: IfcText) => ifc.swept(ifc.rectangle(5000, 300, [2500, 150]), 4000);
const plane = (ifc: IfcText, at: readonly number[], normal: readonly number[]) =>
  ifc.add("IFCPLANE", ifc.axes(at, normal));
const cut = (ifc: IfcText, from: string, by: string) =>
  ifc.add("IFCBOOLEANCLIPPINGRESULT", ".DIFFERENCE.", from, by);

const BODIES: Readonly<Record<string, (ifc: IfcText) => [type: string, item: string]>> = {
  "a section in plan, raised": (ifc) => ["SweptSolid", block(ifc)],
  "an elevation, swept through the thickness at a slant": (ifc) => {
    const gable = ifc.closed([
      [0, 0],
      [5000, 0],
      [5000, 2500],
      [2500, 4000],
      [0, 2500],
    ]);
    return ["SweptSolid", ifc.swept(gable, 300, ifc.axes([0, 300, 0], [0, -1, 0], [1, 0, 0]))];
  },
  "clipped by two planes to a gable": (ifc) => {
    const left = ifc.add("IFCHALFSPACESOLID", plane(ifc, [0, 0, 2500], [-0.5, 0, 1]), ".F.");
    const right = ifc.add("IFCHALFSPACESOLID", plane(ifc, [5000, 0, 2500], [-0.5, 0, -1]), ".T.");
    return ["Clipping", cut(ifc, cut(ifc, block(ifc), left), right)];
  },
  "clipped by a plane within a boundary": (ifc) => {
    const ring = ifc.polyline([
      [3000, -1000],
      [6000, -1000],
      [6000, 1000],
      [3000, 1000],
    ]);
    const half = ifc.add(
      "IFCPOLYGONALBOUNDEDHALFSPACE",
      plane(ifc, [0, 0, 2600], [0, 0, 1]),
      ".F.",
      ifc.axes([0, 0, 0]),
      ring,
    );
    return ["Clipping", cut(ifc, block(ifc), half)];
  },
  "with a solid taken off its top": (ifc) => {
    const step = ifc.swept(ifc.rectangle(1000, 900, [500, 150]), 1500, ifc.axes([0, 0, 3000]));
    return ["CSG", ifc.add("IFCBOOLEANRESULT", ".DIFFERENCE.", block(ifc), step)];
  },
  "mapped from a shape of its own, moved": (ifc) => {
    const map = ifc.add("IFCREPRESENTATIONMAP", ifc.axes([0, 0, 0]), ifc.shape("SweptSolid", block(ifc)));
    const to = ifc.add("IFCCARTESIANTRANSFORMATIONOPERATOR3D", "$", "$", ifc.point([700, 0, 50]), "$", "$");
    return ["MappedRepresentation", ifc.add("IFCMAPPEDITEM", map, to)];
  },
  "told by its faces, a doorway in them": (ifc) => {
    const outline = [
      [0, 0],
      [2000, 0],
      [2000, 2100],
      [2900, 2100],
      [2900, 0],
      [5000, 0],
      [5000, 2600],
      [0, 2600],
    ] as const;
    const points = [0, 300].flatMap((y) =>
      outline.map(([x, z]) => `(${[x, y, z].map((one) => ifc.mm(one)).join(",")})`),
    );
    const list = ifc.add("IFCCARTESIANPOINTLIST3D", `(${points.join(",")})`);
    const n = outline.length;
    const face = (...places: number[]) => ifc.add("IFCINDEXEDPOLYGONALFACE", `(${places.join(",")})`);
    const faces = [
      face(...outline.map((_, i) => i + 1)),
      face(...outline.map((_, i) => 2 * n - i)),
      ...outline.map((_, i) => face(((i + 1) % n) + 1, i + 1, n + i + 1, n + ((i + 1) % n) + 1)),
    ];
    return ["Tessellation", ifc.add("IFCPOLYGONALFACESET", list, ".T.", `(${faces.join(",")})`, "$")];
  },
};

describe("a wall's sides are those that the other reader measures", () => {
  it.each(Object.entries(BODIES))("%s", (_, body) => {
    const ifc = new IfcText();
    ifc.wall("w", ifc.place(ifc.world, [0, 0, 0]), ifc.body(...body(ifc)));
    compare(ifc.text());
  });

  it.each(["m", "ft", "in"] as ModelUnit[])(
    "in %s, in placements that stand in turned placements, with openings",
    (unit) => {
      const ifc = new IfcText(unit);
      const storey = ifc.place(
        ifc.world,
        [12_000, -3000, 2700],
        [0, 0, 1],
        [Math.cos(0.4), Math.sin(0.4), 0],
      );
      const place = ifc.place(storey, [1000, 2000, 0], [0, 0, 1], [0, 1, 0]);
      const wall = ifc.wall("w", place, ifc.body(...BODIES["clipped by two planes to a gable"]!(ifc)));
      const hole = ifc.swept(ifc.rectangle(1200, 1400, [600, 700]), 400);
      ifc.opening(
        wall,
        ifc.place(place, [1000, 350, 800], [0, -1, 0], [1, 0, 0]),
        ifc.body("SweptSolid", hole),
      );
      // Ours counts from the wall's own place, so that a map's coordinates keep their figures.
      const [c, s] = [Math.cos(0.4), Math.sin(0.4)];
      compare(ifc.text(), [12_000 + 1000 * c - 2000 * s, -3000 + 1000 * s + 2000 * c]);
    },
  );
});

describe("what our writer writes comes in again", () => {
  it.each(EXAMPLES)("%s: the same outlines, openings, plan and azimuths", (name) => {
    const source = readProject(
      readFileSync(new URL(`../../examples/${name}`, import.meta.url), "utf8"),
      name,
    );
    if (!source.ok) throw new Error("the example is not read");
    const { facade } = design(source.project);
    const read = readWalls(
      Buffer.from(writeIfc({ project: source.project, facade })).toString("latin1"),
      "out.ifc",
    );
    if (!read.ok) throw new Error("refused");
    const into = wallsInto(source, read.model, {});
    expect(into.ok && [...new Set(into.tells.map(({ key }) => key))].sort()).toEqual([
      "intake.change.outline-stays",
      "intake.change.stay",
    ]);
    // The three walls of a porch look at each other across its open side, as those of a room do: by themselves they begin the other way
    // round, which is said, and mended by hand. Faces that are there settle it, by their azimuth.
    expect(into.findings.map(({ says }) => says.key)).not.toContain("intake.ifc.side");
    const start = { title: "again", display: { units: "mm", language: "en" } } as const;
    const isPorch = name.startsWith("porch");
    if (isPorch)
      expect(startWithWalls(read.model, {}, start).findings.map(({ says }) => says)).toEqual([
        {
          key: "intake.ifc.side",
          values: { file: "out.ifc", walls: read.model.walls.map((wall) => wall.name) },
        },
      ]);
    const ids = source.project.faces.map(({ id }) => id).filter((id) => !isPorch || id.startsWith("porch"));
    const started = startWithWalls(read.model, { walls: ids, turned: isPorch ? ids : [] }, start);
    const again = started.ok ? readDocument(started.document, "again") : undefined;
    if (!again?.ok) throw new Error("not begun");
    const shapes = (faces: typeof again.project.faces, lowest: number) =>
      Object.fromEntries(
        faces.map(({ id, azimuthDeg, outline, openings, plan }) => [
          id,
          {
            azimuthDeg,
            length: Math.hypot(plan.to[0] - plan.from[0], plan.to[1] - plan.from[1]),
            corners: new Set(outline.map(([x, y]) => `${x} ${(y - lowest).toFixed(3)}`)),
            openings: new Set(
              openings.map(({ id: own, x, y }) =>
                [own, ...x, ...y.map((one) => (one - lowest).toFixed(3))].join(" "),
              ),
            ),
          },
        ]),
      );
    const lowest = (faces: typeof again.project.faces) =>
      Math.min(...faces.flatMap(({ outline }) => outline.map(([, y]) => y)));
    const taken = source.project.faces.filter(({ id }) => ids.includes(id));
    expect(shapes(again.project.faces, lowest(again.project.faces))).toEqual(shapes(taken, lowest(taken)));
    const corners = source.project.corners?.filter(
      ({ left, right }) => ids.includes(left) && ids.includes(right),
    );
    expect(again.project.corners?.length ?? 0).toBeGreaterThanOrEqual(corners?.length ?? 0);
  });
});
