/** Where each layer of a zone's build-up lies, and how the planes of neighbouring zones meet. */
import type { Face, Layer, Project, Zone } from "../project/schema/project.ts";
import { snap } from "../units/length.ts";
import type { PlacedLayer, PlaneStep, ZonePlane } from "./facade.ts";
import { battenStock, buildUpOf, claddingOf } from "./resolve.ts";

/** Stacks a zone's layers outward from the sheathing and puts the cladding on them. */
export function zonePlane(project: Project, face: Face, zone: Zone): ZonePlane {
  const layers: PlacedLayer[] = [];
  let z = 0;
  /** Outer side of what closes the cavity at its back. */
  let back = 0;
  for (const layer of buildUpOf(project, zone).layers) {
    const stock = layer.kind === "batten" || layer.kind === "rail" ? layer.stock : undefined;
    const thickness = thicknessOf(project, layer);
    const to = snap(z + thickness);
    const material = layer.kind === "insulation" ? layer.material : undefined;
    layers.push({ kind: layer.kind, z: [z, to], ...(stock && { stock }), ...(material && { material }) });
    if (layer.kind === "membrane" || layer.kind === "insulation") back = to;
    z = to;
  }
  const cladding = claddingOf(project, zone);
  const faceZ = snap(z + cladding.thickness);
  layers.push({ kind: "cladding", z: [z, faceZ], material: materialOf(cladding) });
  // Rails lie across the cavity: what drains and breathes is the room behind them.
  const free = layers.find(({ kind }) => kind === "rail")?.z[0] ?? z;
  return { face: face.id, zone: zone.id, layers, faceZ, backZ: z, cavity: snap(free - back) };
}

/** Where the cavity begins: the outer side of the membrane or of what lies outermost behind the battens. */
export function cavityBack({ layers, cavity, backZ }: ZonePlane): number {
  return snap((layers.find(({ kind }) => kind === "rail")?.z[0] ?? backZ) - cavity);
}

function thicknessOf(project: Project, layer: Layer): number {
  return layer.kind === "batten" || layer.kind === "rail"
    ? battenStock(project, layer.stock).thickness
    : layer.thickness;
}

function materialOf(cladding: ReturnType<typeof claddingOf>): string {
  return cladding.kind === "boards" ? cladding.species : cladding.material;
}

/** The step at each place where two zones of a face stand side by side, with the packers that would close it. */
export function planeSteps(project: Project, planes: readonly ZonePlane[]): PlaneStep[] {
  return project.faces.flatMap((face) => {
    const zones = [...face.zones].sort((a, b) => leftOf(a) - leftOf(b));
    return zones.slice(1).map((right, i): PlaneStep => {
      const left = zones[i] as Zone;
      const leftZ = planeOf(planes, face.id, left.id).faceZ;
      const rightZ = planeOf(planes, face.id, right.id).faceZ;
      const step = snap(rightZ - leftZ);
      const packers = step === 0 ? undefined : packersFor(Math.abs(step), project.stock.packers);
      const lower = step > 0 ? left : right;
      return {
        face: face.id,
        zones: [left.id, right.id],
        step,
        ...(packers && { closedBy: { zone: lower.id, packers } }),
      };
    });
  });
}

function leftOf(zone: Zone): number {
  return zone.x[0] === "left end" ? Number.NEGATIVE_INFINITY : zone.x[0];
}

export function planeOf(planes: readonly ZonePlane[], face: string, zone: string): ZonePlane {
  const plane = planes.find((one) => one.face === face && one.zone === zone);
  if (!plane) throw new Error(`no plane for zone ${zone} of face ${face}`);
  return plane;
}

const MOST_PACKERS = 4;

/** The fewest packers of the stock that add up to a thickness, thickest first; undefined when four do not. */
export function packersFor(thickness: number, stock: readonly number[]): number[] | undefined {
  const sizes = [...new Set(stock)].sort((a, b) => b - a);
  let sums: { sum: number; packers: number[] }[] = [{ sum: 0, packers: [] }];
  for (let count = 1; count <= MOST_PACKERS; count++) {
    sums = sums.flatMap(({ sum, packers }) =>
      sizes
        .filter((size) => size <= (packers.at(-1) ?? size) && sum + size <= thickness + 1e-9)
        .map((size) => ({ sum: snap(sum + size), packers: [...packers, size] })),
    );
    const hit = sums.find(({ sum }) => sum === snap(thickness));
    if (hit) return hit.packers;
  }
  return undefined;
}
