/** The build-up as binary glTF, read back by a general loader: every piece there, closed, of its volume, where it hangs. */
import { Box3, type Mesh, type Object3D, Vector3 } from "three";
import { GLTFLoader } from "three/addons/loaders/GLTFLoader.js";
import { beforeAll, describe, expect, it } from "vitest";
import { inBuilding } from "../../src/geometry/frame.ts";
import { regionArea } from "../../src/geometry/region.ts";
import { writeGlb } from "../../src/output/gltf/glb.ts";
import { fixtureFacade } from "../helpers/fixture-facade.ts";

const { facade, project } = fixtureFacade();
const options = { title: project.title, sheathing: project.structure.sheathingThickness };
const bytes = writeGlb(facade, options);
const pieces = facade.faces.flatMap((face) => face.pieces.map((piece) => ({ face, piece })));

describe("the build-up as binary glTF", () => {
  const found = new Map<string, Mesh>();
  let roots: readonly Object3D[] = [];
  beforeAll(async () => {
    const { scene } = await new GLTFLoader().parseAsync(new Uint8Array(bytes).buffer, "");
    roots = scene.children;
    scene.traverse((one) => {
      if ((one as Mesh).isMesh) found.set(one.userData.name ?? one.name, one as Mesh);
    });
  });

  it("has a node for each face, and a mesh for each piece with a body", () => {
    expect(roots).toHaveLength(facade.faces.length);
    const bodied = pieces.filter(({ piece }) => piece.outline.length > 0);
    expect(bodied.filter(({ piece }) => !found.has(piece.mark)).map(({ piece }) => piece.mark)).toEqual([]);
  });

  it("closes sheets and battens round their volume, in metres with y up, where they hang on the building", () => {
    const measured = pieces.filter(({ piece }) => piece.kind === "sheet" || piece.kind === "batten");
    expect(measured.length).toBeGreaterThan(10);
    for (const { face, piece } of measured) {
      const mesh = found.get(piece.mark)!;
      const at = mesh.geometry.getAttribute("position");
      const corner = (i: number) => new Vector3().fromBufferAttribute(at, i);
      let volume = 0;
      for (let i = 0; i < at.count; i += 3) volume += corner(i).dot(corner(i + 1).cross(corner(i + 2))) / 6;
      const wanted = (regionArea(piece) * (piece.z[1] - piece.z[0])) / 1e9;
      // Single floats a few metres from the origin; positive says that every side looks outward.
      expect(Math.abs(volume / wanted - 1)).toBeLessThan(0.01);
      const box = new Box3().setFromObject(mesh);
      const corners = piece.outline.flatMap(([x, y]) =>
        piece.z.map((z) => inBuilding(face.frame, { x, y, z })),
      );
      expect(box.min.x * 1000).toBeCloseTo(Math.min(...corners.map(([x]) => x)), 1);
      expect(box.max.y * 1000).toBeCloseTo(Math.max(...corners.map(([, , z]) => z)), 1);
      expect(-box.min.z * 1000).toBeCloseTo(Math.max(...corners.map(([, y]) => y)), 1);
    }
  });

  it("is the same bytes again", () => {
    expect(Buffer.from(writeGlb(structuredClone(facade), options)).equals(Buffer.from(bytes))).toBe(true);
  });
});
