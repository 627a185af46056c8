/**
 * A small hand-made wall for the rules of proof: one face with a zone of boards and one of sheets, a window in the boards.
 * Nothing of it comes from setting-out, so a rule is tested by what it reads alone.
 */
import { type Demands, demandsOf } from "../../src/codes/demands.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { type ProofContext, proofContext } from "../../src/proof/context.ts";
import {
  type Facade,
  type Fixing,
  type Joint,
  type Piece,
  SQUARE,
  type Vent,
} from "../../src/setout/facade.ts";
import { message } from "../../src/text/message.ts";

type Mutable<T> = T extends object ? { -readonly [Key in keyof T]: Mutable<T[Key]> } : T;

export type MutableFacade = Mutable<Pick<Facade, "planes" | "faces">>;

const box = (x: readonly [number, number], y: readonly [number, number]): [number, number][] => [
  [x[0], y[0]],
  [x[1], y[0]],
  [x[1], y[1]],
  [x[0], y[1]],
];

const why = { rule: message("test") };

function piece(
  fields: Pick<Piece, "mark" | "kind" | "zone" | "outline" | "cut" | "massKg" | "fixings">,
): Piece {
  return {
    ...fields,
    face: "front",
    holes: [],
    z: [0, 20],
    ends: { left: SQUARE, right: SQUARE },
    material: "test",
    why,
    supports: [],
    removeBefore: [],
  };
}

function fixing(fields: Pick<Fixing, "x" | "y" | "kind" | "hole" | "screw" | "into">): Fixing {
  return { ...fields, through: [], bite: 25 };
}

const BATTENS = { boards: [32, 642, 1188], sheets: [1255, 1840, 2425] } as const;

function course({ mark, y, width }: { mark: string; y: number; width: number }): Piece {
  return piece({
    mark,
    kind: "board",
    zone: "boards",
    outline: box([0, 1220], [y, y + width]),
    cut: { length: 1220, width, thickness: 20 },
    massKg: 1.1,
    fixings: BATTENS.boards.map((x, index) =>
      fixing({ x, y: y + width / 2, kind: "plain", hole: 3, screw: "board-45", into: `FB${index}` }),
    ),
  });
}

const THROUGH_SHEET = [
  { what: "sheet", thickness: 8 },
  { what: "gasket", thickness: 1 },
];

function sheet(mark: string, left: number): Piece {
  const xs = BATTENS.sheets.map((x) => x - 1230 + left);
  return piece({
    mark,
    kind: "sheet",
    zone: "sheets",
    outline: box([left, left + 1220], [0, 2440]),
    cut: { length: 2440, width: 1220, thickness: 8 },
    massKg: 41.7,
    fixings: xs.flatMap((x, column) =>
      [70, 650, 1220, 1790, 2370].map((y) => {
        const fixed = column === 1 && y === 1220;
        const screw = fixing({
          x,
          y,
          kind: fixed ? "fixed" : "sliding",
          hole: fixed ? 4.8 : 9.5,
          screw: "sheet-38",
          into: `FS${column}`,
        });
        return { ...screw, through: THROUGH_SHEET, bite: 29 };
      }),
    ),
  });
}

function batten(fields: { mark: string; zone: string; x: number; top: number }): Piece {
  const { mark, zone, x, top } = fields;
  return piece({
    mark,
    kind: "batten",
    zone,
    outline: box([x - 32, x + 32], [0, top]),
    cut: { length: top, width: 64, thickness: zone === "sheets" ? 38 : 25 },
    massKg: 1,
    fixings: [50, 350].map((y) =>
      fixing({ x, y, kind: "plain", hole: 5, screw: "batten-140", into: "stud" }),
    ),
  });
}

const gap = (y: readonly [number, number]): Joint => ({
  kind: "course gap",
  face: "front",
  zone: "boards",
  region: box([0, 1220], y),
  holes: [],
  width: y[1] - y[0],
  along: "x",
});

const vent = (fields: Pick<Vent, "zone" | "position" | "x" | "y">): Vent => ({
  face: "front",
  closure: "3-0.5",
  grossCm2PerM: 242,
  netCm2PerM: 178,
  ...fields,
});

function facade(): Facade {
  return {
    rods: [],
    steps: [],
    findings: [],
    planes: [
      { face: "front", zone: "boards", layers: [], faceZ: 98, backZ: 78, cavity: 27 },
      { face: "front", zone: "sheets", layers: [], faceZ: 98, backZ: 90, cavity: 39 },
    ],
    faces: [
      {
        id: "front",
        code: "W",
        frame: { origin: [0, 0], along: [1, 0], outward: [0, -1] },
        azimuthDeg: 180,
        outline: box([0, 3678], [0, 2440]),
        ground: [
          [0, -300],
          [3678, -300],
        ],
        openings: [],
        zones: [
          { id: "boards", cladding: "boards", buildUp: "wool", region: box([0, 1220], [0, 2440]) },
          { id: "sheets", cladding: "sheets", buildUp: "bare", region: box([1230, 3678], [0, 2440]) },
        ],
        clearances: [],
        solids: [],
        controlLines: [],
        pieces: [
          course({ mark: "F1", y: 0, width: 126 }),
          course({ mark: "F2", y: 135, width: 94 }),
          course({ mark: "F3", y: 238, width: 126 }),
          sheet("F11", 1230),
          sheet("F12", 2458),
          ...BATTENS.boards.map((x, index) => batten({ mark: `FB${index}`, zone: "boards", x, top: 400 })),
          ...BATTENS.sheets.map((x, index) => batten({ mark: `FS${index}`, zone: "sheets", x, top: 400 })),
        ],
        joints: [
          gap([126, 135]),
          gap([229, 238]),
          {
            kind: "sheet joint",
            face: "front",
            zone: "sheets",
            region: box([2450, 2458], [0, 2440]),
            holes: [],
            width: 8,
            along: "y",
          },
        ],
        vents: [
          vent({ zone: "boards", position: "base", x: [0, 1220], y: 0 }),
          vent({ zone: "boards", position: "top", x: [0, 1220], y: 2440 }),
          vent({ zone: "boards", position: "under opening", x: [290, 910], y: 980 }),
          vent({ zone: "boards", position: "over opening", x: [290, 910], y: 1622 }),
          vent({ zone: "sheets", position: "base", x: [1230, 3678], y: 0 }),
          vent({ zone: "sheets", position: "top", x: [1230, 3678], y: 2440 }),
        ],
      },
    ],
  };
}

function project(): Project {
  const given = (value: number) => ({ value, basis: "given" as const });
  const batten64 = { width: 64, lengths: [3050] };
  return {
    schemaVersion: 1,
    title: "Proof wall",
    display: { units: "mm", denominator: 16, language: "en" },
    site: {
      place: "Nowhere",
      latitudeDeg: 46,
      longitudeDeg: -71,
      jurisdiction: "canada",
      climate: {
        meanTempC: {
          values: [-12, -11, -4, 3, 11, 16, 19, 18, 12, 6, -1, -9],
          basis: "given",
        },
        meanRelativeHumidityPercent: {
          values: [72, 71, 69, 65, 60, 68, 71, 73, 75, 74, 80, 76],
          basis: "given",
        },
        snowDepthMm: { values: [200, 250, 100, 0, 0, 0, 0, 0, 0, 0, 20, 90], basis: "given" },
        extremeTempC: { values: [-36, 35], basis: "given" },
      },
      weeksUncovered: 6,
    },
    structure: {
      sheathingThickness: 11,
      studs: { width: 38, depth: 140, spacing: 610, firstAt: 19, species: "S-P-F", besideOpenings: 2 },
      bands: [],
    },
    buildUps: [
      {
        id: "wool",
        battenScrew: "batten-140",
        layers: [
          { kind: "insulation", thickness: 51, material: "mineral wool", bearing: "soft" },
          { kind: "membrane", thickness: 0, lightStable: true },
          { kind: "packer", thickness: 2 },
          { kind: "batten", stock: "b25" },
        ],
      },
      {
        id: "bare",
        battenScrew: "batten-140",
        layers: [
          { kind: "membrane", thickness: 0, lightStable: true },
          { kind: "batten", stock: "b38" },
        ],
      },
    ],
    claddings: [
      {
        id: "boards",
        kind: "boards",
        direction: "horizontal",
        species: "northern white cedar",
        thickness: 20,
        bevelDeg: 15,
        widths: [94, 126],
        gapBand: [6, 12],
        endGap: 8,
        maxPieceLength: 3000,
        lots: ["A", "C"],
        screw: "board-45",
        twoScrewsFrom: given(100),
        endDistance: given(20),
        edgeDistance: given(20),
        maxOverhang: given(150),
        moisturePercent: { atFixing: 15 },
        finish: "charred and oiled",
      },
      {
        id: "sheets",
        kind: "sheets",
        material: "fibre cement",
        thickness: 8,
        joint: 8,
        stock: ["s2440"],
        screw: "sheet-38",
        dataSheet: {
          basis: "given",
          densityKgM3: 1750,
          thermalPerK: 1e-5,
          moistureMmPerM: 1,
          edgeDistance: [25, 70],
          cornerDistance: 50,
          fixingSpacing: [200, 600],
          maxBattenSpacing: 610,
          minJoint: 6,
        },
      },
    ],
    limits: {
      clearances: { jamb: given(10), head: given(22), sill: given(20), penetration: given(10) },
      cavityMin: given(10),
      facesMeetWithin: given(1),
      sliver: { wish: given(0.5), floor: given(0.3333) },
      screwBite: { cladding: given(25), studs: given(38) },
      membrane: { maxGap: given(30), maxOpenPercent: given(20), maxWeeksUncovered: given(12) },
    },
    faces: [
      {
        id: "front",
        azimuthDeg: 180,
        plan: { from: [0, 0], to: [3678, 0] },
        outline: box([0, 3678], [0, 2440]),
        ground: [
          [0, -300],
          [3678, -300],
        ],
        toBoundary: 9000,
        frameProjection: 85,
        openings: [{ id: "W1", kind: "window", x: [300, 900], y: [1000, 1600] }],
        zones: [
          { id: "boards", cladding: "boards", buildUp: "wool", x: ["left end", 1220] },
          { id: "sheets", cladding: "sheets", buildUp: "bare", x: [1230, "right end"] },
        ],
      },
    ],
    stock: {
      currency: "CAD",
      sheets: [{ id: "s2440", width: 1220, height: 2440 }],
      battens: [
        { id: "b25", thickness: 25, ...batten64 },
        { id: "b38", thickness: 38, ...batten64 },
      ],
      packers: [2],
      screws: [
        { id: "sheet-38", use: "sheet", diameter: 4.8, headDiameter: 16, length: 38 },
        { id: "board-45", use: "board", diameter: 4.5, headDiameter: 8, length: 45 },
        { id: "batten-140", use: "batten", diameter: 6, headDiameter: 12, length: 140 },
      ],
      saw: { kerf: 3, sheetTrim: 0, boardEndTrim: 10, boardEdgeTrim: 3 },
    },
    pile: {
      lots: [
        { id: "A", from: "a shed", species: "quaking aspen" },
        { id: "C", from: "a loft", species: "northern white cedar" },
      ],
      boards: [
        { id: "A1", lot: "A", length: 2400, width: 150, thickness: 24, defects: [] },
        { id: "C1", lot: "C", length: 2400, width: 150, thickness: 24, defects: [] },
      ],
    },
  };
}

export interface Changes {
  /** Changes the project before its demands are worked out. */
  readonly project?: (project: Project) => void;
  readonly facade?: (facade: MutableFacade) => void;
  readonly demands?: Partial<Demands>;
}

/** The context of the wall, changed as a test needs it. */
export function proofFixture(changes: Changes = {}): ProofContext {
  const changedProject = project();
  changes.project?.(changedProject);
  const changedFacade = facade();
  // Made anew for this call, so nobody else sees it change; findings' messages would make the type endless.
  changes.facade?.(changedFacade as unknown as MutableFacade);
  return proofContext({
    project: changedProject,
    facade: changedFacade,
    demands: { ...demandsOf(changedProject), ...changes.demands },
  });
}

/** The board cladding of the wall's project. */
export function boardsOf({ claddings }: Project): Extract<Project["claddings"][number], { kind: "boards" }> {
  const found = claddings.find((cladding) => cladding.kind === "boards");
  if (!found) throw new Error("the wall has boards");
  return found;
}

/** The sheet cladding of the wall's project. */
export function sheetsOf({ claddings }: Project): Extract<Project["claddings"][number], { kind: "sheets" }> {
  const found = claddings.find((cladding) => cladding.kind === "sheets");
  if (!found) throw new Error("the wall has sheets");
  return found;
}
