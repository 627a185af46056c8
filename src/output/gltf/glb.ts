/**
 * The build-up in 3D as binary glTF 2.0 (ISO/IEC 12113): every piece a node by its mark, sheathing and insulation behind
 * them. Metres, y up. Same facade, same bytes.
 */
import { inBuilding } from "../../geometry/frame.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { intersect, subtract } from "../../geometry/region.ts";
import type { FillRole } from "../../scene/roles.ts";
import { PIECE_FILLS } from "../../scene/views/section-cut.ts";
import type { Facade, FaceLayout } from "../../setout/facade.ts";
import { PALETTES } from "../palettes.ts";
import { utf8 } from "../utf8.ts";
import { type Corner, pieceCorners, prismCorners } from "./prism.ts";

interface Part {
  readonly name: string;
  readonly fill: FillRole;
  readonly corners: readonly Corner[];
}

/** @param sheathing thickness, mm */
export function writeGlb(
  facade: Facade,
  { title, sheathing }: { title: string; sheathing: number },
): Uint8Array {
  const fills: FillRole[] = [];
  const nodes: object[] = [];
  const meshes: object[] = [];
  const accessors: object[] = [];
  const positions: number[] = [];
  const roots: number[] = [];
  for (const face of facade.faces) {
    const children = partsOf(face, facade, sheathing).map(({ name, fill, corners }) => {
      if (!fills.includes(fill)) fills.push(fill);
      accessors.push(placed(face, corners, positions));
      meshes.push({
        name,
        primitives: [{ attributes: { POSITION: accessors.length - 1 }, material: fills.indexOf(fill) }],
      });
      return nodes.push({ name, mesh: meshes.length - 1 }) - 1;
    });
    roots.push(nodes.push({ name: face.id, children }) - 1);
  }
  const bytes = new Uint8Array(new Float32Array(positions).buffer);
  const json = {
    asset: { version: "2.0", generator: "Outerleaf" },
    scene: 0,
    scenes: [{ name: title, nodes: roots }],
    nodes,
    meshes,
    materials: fills.map((fill) => ({
      name: fill,
      doubleSided: true,
      pbrMetallicRoughness: {
        baseColorFactor: linear(PALETTES.light[fill]),
        metallicFactor: 0,
        roughnessFactor: 0.9,
      },
    })),
    accessors,
    bufferViews: [{ buffer: 0, byteOffset: 0, byteLength: bytes.length, byteStride: 12, target: 34962 }],
    buffers: [{ byteLength: bytes.length }],
  };
  return packed(utf8(JSON.stringify(json)), bytes);
}

function partsOf(face: FaceLayout, { planes }: Facade, sheathing: number): Part[] {
  const holes = face.openings.map(({ region }) => rectOutline(region));
  const slabs = (
    name: string,
    fill: FillRole,
    outline: FaceLayout["outline"],
    z: readonly [number, number],
  ): Part[] =>
    subtract(outline, holes).map((region) => ({ name, fill, corners: prismCorners({ ...region, z }) }));
  const insulation = face.zones.flatMap((zone) =>
    (planes.find((one) => one.face === face.id && one.zone === zone.id)?.layers ?? [])
      .filter(({ kind, z }) => kind === "insulation" && z[1] > z[0])
      .flatMap(({ z }) =>
        intersect(face.outline, zone.region).flatMap(({ outline }) =>
          slabs(`${face.id} ${zone.id} insulation`, "insulation", outline, z),
        ),
      ),
  );
  return [
    ...slabs(`${face.id} sheathing`, "sheathing", face.outline, [-sheathing, 0]),
    ...insulation,
    ...face.pieces.map((piece) => ({
      name: piece.mark,
      fill: PIECE_FILLS[piece.kind],
      corners: pieceCorners(piece),
    })),
  ].filter(({ corners }) => corners.length > 0);
}

const MM_PER_M = 1000;

/** Adds the corners to the list and says where they are. A soffit's frame is left-handed: its triangles are turned. */
function placed({ frame }: FaceLayout, corners: readonly Corner[], into: number[]): object {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const byteOffset = into.length * 4;
  const isTurned = frame.level !== undefined;
  for (let i = 0; i < corners.length; i++) {
    const inTriangle = i % 3;
    const from = isTurned && inTriangle > 0 ? i + (inTriangle === 1 ? 1 : -1) : i;
    const [px, py, pz] = corners[from] as Corner;
    const [x, y, z] = inBuilding(frame, { x: px, y: py, z: pz });
    [x / MM_PER_M, z / MM_PER_M, -y / MM_PER_M].forEach((value, axis) => {
      const single = Math.fround(value) + 0;
      into.push(single);
      low[axis] = Math.min(low[axis] as number, single);
      high[axis] = Math.max(high[axis] as number, single);
    });
  }
  return {
    bufferView: 0,
    byteOffset,
    componentType: 5126,
    count: corners.length,
    type: "VEC3",
    min: low,
    max: high,
  };
}

/** `#rrggbb` (sRGB) as linear light, opaque (IEC 61966-2-1). */
function linear(hex: string): number[] {
  const parts = [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return [...parts.map((value) => Number(value.toFixed(6))), 1];
}

const [MAGIC, JSON_CHUNK, BINARY_CHUNK] = [0x46546c67, 0x4e4f534a, 0x004e4942];

/** Header and two chunks, each to a whole number of four bytes. */
function packed(json: Uint8Array, binary: Uint8Array): Uint8Array {
  const long = (bytes: Uint8Array): number => Math.ceil(bytes.length / 4) * 4;
  const total = 12 + 8 + long(json) + 8 + long(binary);
  const out = new Uint8Array(total);
  const view = new DataView(out.buffer);
  for (const [i, word] of [MAGIC, 2, total, long(json), JSON_CHUNK].entries())
    view.setUint32(i * 4, word, true);
  out.fill(0x20, 20, 20 + long(json));
  out.set(json, 20);
  view.setUint32(20 + long(json), long(binary), true);
  view.setUint32(24 + long(json), BINARY_CHUNK, true);
  out.set(binary, 28 + long(json));
  return out;
}
