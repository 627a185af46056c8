/** One face in the scene: its shapes gathered by layer and ink, so that a wall is a few dozen things to draw. */
import {
  BufferGeometry,
  CircleGeometry,
  Float32BufferAttribute,
  Group,
  InstancedMesh,
  LineSegments,
  Matrix4,
  Mesh,
  type Object3D,
} from "three";
import type { FillRole } from "../../scene/roles.ts";
import type { Shown } from "../drawing/layers.ts";
import type { Pick } from "../picks/pick.ts";
import type { Materials } from "./materials.ts";
import type { Placing } from "./placing.ts";
import type { Head, Shape } from "./shape.ts";

/** Larger than the head, so that it can be seen, mm. */
const HEAD_RADIUS = 9;
/** Before the piece, so that it is not lost in its face, mm. */
const HEAD_BEFORE = 1;
/** Heads smaller than this on the screen are left out, pixels. */
const HEAD_SEEN = 0.9;
/** Under so many pixels for a millimetre a sheet is thinner than a line, and edges behind it would show through. */
const EDGES_BEHIND = 0.15;
const BEHIND: readonly Shape["layer"][] = ["battens", "membrane", "insulation"];

export interface FaceModel {
  readonly group: Group;
  readonly shapes: readonly Shape[];
  /** What can be pressed as it is shown now. */
  pressed(): Object3D[];
  pickOf(mesh: Object3D, triangle: number): Pick | undefined;
  /** @param k pixels for a millimetre */
  show(shown: Shown, k: number): void;
  place(placing: Placing): void;
  dispose(): void;
}

interface Bucket {
  readonly layer: Shape["layer"];
  readonly fill: FillRole;
  readonly shapes: Shape[];
}

export function createFaceModel(
  { shapes, heads }: { shapes: readonly Shape[]; heads: readonly Head[] },
  materials: Materials,
): FaceModel {
  const group = new Group();
  group.matrixAutoUpdate = false;
  const layered: { layer: Shape["layer"]; object: Object3D; is?: "edges" | "heads" }[] = [];
  const firsts = new Map<Object3D, { readonly first: number; readonly pick: Pick | undefined }[]>();
  for (const { layer, fill, shapes: own } of buckets(shapes)) {
    const mesh = new Mesh(trianglesOf(own), materials.fill(fill));
    mesh.castShadow = fill !== "ground";
    mesh.receiveShadow = true;
    let first = 0;
    firsts.set(
      mesh,
      own.map(({ mesh: { triangles }, pick }) => {
        const at = { first, pick };
        first += triangles.length / 9;
        return at;
      }),
    );
    const lines = new LineSegments(edgesOf(own), materials.edge);
    group.add(mesh, lines);
    layered.push({ layer, object: mesh }, { layer, object: lines, is: "edges" });
  }
  for (const layer of new Set(heads.map((head) => head.layer))) {
    const disc = discs(
      heads.filter((head) => head.layer === layer),
      materials,
    );
    group.add(disc);
    layered.push({ layer, object: disc, is: "heads" });
  }
  return {
    group,
    shapes,
    pressed: () => [...firsts.keys()].filter(({ visible }) => visible),
    pickOf: (mesh, triangle) => firsts.get(mesh)?.findLast(({ first }) => first <= triangle)?.pick,
    show(shown, k) {
      const heads = shown.has("fixings") && HEAD_RADIUS * k >= HEAD_SEEN;
      const behind = !shown.has("cladding") || k >= EDGES_BEHIND;
      for (const { layer, object, is } of layered) {
        const told = is === "heads" ? heads : is !== "edges" || behind || !BEHIND.includes(layer);
        object.visible = told && (layer === "always" || shown.has(layer));
      }
    },
    place({ origin, x, y, z }) {
      group.matrix.set(
        ...[x[0], y[0], z[0], origin[0]],
        ...[x[1], y[1], z[1], origin[1]],
        ...[x[2], y[2], z[2], origin[2]],
        ...[0, 0, 0, 1],
      );
      group.matrixWorldNeedsUpdate = true;
    },
    dispose() {
      group.removeFromParent();
      group.traverse((object) => {
        if (object instanceof Mesh || object instanceof LineSegments) object.geometry.dispose();
        if (object instanceof InstancedMesh) object.dispose();
      });
    },
  };
}

export function trianglesOf(shapes: readonly Meshed[]): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new Float32BufferAttribute(gathered(shapes, "triangles"), 3));
  geometry.computeVertexNormals();
  return geometry;
}

export function edgesOf(shapes: readonly Meshed[]): BufferGeometry {
  const geometry = new BufferGeometry();
  return geometry.setAttribute("position", new Float32BufferAttribute(gathered(shapes, "edges"), 3));
}

type Meshed = { readonly mesh: Shape["mesh"] };

function gathered(shapes: readonly Meshed[], which: "triangles" | "edges"): Float32Array {
  const all = new Float32Array(shapes.reduce((sum, { mesh }) => sum + mesh[which].length, 0));
  let at = 0;
  for (const { mesh } of shapes) {
    all.set(mesh[which], at);
    at += mesh[which].length;
  }
  return all;
}

function buckets(shapes: readonly Shape[]): Bucket[] {
  const found = new Map<string, Bucket>();
  for (const shape of shapes) {
    const { layer, fill } = shape;
    const key = `${layer} ${fill}`;
    const bucket = found.get(key) ?? { layer, fill, shapes: [] };
    bucket.shapes.push(shape);
    found.set(key, bucket);
  }
  return [...found.values()];
}

function discs(heads: readonly Head[], { head }: Materials): InstancedMesh {
  const mesh = new InstancedMesh(new CircleGeometry(HEAD_RADIUS, 12), head, heads.length);
  for (const [i, { at }] of heads.entries())
    mesh.setMatrixAt(i, new Matrix4().makeTranslation(at[0], at[1], at[2] + HEAD_BEFORE));
  return mesh;
}
