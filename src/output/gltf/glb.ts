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
import { allBytes, bytesOf, gathered } from "../pieces.ts";
import { type Corner, pieceCorners, prismCorners } from "./prism.ts";

interface Part {
  readonly name: string;
  readonly fill: FillRole;
  readonly corners: readonly Corner[];
}

interface GlbOptions {
  readonly title: string;
  /** Thickness, mm. */
  readonly sheathing: number;
}

export function writeGlb(facade: Facade, options: GlbOptions): Uint8Array {
  return allBytes(glbPieces(facade, options));
}

/** The same, handed out face by face: corners are reckoned twice, to say where they will be and to write them, and not held. */
export function* glbPieces(facade: Facade, { title, sheathing }: GlbOptions): Generator<Uint8Array> {
  const fills: FillRole[] = [];
  const [nodes, meshes, accessors]: [string[], string[], string[]] = [[], [], []];
  const roots: number[] = [];
  let byteLength = 0;
  for (const face of facade.faces) {
    const children = partsOf(face, facade, sheathing).map(({ name, fill, corners }) => {
      if (!fills.includes(fill)) fills.push(fill);
      const mesh = meshes.length;
      const { low, high } = placed(face, corners);
      accessors.push(
        JSON.stringify({
          bufferView: 0,
          byteOffset: byteLength,
          componentType: 5126,
          count: corners.length,
          type: "VEC3",
          min: low,
          max: high,
        }),
      );
      byteLength += corners.length * BYTES_A_CORNER;
      const primitives = [{ attributes: { POSITION: mesh }, material: fills.indexOf(fill) }];
      meshes.push(JSON.stringify({ name, primitives }));
      return nodes.push(JSON.stringify({ name, mesh })) - 1;
    });
    roots.push(nodes.push(JSON.stringify({ name: face.id, children })) - 1);
  }
  const materials = fills.map((fill) => ({
    name: fill,
    doubleSided: true,
    pbrMetallicRoughness: {
      baseColorFactor: linear(PALETTES.light[fill]),
      metallicFactor: 0,
      roughnessFactor: 0.9,
    },
  }));
  const views = [{ buffer: 0, byteOffset: 0, byteLength, byteStride: BYTES_A_CORNER, target: 34962 }];
  const start = {
    asset: { version: "2.0", generator: "Outerleaf" },
    scene: 0,
    scenes: [{ name: title, nodes: roots }],
  };
  const json = [
    `${JSON.stringify(start).slice(0, -1)},"nodes":[`,
    ...listed(nodes),
    '],"meshes":[',
    ...listed(meshes),
    `],"materials":${JSON.stringify(materials)},"accessors":[`,
    ...listed(accessors),
    `],"bufferViews":${JSON.stringify(views)},"buffers":${JSON.stringify([{ byteLength }])}}`,
  ];
  const chunks = Array.from(gathered(json), bytesOf);
  const written = chunks.reduce((sum, { length }) => sum + length, 0);
  const padding = (4 - (written % 4)) % 4;
  const total = 12 + 8 + written + padding + 8 + byteLength;
  yield words(MAGIC, 2, total, written + padding, JSON_CHUNK);
  yield* chunks;
  yield new Uint8Array(padding).fill(0x20);
  yield words(byteLength, BINARY_CHUNK);
  for (const face of facade.faces) {
    for (const { corners } of partsOf(face, facade, sheathing)) {
      yield new Uint8Array(placed(face, corners).positions.buffer);
    }
  }
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

/** Three numbers of four bytes. */
const BYTES_A_CORNER = 12;

interface Placed {
  readonly positions: Float32Array<ArrayBuffer>;
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** A soffit's frame is left-handed: its triangles are turned. */
function placed({ frame }: FaceLayout, corners: readonly Corner[]): Placed {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const positions = new Float32Array(corners.length * 3);
  const isTurned = frame.level !== undefined;
  for (let i = 0; i < corners.length; i++) {
    const inTriangle = i % 3;
    const from = isTurned && inTriangle > 0 ? i + (inTriangle === 1 ? 1 : -1) : i;
    const [px, py, pz] = corners[from] as Corner;
    const [x, y, z] = inBuilding(frame, { x: px, y: py, z: pz });
    [x / MM_PER_M, z / MM_PER_M, -y / MM_PER_M].forEach((value, axis) => {
      const single = Math.fround(value) + 0;
      positions[i * 3 + axis] = single;
      low[axis] = Math.min(low[axis] as number, single);
      high[axis] = Math.max(high[axis] as number, single);
    });
  }
  return { positions, low, high };
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

/** Whole numbers of four bytes, the lowest byte first. */
function words(...all: readonly number[]): Uint8Array {
  const view = new DataView(new ArrayBuffer(all.length * 4));
  for (const [i, one] of all.entries()) view.setUint32(i * 4, one, true);
  return new Uint8Array(view.buffer);
}

function listed(all: readonly string[]): string[] {
  return all.map((one, i) => (i === 0 ? one : `,${one}`));
}
