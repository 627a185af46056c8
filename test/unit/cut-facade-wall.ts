/** A wall of a few pieces put together by hand, so that what is sawn from what can be worked out on paper. */
import { readFileSync } from "node:fs";
import { readProject } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { type Facade, type Fixing, type Piece, SQUARE } from "../../src/setout/facade.ts";
import { message } from "../../src/text/message.ts";

type Boards = Extract<Project["claddings"][number], { kind: "boards" }>;
type Sheets = Extract<Project["claddings"][number], { kind: "sheets" }>;

function demo(): Project {
  const url = new URL("../../examples/atelier-bouleau.outerleaf.json", import.meta.url);
  const result = readProject(readFileSync(url, "utf8"), "demo");
  if (!result.ok) throw new Error("the demo cannot be read");
  return result.project;
}

export interface Wall {
  readonly stock?: Partial<Project["stock"]>;
  readonly boards?: Partial<Boards>;
  readonly sheets?: Partial<Sheets>;
  readonly pile?: Project["pile"];
}

/**
 * One sheet 1220 × 2440 at 100; battens 25 × 64 in 2440 at 2 a metre; kerf 3, boards trimmed 10 at ends and 3 at edges; no
 * pile, one lot A of cedar named by the boards.
 */
export function wallProject({ stock, boards, sheets, pile }: Wall = {}): Project {
  const { pile: _pile, ...project } = structuredClone(demo());
  return {
    ...project,
    claddings: project.claddings.map((one) =>
      one.kind === "boards" ? { ...one, lots: ["A"], ...boards } : { ...one, stock: ["s2440"], ...sheets },
    ),
    stock: {
      ...project.stock,
      sheets: [{ id: "s2440", width: 1220, height: 2440, price: 100 }],
      battens: [{ id: "b25x64", thickness: 25, width: 64, lengths: [2440], pricePerM: 2 }],
      saw: { kerf: 3, sheetTrim: 0, boardEndTrim: 10, boardEdgeTrim: 3 },
      ...stock,
    },
    ...(pile ? { pile } : {}),
  };
}

type PileBoards = NonNullable<Project["pile"]>["boards"];

export function pileOf(boards: readonly Partial<PileBoards[number]>[]): NonNullable<Project["pile"]> {
  return {
    lots: [
      { id: "A", from: "a floor", species: "northern-white-cedar" },
      { id: "B", from: "a shed", species: "white-spruce" },
    ],
    boards: boards.map((one, i) => ({
      id: `A${i + 1}`,
      lot: "A",
      length: 2000,
      width: 100,
      thickness: 22,
      defects: [],
      ...one,
    })),
  };
}

export function pieceOf(
  mark: string,
  kind: Piece["kind"],
  cut: Piece["cut"],
  more: Partial<Piece> = {},
): Piece {
  return {
    mark,
    kind,
    face: "front",
    zone: kind === "board" ? "boards" : "sheets",
    outline: [
      [0, 0],
      [cut.width, 0],
      [cut.width, cut.length],
      [0, cut.length],
    ],
    holes: [],
    z: [0, cut.thickness],
    ends: { left: SQUARE, right: SQUARE },
    material: kind === "board" ? "northern-white-cedar" : "spruce-pine-fir",
    cut,
    massKg: 1,
    why: { rule: message("setout.why.gasket") },
    supports: [],
    removeBefore: [],
    fixings: [],
    ...more,
  };
}

export function sheet(mark: string, width: number, length: number, more: Partial<Piece> = {}): Piece {
  return pieceOf(mark, "sheet", { length, width, thickness: 8 }, { stock: "s2440", ...more });
}

export function batten(mark: string, length: number, more: Partial<Piece> = {}): Piece {
  return pieceOf(mark, "batten", { length, width: 64, thickness: 25 }, { stock: "b25x64", ...more });
}

export function board(mark: string, length: number, width = 94): Piece {
  return pieceOf(mark, "board", { length, width, thickness: 20 });
}

export function screws(screw: string, count: number): Fixing[] {
  return Array.from(
    { length: count },
    (_, i): Fixing => ({
      x: i,
      y: 0,
      kind: "plain",
      screw,
      hole: 5,
      into: "stud 1",
      through: [],
      bite: 30,
    }),
  );
}

/** A face 3 m wide and 2 m high; boards on its left metre, sheets with a 1 m square window on the rest. */
export function wallFacade(pieces: readonly Piece[]): Facade {
  const zone = (id: string, cladding: string, x: readonly [number, number]) => ({
    id,
    cladding,
    buildUp: "bare-sheets",
    region: [
      [x[0], 0],
      [x[1], 0],
      [x[1], 2000],
      [x[0], 2000],
    ] as const,
  });
  return {
    faces: [
      {
        id: "front",
        code: "W",
        frame: { origin: [0, 0], along: [1, 0], outward: [0, -1] },
        azimuthDeg: 180,
        outline: [],
        ground: [],
        openings: [{ id: "W1", kind: "window", region: { x: [1500, 2500], y: [500, 1500] } }],
        zones: [zone("boards", "charred-boards", [0, 1000]), zone("sheets", "grey-sheets", [1000, 3000])],
        clearances: [],
        solids: [],
        pieces,
        joints: [],
        controlLines: [],
        vents: [],
      },
    ],
    rods: [],
    planes: [],
    steps: [],
    findings: [],
  };
}
