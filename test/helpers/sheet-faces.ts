/** Small faces of sheets for trying layouts: one wall without corners, its openings, stock, pins and bands. */
import fc from "fast-check";
import demoText from "../../examples/atelier-bouleau.outerleaf.json" with { type: "json" };
import type { Project, ProjectDocument } from "../../src/project/schema/project.ts";
import type { SheetZone } from "../../src/setout/sheets/zone.ts";
import { read } from "./buildings.ts";
import { sheetZones } from "./sheet-zones.ts";

const demo = demoText as unknown as ProjectDocument;

export interface SmallFace {
  readonly width: number;
  readonly height: number;
  readonly openings: readonly {
    readonly left: number;
    readonly width: number;
    readonly sill: number;
    readonly height: number;
  }[];
  readonly stock: readonly [width: number, height: number];
  readonly lay?: "upright" | "lying" | "either";
  readonly pattern?: "stacked" | "grid" | "offset";
  readonly pinned?: { readonly x?: readonly number[]; readonly y?: readonly number[] };
  readonly forbidden?: {
    readonly x?: readonly (readonly [number, number])[];
    readonly y?: readonly (readonly [number, number])[];
  };
}

const millimetres = (min: number, max: number, step = 1): fc.Arbitrary<number> =>
  fc.integer({ min: Math.ceil(min / step), max: Math.floor(max / step) }).map((n) => n * step);

const opening = fc.record({
  left: millimetres(100, 900, 5),
  width: millimetres(300, 1400, 5),
  sill: millimetres(0, 1300, 10),
  height: millimetres(300, 1500, 10),
});

export const smallFace = ({ widest = 3400, highest = 3600 } = {}): fc.Arbitrary<SmallFace> =>
  fc.record({
    width: millimetres(1300, widest, 5),
    height: millimetres(1500, highest, 5),
    openings: fc.array(opening, { maxLength: 2 }),
    stock: fc.constantFrom([1220, 2440], [1220, 3050], [900, 1800], [1200, 2500]),
    lay: fc.constantFrom("upright", "upright", "lying", "either"),
  });

export function faceProject(face: SmallFace): Project {
  let reached = 0;
  const openings = face.openings.flatMap(({ left, width, sill, height }, i) => {
    const x: [number, number] = [reached + left, reached + left + width];
    if (x[1] + 60 > face.width) return [];
    reached = x[1];
    const y: [number, number] = [sill, Math.min(sill + height, face.height - 60)];
    return y[1] - y[0] < 100 ? [] : [{ id: `O${i + 1}`, kind: "window" as const, x, y }];
  });
  return read({
    ...demo,
    title: "Small face",
    claddings: demo.claddings.map((one) =>
      one.kind === "sheets" ? { ...one, stock: ["s"], ...(face.lay && { lay: face.lay }) } : one,
    ) as ProjectDocument["claddings"],
    stock: { ...demo.stock, sheets: [{ id: "s", width: face.stock[0], height: face.stock[1] }] },
    faces: [
      {
        id: "wall",
        azimuthDeg: 180,
        plan: { from: [0, 0], to: [face.width, 0] },
        outline: [
          [0, 0],
          [face.width, 0],
          [face.width, face.height],
          [0, face.height],
        ],
        ground: [
          [0, -300],
          [face.width, -300],
        ],
        openings,
        zones: [
          {
            id: "sheets",
            cladding: "grey-sheets",
            buildUp: "bare-sheets",
            x: ["left end", "right end"],
            ...(face.pattern && { pattern: face.pattern }),
            ...((face.pinned || face.forbidden) && {
              joints: { pinned: face.pinned ?? {}, forbidden: face.forbidden ?? {} },
            }),
          },
        ],
      },
    ],
    corners: [],
    rods: [],
    survey: [],
    crews: [],
  } as unknown as ProjectDocument);
}

export function faceZone(face: SmallFace): SheetZone {
  const [zone] = sheetZones(faceProject(face));
  if (!zone) throw new Error("the face has a sheet zone");
  return zone;
}
