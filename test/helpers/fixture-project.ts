/** A small invented building for drawings: two faces, boards beside sheets, one plane. */
import { type Project, type ProjectDocument, project } from "../../src/project/schema/project.ts";

const given = (value: number) => ({ value, basis: "given" as const });

const DOCUMENT: ProjectDocument = {
  schemaVersion: 1,
  title: "Garden pavilion",
  revision: "B, not issued",
  display: { units: "mm", denominator: 16, language: "en" },
  site: { place: "an invented garden", latitudeDeg: 46.8, longitudeDeg: -71.4, jurisdiction: "canada" },
  structure: {
    sheathingThickness: 11,
    studs: { width: 38, depth: 140, spacing: 610, firstAt: 19, species: "S-P-F", besideOpenings: 2 },
    bands: [
      { kind: "rim", y: [-285, 0] },
      { kind: "bottom plate", y: [0, 38] },
      { kind: "top plates", belowTop: 76 },
      { kind: "header", aboveOpening: 184 },
    ],
  },
  buildUps: [
    {
      id: "boards-on-wool",
      battenScrew: "S160",
      layers: [
        { kind: "insulation", thickness: 51, material: "mineral wool", bearing: "soft" },
        { kind: "membrane", thickness: 1, lightStable: true },
        { kind: "batten", stock: "B30" },
      ],
    },
    {
      id: "sheets-on-wool",
      battenScrew: "S160",
      layers: [
        { kind: "insulation", thickness: 51, material: "mineral wool", bearing: "soft" },
        { kind: "membrane", thickness: 1, lightStable: true },
        { kind: "packer", thickness: 3 },
        { kind: "batten", stock: "B38" },
        { kind: "gasket", thickness: 1 },
      ],
    },
  ],
  claddings: [
    {
      id: "open-boards",
      kind: "boards",
      direction: "horizontal",
      species: "white spruce",
      thickness: 20,
      bevelDeg: 15,
      widths: [94, 126],
      gapBand: [6, 12],
      endGap: 8,
      maxPieceLength: 3660,
      screw: "S45",
      twoScrewsFrom: given(100),
      endDistance: given(20),
      edgeDistance: given(20),
      maxOverhang: given(100),
    },
    {
      id: "cement-sheets",
      kind: "sheets",
      material: "fibre cement",
      thickness: 8,
      joint: 8,
      stock: ["P2440"],
      screw: "S38",
      dataSheet: {
        basis: "given",
        densityKgM3: 1750,
        thermalPerK: 1e-5,
        moistureMmPerM: 1,
        edgeDistance: [25, 70],
        cornerDistance: 50,
        fixingSpacing: [200, 600],
        maxBattenSpacing: 610,
        minJoint: 8,
      },
    },
  ],
  limits: {
    clearances: { jamb: given(10), head: given(22), sill: given(20), penetration: given(10) },
    cavityMin: given(10),
    facesMeetWithin: given(1),
    sliver: { wish: given(0.5), floor: given(0.33) },
    screwBite: { cladding: given(25), studs: given(38) },
  },
  faces: [
    {
      id: "west",
      azimuthDeg: 262,
      plan: { from: [0, 3000], to: [0, 0] },
      outline: [
        [0, -50],
        [3000, -50],
        [3000, 2450],
        [0, 2050],
      ],
      ground: [
        [0, -350],
        [3000, -300],
      ],
      frameProjection: 71,
      openings: [{ id: "W1", kind: "window", x: [900, 1500], y: [700, 1500] }],
      penetrations: [{ id: "P1", kind: "duct", x: 2250, y: 1820, diameter: 160 }],
      zones: [
        { id: "boards", cladding: "open-boards", buildUp: "boards-on-wool", x: ["left end", "right end"] },
      ],
    },
    {
      id: "front",
      azimuthDeg: 172,
      plan: { from: [0, 0], to: [4200, 0] },
      outline: [
        [0, -50],
        [4200, -50],
        [4200, 2450],
        [0, 2450],
      ],
      ground: [
        [0, -300],
        [4200, -300],
      ],
      frameProjection: 71,
      openings: [
        { id: "W2", kind: "window", x: [400, 1000], y: [700, 1500] },
        { id: "D1", kind: "door", x: [2200, 3100], y: [0, 2100], toBase: true },
      ],
      zones: [
        { id: "boards", cladding: "open-boards", buildUp: "boards-on-wool", x: ["left end", 1400] },
        { id: "sheets", cladding: "cement-sheets", buildUp: "sheets-on-wool", x: [1410, "right end"] },
      ],
    },
  ],
  stock: {
    currency: "CAD",
    sheets: [{ id: "P2440", width: 1220, height: 2440 }],
    battens: [
      { id: "B30", thickness: 30, width: 64, lengths: [2440, 3050] },
      { id: "B38", thickness: 38, width: 64, lengths: [2440, 3050] },
    ],
    packers: [1, 2, 3, 5],
    screws: [
      { id: "S38", use: "sheet", diameter: 4.8, headDiameter: 16, length: 38 },
      { id: "S45", use: "board", diameter: 4.5, headDiameter: 8, length: 45 },
      { id: "S160", use: "batten", diameter: 6, headDiameter: 12, length: 160 },
    ],
    saw: { kerf: 3, sheetTrim: 5, boardEndTrim: 10, boardEdgeTrim: 2 },
  },
};

export function fixtureProject(): Project {
  return project.parse(DOCUMENT);
}
