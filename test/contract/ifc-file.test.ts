/** The facade as IFC4, read back by a general reader: every element counted, its solid measured and found where it belongs. */

import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  IFCBUILDING,
  IFCCOVERING,
  IFCDISCRETEACCESSORY,
  IFCELEMENTQUANTITY,
  IFCMECHANICALFASTENER,
  IFCMEMBER,
  IFCOPENINGELEMENT,
  IFCPLATE,
  IFCPROJECT,
  IFCPROPERTYSET,
  IFCWALL,
  IfcAPI,
} from "web-ifc";
import { faceFrame, inBuilding } from "../../src/geometry/frame.ts";
import { regionArea } from "../../src/geometry/region.ts";
import { globalId } from "../../src/output/ifc/global-id.ts";
import { writeIfc } from "../../src/output/ifc/ifc.ts";
import { StepFile } from "../../src/output/ifc/step.ts";
import type { Piece } from "../../src/setout/facade.ts";
import { fixtureFacade } from "../helpers/fixture-facade.ts";

const { facade, project } = fixtureFacade();
const bytes = writeIfc({ project, facade });
const text = Buffer.from(bytes).toString("latin1");
const pieces = facade.faces.flatMap((face) => face.pieces.map((piece) => ({ face, piece })));
const ofKind = (...kinds: Piece["kind"][]) => pieces.filter(({ piece }) => kinds.includes(piece.kind));

describe("a facade as IFC4", () => {
  const api = new IfcAPI();
  let model = -1;
  beforeAll(async () => {
    await api.Init();
    model = api.OpenModel(bytes);
  });
  afterAll(() => api.CloseModel(model));

  const idsOf = (type: number): number[] => {
    const vector = api.GetLineIDsWithType(model, type);
    return Array.from({ length: vector.size() }, (_, i) => vector.get(i));
  };
  const byTag = (type: number) =>
    new Map(idsOf(type).map((id) => [api.GetLine(model, id).Tag?.value as string, id] as const));

  /** Volume (mm³) and bounds (mm, building frame) of a product's triangles, which the reader gives in metres by the file's unit. */
  function solidOf(id: number) {
    let volume = 0;
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    const mesh = api.GetFlatMesh(model, id);
    for (let g = 0; g < mesh.geometries.size(); g++) {
      const { geometryExpressID, flatTransformation } = mesh.geometries.get(g);
      const m = flatTransformation.map((part, i) => (i % 4 === 3 ? part : part * 1000));
      const geometry = api.GetGeometry(model, geometryExpressID);
      const vertices = api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize());
      const indices = api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
      // Six floats a vertex, with y up: turned back to z up.
      const at = (i: number): [number, number, number] => {
        const [x, y, z] = [vertices[i * 6]!, vertices[i * 6 + 1]!, vertices[i * 6 + 2]!];
        const row = (k: number) => m[k]! * x + m[k + 4]! * y + m[k + 8]! * z + m[k + 12]!;
        return [row(0), -row(2), row(1)];
      };
      for (let i = 0; i < indices.length; i += 3) {
        const [a, b, c] = [at(indices[i]!), at(indices[i + 1]!), at(indices[i + 2]!)];
        volume +=
          (a[0] * (b[1] * c[2] - b[2] * c[1]) +
            a[1] * (b[2] * c[0] - b[0] * c[2]) +
            a[2] * (b[0] * c[1] - b[1] * c[0])) /
          6;
        for (const point of [a, b, c]) {
          for (const axis of [0, 1, 2] as const) {
            low[axis] = Math.min(low[axis]!, point[axis]);
            high[axis] = Math.max(high[axis]!, point[axis]);
          }
        }
      }
    }
    return { volume: Math.abs(volume), low, high };
  }

  it("holds each piece once, by its mark, as plate, member, covering or accessory", () => {
    expect([...byTag(IFCPLATE).keys()].sort()).toEqual(
      ofKind("sheet", "flashing", "return")
        .map(({ piece }) => piece.mark)
        .sort(),
    );
    expect([...byTag(IFCMEMBER).keys()].sort()).toEqual(
      ofKind("board", "batten", "counter-batten", "rail", "post", "backing")
        .map(({ piece }) => piece.mark)
        .sort(),
    );
    expect(idsOf(IFCDISCRETEACCESSORY)).toHaveLength(ofKind("packer", "closure", "gasket", "sleeve").length);
    const zones = facade.faces.flatMap(({ zones }) => zones).length;
    expect(idsOf(IFCCOVERING)).toHaveLength(zones + ofKind("membrane").length);
    expect(idsOf(IFCWALL)).toHaveLength(facade.faces.filter(({ frame }) => frame.level === undefined).length);
    expect(idsOf(IFCOPENINGELEMENT)).toHaveLength(facade.faces.flatMap(({ openings }) => openings).length);
    expect(idsOf(IFCBUILDING)).toHaveLength(1);
    expect(
      api.GetLine(model, byTag(IFCPLATE).get(ofKind("sheet")[0]!.piece.mark)!).PredefinedType.value,
    ).toBe("SHEET");
  });

  it("tells its unit, millimetres, and north where the project has them (ISO 16739-1, IfcProject.UnitsInContext)", () => {
    const [root] = idsOf(IFCPROJECT);
    const { UnitsInContext, RepresentationContexts } = api.GetLine(model, root!, true);
    const length = UnitsInContext.Units.find(
      (one: { UnitType: { value: string } }) => one.UnitType.value === "LENGTHUNIT",
    );
    expect([length.Prefix.value, length.Name.value]).toEqual(["MILLI", "METRE"]);
    // The face's azimuth, turned back from the way that it looks to, is north.
    const [face] = project.faces;
    const { outward } = faceFrame(face!.plan);
    const [x, y] = RepresentationContexts[0].TrueNorth.DirectionRatios.map(
      ({ value }: { value: number }) => value,
    ) as [number, number];
    const cosine = x * outward[0] + y * outward[1];
    expect(cosine).toBeCloseTo(Math.cos((face!.azimuthDeg * Math.PI) / 180), 6);
  });

  it("counts every screw", () => {
    const counts = idsOf(IFCPROPERTYSET)
      .map((id) => api.GetLine(model, id, true))
      .filter(({ Name }) => Name.value === "Outerleaf_Screws")
      .map(({ HasProperties }) =>
        Number(
          HasProperties.find((one: { Name: { value: string } }) => one.Name.value === "Count").NominalValue
            .value,
        ),
      );
    expect(counts).toHaveLength(idsOf(IFCMECHANICALFASTENER).length);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(
      pieces.reduce((sum, { piece }) => sum + piece.fixings.length, 0),
    );
  });

  it("gives sheets and boards the solid of their outline and thickness, where they hang on the building", () => {
    const ids = new Map([...byTag(IFCPLATE), ...byTag(IFCMEMBER)]);
    const measured = ofKind("sheet", "board", "batten");
    expect(measured.length).toBeGreaterThan(20);
    for (const { face, piece } of measured) {
      const { volume, low, high } = solidOf(ids.get(piece.mark)!);
      const wanted = regionArea(piece) * (piece.z[1] - piece.z[0]);
      expect(Math.abs(volume / wanted - 1)).toBeLessThan(1e-4);
      const corners = piece.outline.flatMap(([x, y]) =>
        piece.z.map((z) => inBuilding(face.frame, { x, y, z })),
      );
      for (const axis of [0, 1, 2] as const) {
        expect(low[axis]).toBeCloseTo(Math.min(...corners.map((corner) => corner[axis])), 1);
        expect(high[axis]).toBeCloseTo(Math.max(...corners.map((corner) => corner[axis])), 1);
      }
    }
  });

  it("tells base quantities that are those of the schedules", () => {
    const [{ piece }] = ofKind("sheet") as [(typeof pieces)[number]];
    const told = idsOf(IFCELEMENTQUANTITY)
      .map((id) => api.GetLine(model, id, true))
      .filter(({ Name }) => Name.value === "Qto_PlateBaseQuantities");
    expect(told).toHaveLength(ofKind("sheet", "flashing", "return").length);
    const areas = told.flatMap(({ Quantities }) =>
      Quantities.filter((one: { Name: { value: string } }) => one.Name.value === "NetArea").map(
        (one: { AreaValue: { value: number } }) => one.AreaValue.value,
      ),
    );
    expect(areas.some((area) => Math.abs(area - regionArea(piece) / 1e6) < 1e-8)).toBe(true);
  });
});

describe("the file", () => {
  it("writes reals with a point and no exponent, and nothing but printable ASCII (ISO 10303-21)", () => {
    expect(text).toMatch(/^[ -~\n]*$/);
    expect(text).not.toMatch(/[(,]-?\d+(?:\.\d+)?E[-+]?\d/);
    const file = new StepFile();
    file.add("IFCX", 1e-7, -0, 2, 1 / 3, "it's Å\\", { whole: 4 });
    expect(file.taken().join("")).toContain(
      String.raw`#1=IFCX(0.0000001,0.,2.,0.333333333,'it''s \X2\00C5\X0\\\',4);`,
    );
  });

  it("gives every rooted entity an id of its own, that a re-layout keeps", () => {
    const ids = [...text.matchAll(/^#\d+=IFC\w+\('([0-9A-Za-z_$]{22})',/gm)].map(([, id]) => id);
    expect(ids.length).toBeGreaterThan(500);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every((id) => /^[0-3]/.test(id ?? ""))).toBe(true);
    expect(globalId("a")).toBe(globalId("a"));
    expect(new Set(Array.from({ length: 20_000 }, (_, i) => globalId(`piece F${i}`))).size).toBe(20_000);
  });

  it("carries the date of the last issue and no other time, and is the same bytes again", () => {
    expect(text).toContain("'1970-01-01T00:00:00'");
    const issued = { revisions: [{ revision: "B", when: "2031-04-05", note: "for tender" }], pieces: {} };
    const told = Buffer.from(writeIfc({ project: { ...project, issued }, facade })).toString("latin1");
    expect(told).toContain("'2031-04-05T00:00:00'");
    expect(Buffer.from(writeIfc(structuredClone({ project, facade }))).toString("latin1")).toBe(text);
  });
});
