/** The building in the graphics library: the eye, light from the sun, and what is picked. */
import {
  AmbientLight,
  Box3,
  BufferGeometry,
  DirectionalLight,
  Float32BufferAttribute,
  LineSegments,
  Mesh,
  OrthographicCamera,
  PCFShadowMap,
  Raycaster,
  Scene,
  Sphere,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import type { Design } from "../../design.ts";
import type { Size } from "../drawing/camera.ts";
import type { Shown } from "../drawing/layers.ts";
import { outlineOf, type Pick, pickKey } from "../picks/pick.ts";
import { createBuilding } from "./building.ts";
import { edgesOf, type FaceModel, trianglesOf } from "./face-model.ts";
import { type ColourOf, createMaterials } from "./materials.ts";
import { type Orbit, sightOf } from "./orbit.ts";
import type { Vector } from "./placing.ts";
import { cornersOf } from "./plane.ts";

/** What the view is drawn from; the scene draws no sooner than it is told. */
export interface Aspect {
  readonly orbit: Orbit;
  readonly size: Size;
  readonly shown: Shown;
  /** Towards the sun; nothing while it is under the horizon. */
  readonly sun: Vector | undefined;
  /** 0: the building; 1: all faces in one plane. */
  readonly part: number;
  readonly picks: readonly Pick[];
}

export interface SolidScene {
  /** Builds the faces that are not those of the design before. */
  build(design: Design): void;
  colour(of: ColourOf): void;
  draw(aspect: Aspect): void;
  /** What is seen at a point, pixels from the middle of the view, y down. */
  pickAt(at: readonly [number, number]): Pick | undefined;
  dispose(): void;
}

/** Shares of full light: what the sky gives everywhere, and what the sun adds where it stands square to a side. */
const SKY = 0.62;
const SUN = 0.62;
/** Without the sun everything is seen as evenly as on paper. */
const NO_SUN = 0.85;
/** The library's light is π times less on a matt surface. */
const MATT = Math.PI;
const SHADOW_PIXELS = 2048;

/** @throws where the browser gives no WebGL */
export function createSolidScene(canvas: HTMLCanvasElement): SolidScene {
  // Kept, so that the picture can be printed and read.
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, preserveDrawingBuffer: true });
  renderer.shadowMap.enabled = true;
  renderer.shadowMap.type = PCFShadowMap;
  renderer.shadowMap.autoUpdate = false;
  const scene = new Scene();
  const camera = new OrthographicCamera();
  const sky = new AmbientLight();
  const sun = new DirectionalLight();
  sun.castShadow = true;
  sun.shadow.mapSize.set(SHADOW_PIXELS, SHADOW_PIXELS);
  sun.shadow.normalBias = 6;
  scene.add(sky, sun, sun.target);
  const materials = createMaterials();
  const building = createBuilding(materials);
  scene.add(building.group);
  let design: Design | undefined;
  let reach = new Sphere(new Vector3(), 1);
  let marks: (Mesh | LineSegments)[] = [];
  let last: { readonly aspect: Aspect; readonly design: Design | undefined } | undefined;

  const light = (towards: Vector | undefined): void => {
    sky.intensity = MATT * (towards ? SKY : NO_SUN);
    sun.visible = towards !== undefined;
    if (!towards) return;
    sun.intensity = MATT * SUN;
    const { center, radius } = reach;
    sun.target.position.copy(center);
    sun.position
      .set(...towards)
      .multiplyScalar(radius * 2)
      .add(center);
    const shadow = sun.shadow.camera;
    [shadow.left, shadow.right, shadow.bottom, shadow.top] = [-radius, radius, -radius, radius];
    [shadow.near, shadow.far] = [radius * 0.5, radius * 3.5];
    shadow.updateProjectionMatrix();
  };
  const mark = (picks: readonly Pick[]): void => {
    for (const one of marks) {
      one.removeFromParent();
      one.geometry.dispose();
    }
    marks = picks.flatMap((pick) => {
      const own = building.modelOf(pick.face);
      const made = own ? marksOf(pick, own) : [];
      for (const one of made) own?.group.add(one);
      return made;
    });
  };
  const marksOf = (pick: Pick, { shapes }: FaceModel): (Mesh | LineSegments)[] => {
    const key = pickKey(pick);
    const own = pick.kind === "piece" || pick.kind === "opening";
    const meant = own ? shapes.filter((shape) => shape.pick && pickKey(shape.pick) === key) : [];
    const edges = new LineSegments(meant.length > 0 ? edgesOf(meant) : around(pick), materials.pickedEdge);
    edges.renderOrder = 1;
    return meant.length > 0 ? [new Mesh(trianglesOf(meant), materials.pickedFill), edges] : [edges];
  };
  /** A zone, a joint, a duct or a face, at the outside of its face. */
  const around = (pick: Pick): BufferGeometry => {
    const outline = (design && outlineOf(design, pick)) ?? [];
    const planes = design?.facade.planes.filter(({ face }) => face === pick.face) ?? [];
    const z = Math.max(0, ...planes.map(({ faceZ }) => faceZ));
    const edges = outline.flatMap(([x, y], i) => {
      const next = outline[(i + 1) % outline.length] ?? [x, y];
      return [x, y, z, next[0], next[1], z];
    });
    return new BufferGeometry().setAttribute("position", new Float32BufferAttribute(edges, 3));
  };

  return {
    build(next) {
      design = next;
      building.build(next);
      reach = new Box3()
        .setFromPoints(cornersOf(next.facade.faces).map((corner) => new Vector3(...corner)))
        .getBoundingSphere(new Sphere());
    },
    colour(of) {
      materials.colour(of);
      last = undefined;
    },
    draw(aspect) {
      const { orbit, size, shown, part, picks } = aspect;
      const same = last?.design === design ? last?.aspect : undefined;
      const moves = same?.part !== part;
      if (moves) building.place(part);
      if (moves || same?.sun !== aspect.sun) light(part === 0 ? aspect.sun : undefined);
      if (moves || same?.picks !== picks) mark(picks);
      for (const model of building.models()) model.show(shown, orbit.k);
      renderer.shadowMap.needsUpdate = moves || same?.sun !== aspect.sun || same?.shown !== shown;
      if (same?.size !== size) {
        renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
        renderer.setSize(size.width, size.height);
      }
      aim(camera, orbit, size, reach.radius);
      renderer.render(scene, camera);
      last = { aspect, design };
    },
    pickAt([x, y]) {
      const size = last?.aspect.size;
      if (!size) return undefined;
      const ray = new Raycaster();
      ray.setFromCamera(new Vector2((2 * x) / size.width, (-2 * y) / size.height), camera);
      const meant = new Map(
        building.models().flatMap((model) => model.pressed().map((mesh) => [mesh, model])),
      );
      const [hit] = ray.intersectObjects([...meant.keys()], false);
      return hit && meant.get(hit.object)?.pickOf(hit.object, hit.faceIndex ?? 0);
    },
    dispose() {
      mark([]);
      building.dispose();
      materials.dispose();
      sun.dispose();
      renderer.dispose();
    },
  };
}

function aim(camera: OrthographicCamera, orbit: Orbit, { width, height }: Size, radius: number): void {
  const { right, up, towardsEye } = sightOf(orbit);
  // Far enough that nothing lies behind the eye, however far the view was moved.
  const away = radius * 12;
  camera.position.set(...towardsEye).multiplyScalar(away);
  camera.position.add(new Vector3(...orbit.target));
  camera.matrix.makeBasis(new Vector3(...right), new Vector3(...up), new Vector3(...towardsEye));
  camera.quaternion.setFromRotationMatrix(camera.matrix);
  const [halfWide, halfHigh] = [width / 2 / orbit.k, height / 2 / orbit.k];
  [camera.left, camera.right, camera.bottom, camera.top] = [-halfWide, halfWide, -halfHigh, halfHigh];
  [camera.near, camera.far] = [0, away * 2];
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}
