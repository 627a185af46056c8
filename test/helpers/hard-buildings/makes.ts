/** Timber, build-ups, claddings and stock of generated buildings. */
import fc from "fast-check";
import demoText from "../../../examples/atelier-bouleau.outerleaf.json" with { type: "json" };
import type { ProjectDocument } from "../../../src/project/schema/project.ts";
import { millimetres } from "./numbers.ts";

export const demo = demoText as unknown as ProjectDocument;

type BuildUp = ProjectDocument["buildUps"][number];
type Layer = BuildUp["layers"][number];
type Cladding = ProjectDocument["claddings"][number];

/** What lies between the sheathing and the battens. */
export type Insulation = "none" | "wool" | "foam" | "foam outside the membrane";

export interface MakesSeed {
  readonly studs: {
    readonly spacing: number;
    readonly firstAt: number;
    readonly width: number;
    readonly depth: number;
    readonly besideOpenings: number;
  };
  readonly bands: readonly boolean[];
  readonly insulation: { readonly kind: Insulation; readonly thickness: number };
  readonly packer: number;
  readonly sheets: {
    readonly thickness: number;
    readonly joint: number;
    readonly lay: "upright" | "lying" | "either";
    readonly size: readonly [number, number];
    readonly trim: number;
  };
  readonly boards: {
    readonly thickness: number;
    readonly widths: readonly number[];
    readonly most: number | null;
    readonly endGap: number;
    readonly longest: number;
    readonly bevelDeg: number;
  };
  readonly clearances: readonly [jamb: number, head: number, sill: number, penetration: number];
}

export const makesSeed: fc.Arbitrary<MakesSeed> = fc.record({
  studs: fc.record({
    spacing: fc.constantFrom(406.4, 450, 600, 609.6, 610),
    firstAt: fc.constantFrom(0, 19, 19, 22.5, 150),
    width: fc.constantFrom(38, 45),
    depth: fc.constantFrom(89, 140, 184),
    besideOpenings: fc.integer({ min: 0, max: 3 }),
  }),
  bands: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
  insulation: fc.record({
    kind: fc.constantFrom<Insulation>("none", "wool", "foam", "foam outside the membrane"),
    thickness: millimetres(25, 160, 1),
  }),
  packer: fc.constantFrom(0, 0, 2, 10),
  sheets: fc.record({
    thickness: fc.constantFrom(6, 8, 12),
    joint: millimetres(4, 12),
    lay: fc.constantFrom("upright", "lying", "either"),
    size: fc.constantFrom([1220, 2440], [1220, 3050], [1200, 2500], [900, 1800]),
    trim: fc.constantFrom(0, 0, 5),
  }),
  boards: fc.record({
    thickness: millimetres(18, 28),
    widths: fc.uniqueArray(millimetres(70, 150), { minLength: 1, maxLength: 3 }),
    most: fc.option(fc.integer({ min: 1, max: 4 })),
    endGap: millimetres(2, 10),
    longest: millimetres(1500, 4200, 10),
    bevelDeg: fc.integer({ min: 0, max: 30 }),
  }),
  clearances: fc.tuple(millimetres(0, 20), millimetres(5, 35), millimetres(5, 35), millimetres(0, 20)),
});

export const BUILD_UP = { boards: "boards", sheets: "sheets", upright: "upright" } as const;

export function buildUpsOf({ insulation, packer }: MakesSeed): BuildUp[] {
  const { kind, thickness } = insulation;
  const membrane: Layer = { kind: "membrane", thickness: 0, lightStable: true };
  const foam: Layer = { kind: "insulation", thickness, material: "foam board", bearing: "firm" };
  const wool: Layer = { kind: "insulation", thickness, material: "mineral wool board", bearing: "soft" };
  const behind: Layer[] =
    kind === "none"
      ? [membrane]
      : kind === "wool"
        ? [wool, membrane]
        : kind === "foam"
          ? [foam, membrane]
          : [membrane, foam];
  const packers: Layer[] = packer > 0 ? [{ kind: "packer", thickness: packer }] : [];
  const screw = kind === "none" ? "batten-100" : "batten-280";
  return [
    {
      id: BUILD_UP.boards,
      battenScrew: screw,
      layers: [...behind, ...packers, { kind: "batten", stock: "b25x64" }],
    },
    {
      id: BUILD_UP.sheets,
      battenScrew: screw,
      layers: [...behind, { kind: "batten", stock: "b38x64" }, { kind: "gasket", thickness: 1 }],
    },
    {
      id: BUILD_UP.upright,
      battenScrew: screw,
      railScrew: "batten-100",
      layers: [...behind, ...packers, { kind: "batten", stock: "b30x64" }, { kind: "rail", stock: "b25x64" }],
    },
  ];
}

export const CLADDING = { boards: "level-boards", sheets: "sheets", upright: "upright-boards" } as const;

export function claddingsOf({ sheets, boards }: MakesSeed): Cladding[] {
  const { thickness, joint, lay } = sheets;
  const { maxEqualWidthsTouching: _most, ...rest } = demoBoards();
  const level: Cladding = {
    ...rest,
    id: CLADDING.boards,
    thickness: boards.thickness,
    widths: [...boards.widths],
    gapBand: [6, 14],
    endGap: boards.endGap,
    maxPieceLength: boards.longest,
    bevelDeg: boards.bevelDeg,
    ...(boards.most !== null && { maxEqualWidthsTouching: boards.most }),
  };
  return [
    { ...demoSheets(), id: CLADDING.sheets, thickness, joint, lay, stock: ["s"] },
    level,
    { ...level, id: CLADDING.upright, direction: "vertical" },
  ];
}

/** The demo's level boards and its sheets, which generated claddings are variants of. */
export function demoBoards(): Extract<Cladding, { kind: "boards" }> {
  const found = demo.claddings.find((one) => one.kind === "boards" && one.direction === "horizontal");
  if (found?.kind !== "boards") throw new Error("the demo has level boards");
  return found;
}

export function demoSheets(): Extract<Cladding, { kind: "sheets" }> {
  const found = demo.claddings.find((one) => one.kind === "sheets");
  if (found?.kind !== "sheets") throw new Error("the demo has sheets");
  return found;
}

export function structureOf({ studs, bands }: MakesSeed): ProjectDocument["structure"] {
  return {
    ...demo.structure,
    studs: { ...demo.structure.studs, ...studs },
    bands: demo.structure.bands.filter((_, i) => bands[i] ?? true),
  };
}

/** Sections of corner posts: thin and thick, too narrow to reach a batten and wide. */
export const POSTS: ProjectDocument["stock"]["battens"] = [
  { id: "post-thin", thickness: 20, width: 90, lengths: [2400] },
  { id: "post-thick", thickness: 60, width: 60, lengths: [3000] },
  { id: "post-wide", thickness: 40, width: 180, lengths: [1200, 3000] },
];

export function stockOf({ sheets }: MakesSeed): ProjectDocument["stock"] {
  const long = demo.stock.screws.find(({ id }) => id === "batten-160");
  if (!long) throw new Error("the demo has a long screw");
  return {
    ...demo.stock,
    battens: [...demo.stock.battens, ...POSTS],
    sheets: [{ id: "s", width: sheets.size[0], height: sheets.size[1] }],
    screws: [...demo.stock.screws, { ...long, id: "batten-280", length: 280 }],
    saw: { ...demo.stock.saw, sheetTrim: sheets.trim },
  };
}

export function limitsOf({ clearances }: MakesSeed): ProjectDocument["limits"] {
  const [jamb, head, sill, penetration] = clearances;
  const given = (value: number) => ({ value, basis: "given" as const });
  return {
    ...demo.limits,
    clearances: {
      jamb: given(jamb),
      head: given(head),
      sill: given(sill),
      penetration: given(penetration),
    },
  };
}
