/** The project that `outerleaf new` writes: one face, one window, sheets on battens; its notes explain the fields. */
import type { ProjectDocument } from "./schema/project.ts";
import { SCHEMA_VERSION } from "./schema/version.ts";

/** A small project that reads without a finding. Its figures are typical of their kind, and say so. */
export function starterProject(): ProjectDocument {
  return {
    schemaVersion: SCHEMA_VERSION,
    title: "One wall",
    about:
      "A starting point: one wall with a window, clad in sheets. Change it step by step and check it as you go.",
    note: "Lengths are millimetres, or text with a unit such as 3'-4 1/2\", 40 1/2 in or 95.5 cm. A note may stand in every part of this file. Each limit says where it comes from: given (yours, or a data sheet's), typical, or memory.",
    revision: "A, not issued",
    display: {
      note: "units: mm or feet-inch. denominator: 16 or 32 parts of an inch. language: en or fr.",
      units: "mm",
      denominator: 16,
      language: "en",
    },
    site: {
      note: "jurisdiction says which family of published rules is shown first.",
      place: "Your place",
      latitudeDeg: 46.8,
      longitudeDeg: -71.4,
      jurisdiction: "other",
    },
    structure: starterStructure(),
    buildUps: [
      {
        id: "wall",
        note: "Layers from the sheathing outward. battenScrew holds the battens to the studs.",
        battenScrew: "batten-100",
        layers: [
          { kind: "membrane", thickness: 0, lightStable: true },
          { kind: "batten", stock: "b38x64" },
          { kind: "gasket", thickness: 1 },
        ],
      },
      {
        id: "wall-boards",
        note: "Brings boards of 20 mm into one plane with the sheets: 2 + 25 + 20 is 38 + 1 + 8.",
        battenScrew: "batten-100",
        layers: [
          { kind: "membrane", thickness: 0, lightStable: true },
          { kind: "packer", thickness: 2 },
          { kind: "batten", stock: "b25x64" },
        ],
      },
    ],
    claddings: [starterSheets(), starterBoards()],
    limits: starterLimits(),
    faces: [starterFace()],
    stock: {
      note: "What can be bought. Prices are optional, in the currency named.",
      currency: "CAD",
      sheets: [{ id: "s2440", width: 1220, height: 2440 }],
      battens: [
        { id: "b38x64", thickness: 38, width: 64, lengths: [2440, 3050, 3660] },
        { id: "b25x64", thickness: 25, width: 64, lengths: [2440, 3050, 3660] },
      ],
      packers: [1, 2, 3, 5],
      screws: [
        { id: "sheet-38", use: "sheet", diameter: 4.8, headDiameter: 16, length: 38 },
        { id: "board-45", use: "board", diameter: 4.5, headDiameter: 8, length: 45 },
        { id: "batten-100", use: "batten", diameter: 6, headDiameter: 12, length: 100 },
      ],
      saw: { kerf: 3, sheetTrim: 0, boardEndTrim: 10, boardEdgeTrim: 3 },
    },
  };
}

function starterStructure(): ProjectDocument["structure"] {
  return {
    note: "Studs are measured from each face's left end to the first stud's centre. bands are the solid timbers between them.",
    sheathingThickness: 11,
    studs: { width: 38, depth: 140, spacing: 610, firstAt: 19, species: "S-P-F", besideOpenings: 2 },
    bands: [
      { kind: "bottom plate", y: [0, 38] },
      { kind: "top plates", belowTop: 76 },
      { kind: "header", aboveOpening: 184 },
    ],
  };
}

function starterSheets(): ProjectDocument["claddings"][number] {
  return {
    id: "sheets",
    note: "Replace the dataSheet by the figures of the sheet that you buy, and its basis by given.",
    kind: "sheets",
    material: "fibre cement without wood fibre",
    thickness: 8,
    joint: 8,
    stock: ["s2440"],
    screw: "sheet-38",
    dataSheet: {
      basis: "typical",
      densityKgM3: 1750,
      thermalPerK: 1e-5,
      moistureMmPerM: 1,
      edgeDistance: [25, 70],
      cornerDistance: 50,
      fixingSpacing: [200, 600],
      maxBattenSpacing: 610,
      minJoint: 8,
    },
  };
}

function starterBoards(): ProjectDocument["claddings"][number] {
  const common = { basis: "typical", source: "common practice" } as const;
  return {
    id: "boards",
    note: "Level boards with open joints. widths are the finished widths that the courses are made up of; gapBand is the least and the most gap between them, the same throughout a wall.",
    kind: "boards",
    direction: "horizontal",
    species: "northern-white-cedar",
    thickness: 20,
    bevelDeg: 15,
    widths: [90, 120],
    gapBand: [6, 12],
    endGap: 8,
    maxPieceLength: 3000,
    screw: "board-45",
    twoScrewsFrom: { value: 100, ...common },
    endDistance: { value: 20, ...common },
    edgeDistance: { value: 20, ...common },
    maxOverhang: { value: 150, ...common },
    moisturePercent: { atFixing: 15 },
  };
}

function starterLimits(): ProjectDocument["limits"] {
  const common = { basis: "typical", source: "common practice" } as const;
  return {
    note: "clearances are kept free round openings. A sliver is a piece under the floor, and under the wish where it can be helped: shares of a full sheet.",
    clearances: {
      jamb: { value: 10, ...common },
      head: { value: 20, ...common },
      sill: { value: 20, ...common },
      penetration: { value: 10, ...common },
    },
    cavityMin: { value: 10, ...common },
    facesMeetWithin: { value: 1, ...common },
    sliver: { wish: { value: 0.5, ...common }, floor: { value: 0.3333, ...common } },
    screwBite: { cladding: { value: 25, ...common }, studs: { value: 38, ...common } },
  };
}

function starterFace(): ProjectDocument["faces"][number] {
  return {
    id: "front",
    note: "x runs to the right seen from outside, y up from the datum; here the datum is the floor. plan is the sheathing's outer line seen from above, from its left end to its right end. outline is what is to be clad.",
    azimuthDeg: 180,
    plan: { from: [0, 0], to: [4800, 0] },
    outline: [
      [0, -50],
      [4800, -50],
      [4800, 2500],
      [0, 2500],
    ],
    ground: [
      [0, -350],
      [4800, -350],
    ],
    openings: [{ id: "W1", kind: "window", x: [1800, 3000], y: [900, 2100], frameProjection: 20 }],
    zones: [
      {
        id: "sheets",
        note: "A zone is a part of the face with one cladding and one build-up.",
        cladding: "sheets",
        buildUp: "wall",
        x: ["left end", "right end"],
      },
    ],
  };
}
