/**
 * A facade set out by hand for the project of `fixture-project.ts`, so that drawings can be tried apart from
 * setting-out. Its arithmetic is simple on purpose: it shows every kind of piece, it proves nothing.
 */
import { finding } from "../../src/findings/finding.ts";
import { faceFrame } from "../../src/geometry/frame.ts";
import type { Interval } from "../../src/geometry/interval.ts";
import { circumscribed, type Polygon, polygonBounds, polygonContains } from "../../src/geometry/polygon.ts";
import { type Rect, rectOutline } from "../../src/geometry/rect.ts";
import { intersect, subtract } from "../../src/geometry/region.ts";
import type { Face, Project } from "../../src/project/schema/project.ts";
import {
  type ControlLine,
  type Facade,
  type FaceLayout,
  type Fixing,
  type Joint,
  type Piece,
  type PieceKind,
  type PlacedLayer,
  type RodCourse,
  type RodSegmentResult,
  type Solid,
  SQUARE,
  type ZoneLayout,
  type ZonePlane,
} from "../../src/setout/facade.ts";
import { message } from "../../src/text/message.ts";
import { fixtureProject } from "./fixture-project.ts";

const REACH = 98;
const HEAD = 22;
const SILL = 20;
const JAMB = 10;

const BOARD_LAYERS: readonly PlacedLayer[] = [
  { kind: "insulation", z: [0, 51], material: "mineral wool" },
  { kind: "membrane", z: [51, 52] },
  { kind: "batten", z: [52, 82], stock: "B30" },
  { kind: "cladding", z: [82, 102], material: "white spruce" },
];
const SHEET_LAYERS: readonly PlacedLayer[] = [
  { kind: "insulation", z: [0, 51], material: "mineral wool" },
  { kind: "membrane", z: [51, 52] },
  { kind: "packer", z: [52, 55] },
  { kind: "batten", z: [55, 93], stock: "B38" },
  { kind: "gasket", z: [93, 94] },
  { kind: "cladding", z: [94, 102], material: "fibre cement" },
];

/** Segments of the storey rod: 730 = 692 + 5 · 7.6, 842 = 786 + 7 · 8, 928 = 880 + 8 · 6. */
const SEGMENTS: readonly { from: number; to: number; start: boolean; gap: number; widths: number[] }[] = [
  { from: -50, to: 680, start: false, gap: 7.6, widths: [126, 126, 94, 126, 94, 126] },
  { from: 680, to: 1522, start: true, gap: 8, widths: [94, 126, 126, 94, 126, 126, 94] },
  { from: 1522, to: 2450, start: true, gap: 6, widths: [126, 94, 126, 94, 126, 94, 126, 94] },
];

function rodSegments(): RodSegmentResult[] {
  return SEGMENTS.map(({ from, to, start, gap, widths }, s): RodSegmentResult => {
    let y = from + (start ? gap : 0);
    const courses = widths.map((width, i): RodCourse => {
      const course = { number: (s + 1) * 100 + i + 1, from: y, to: y + width, width };
      y += width + gap;
      return course;
    });
    return { segment: `s${s + 1}`, from, to, endGaps: { start, end: false }, gap, courses };
  });
}

const rect = (x: Interval, y: Interval): Polygon => rectOutline({ x, y });

function piece(
  fields: Pick<Piece, "mark" | "kind" | "face" | "outline" | "z" | "material"> & Partial<Piece>,
): Piece {
  const box = polygonBounds(fields.outline);
  return {
    holes: [],
    ends: { left: SQUARE, right: SQUARE },
    cut: {
      length: box.x[1] - box.x[0],
      width: box.y[1] - box.y[0],
      thickness: fields.z[1] - fields.z[0],
    },
    massKg: 1,
    why: { rule: message("drawing.length", { value: 0 }) },
    supports: [],
    removeBefore: [],
    fixings: [],
    ...fields,
  };
}

function fixing(x: number, y: number, kind: Fixing["kind"]): Fixing {
  const sheet = kind !== "plain";
  return {
    x,
    y,
    kind,
    screw: sheet ? "S38" : "S45",
    hole: kind === "sliding" ? 8 : 5,
    into: "batten",
    through: [{ what: sheet ? "sheet" : "board", thickness: sheet ? 8 : 20 }],
    bite: sheet ? 29 : 25,
  };
}

function clearRects(face: Face): Polygon[] {
  return face.openings.map(({ x, y, toBase }) =>
    rect([x[0] - JAMB, x[1] + JAMB], [toBase ? -50 : y[0] - SILL, y[1] + HEAD]),
  );
}

function ductHoles(face: Face): Polygon[] {
  return (face.penetrations ?? []).map(({ x, y, diameter }) =>
    circumscribed({ centre: [x, y], radius: diameter / 2 + 10, sides: 24 }),
  );
}

function battenCentres(face: Face, x: Interval): number[] {
  const length = polygonBounds(face.outline).x[1];
  const studs = [19];
  for (let at = 610; at < length - 100; at += 610) studs.push(at);
  studs.push(length - 19);
  const jambs = face.openings.flatMap((opening) => [opening.x[0] - 45, opening.x[1] + 45]);
  return [...new Set([...studs, ...jambs])].filter((at) => at > x[0] && at < x[1]).sort((a, b) => a - b);
}

function boardsOf({ face, x, prefix }: { face: Face; x: Interval; prefix: string }): Piece[] {
  const region = zoneRegion(face, x);
  const battens = battenCentres(face, x);
  return rodSegments().flatMap(({ courses }) =>
    courses.flatMap((course) => {
      const band = intersect(region, rect(x, [course.from, course.to])).flatMap((part) =>
        subtract(part.outline, [...clearRects(face), ...ductHoles(face)]),
      );
      return band.map(({ outline }, i): Piece => {
        const box = polygonBounds(outline);
        const y = (box.y[0] + box.y[1]) / 2;
        return piece({
          mark: `${prefix}${course.number}${String.fromCharCode(97 + i)}`,
          kind: "board",
          face: face.id,
          zone: "boards",
          course: course.number,
          outline,
          z: [82, 102],
          material: "white spruce",
          bevelDeg: 15,
          grain: "x",
          fixings: battens
            .filter((at) => at > box.x[0] + 15 && at < box.x[1] - 15)
            .flatMap((at) =>
              course.width > 100
                ? [fixing(at, y - 31, "plain"), fixing(at, y + 31, "plain")]
                : [fixing(at, y, "plain")],
            )
            .filter((one) => polygonContains(outline, [one.x, one.y])),
        });
      });
    }),
  );
}

function sheetsOf(face: Face): Piece[] {
  const columns: { mark: string; x: Interval; y: Interval }[] = [
    { mark: "F1", x: [1410, 2190], y: [-50, 2114] },
    { mark: "F2", x: [3110, 4200], y: [-50, 2114] },
    { mark: "Fu1", x: [1410, 2190], y: [2122, 2450] },
    { mark: "Fu2", x: [2198, 3102], y: [2122, 2450] },
    { mark: "Fu3", x: [3110, 4200], y: [2122, 2450] },
  ];
  return columns.map(({ mark, x, y }): Piece => {
    const xs = [x[0] + 32, (x[0] + x[1]) / 2, x[1] - 32];
    const rows = Math.max(1, Math.round((y[1] - y[0] - 100) / 500));
    const fixings = xs.flatMap((fx, c) =>
      Array.from({ length: rows + 1 }, (_, r): Fixing => {
        const fy = y[0] + 50 + (r * (y[1] - y[0] - 100)) / rows;
        return fixing(fx, fy, c === 1 && r === Math.floor(rows / 2) ? "fixed" : "sliding");
      }),
    );
    return piece({
      mark,
      kind: "sheet",
      face: face.id,
      zone: "sheets",
      outline: rect(x, y),
      z: [94, 102],
      material: "fibre cement",
      grain: "y",
      fixings,
    });
  });
}

function battensOf({ face, x, z, zone }: { face: Face; x: Interval; z: Interval; zone: string }): Piece[] {
  const region = zoneRegion(face, x);
  return battenCentres(face, x).flatMap((at, i) =>
    intersect(region, rect([at - 32, at + 32], [-50, 3000]))
      .flatMap((part) => subtract(part.outline, clearRects(face)))
      .map(({ outline }, k): Piece => {
        const box = polygonBounds(outline);
        return piece({
          mark: `${face.id.slice(0, 1).toUpperCase()}${zone.slice(0, 1)}L${i + 1}${"abc"[k] ?? ""}`,
          kind: "batten" satisfies PieceKind,
          face: face.id,
          zone,
          outline,
          z,
          material: "S-P-F",
          stock: z[1] - z[0] === 30 ? "B30" : "B38",
          fixings: [box.y[0] + 80, (box.y[0] + box.y[1]) / 2, box.y[1] - 80].map((y) => ({
            ...fixing(at, y, "plain"),
            screw: "S160",
          })),
        });
      }),
  );
}

function trimOf({ face, x, z, zone }: { face: Face; x: Interval; z: Interval; zone: string }): Piece[] {
  const heads = face.openings.filter((opening) => opening.x[0] >= x[0] && opening.x[1] <= x[1]);
  const base = subtract(
    rect(x, [-50, -48]),
    clearRects(face).filter((clear) => polygonBounds(clear).y[0] <= -50),
  );
  return [
    ...base.map(({ outline }, i) =>
      piece({
        mark: `${face.id}-${zone}-C${i + 1}`,
        kind: "closure",
        face: face.id,
        zone,
        outline,
        z,
        material: "stainless mesh",
      }),
    ),
    ...heads.map((opening) =>
      piece({
        mark: `${face.id}-${zone}-T-${opening.id}`,
        kind: "flashing",
        face: face.id,
        zone,
        outline: rect([opening.x[0] - JAMB, opening.x[1] + JAMB], [opening.y[1] + 2, opening.y[1] + 5]),
        z: [52, 112],
        material: "steel",
      }),
    ),
  ];
}

function zoneRegion(face: Face, x: Interval): Polygon {
  const top = face.id === "west" ? (at: number) => 2050 + (at / 3000) * 400 : () => 2450;
  return [
    [x[0], -50],
    [x[1], -50],
    [x[1], top(x[1])],
    [x[0], top(x[0])],
  ];
}

function solidsOf(face: Face): Solid[] {
  const length = polygonBounds(face.outline).x[1];
  const z: Interval = [-151, -11];
  const solid = (id: string, kind: Solid["kind"], region: Rect): Solid => ({
    id,
    kind,
    region: rectOutline(region),
    z,
  });
  const centres = battenCentres(face, [0, length]).filter(
    (at) => !face.openings.some(({ x }) => at + 19 > x[0] && at - 19 < x[1]),
  );
  const clearStuds = centres.map((at, i) =>
    solid(`stud-${i}`, "stud", { x: [at - 19, at + 19], y: [38, face.id === "west" ? 1974 : 2374] }),
  );
  return [
    solid("rim", "rim", { x: [0, length], y: [-285, 0] }),
    solid("plate", "bottom plate", { x: [0, length], y: [0, 38] }),
    ...clearStuds,
    ...face.openings.map((opening) =>
      solid(`header-${opening.id}`, "header", { x: opening.x, y: [opening.y[1], opening.y[1] + 184] }),
    ),
  ];
}

function controlLinesOf(face: Face): ControlLine[] {
  const horizontal = (
    kind: ControlLine["kind"],
    at: number,
    rank: ControlLine["rank"],
    of?: string,
  ): ControlLine => ({
    id: `${face.id}-${kind}-${of ?? ""}`,
    face: face.id,
    direction: "horizontal",
    at,
    kind,
    rank,
    ...(of ? { of } : {}),
  });
  const length = polygonBounds(face.outline).x[1];
  const vertical = (kind: ControlLine["kind"], at: number): ControlLine => ({
    ...horizontal(kind, at, "primary"),
    id: `${face.id}-${kind}-${at}`,
    direction: "vertical",
  });
  return [
    horizontal("base", -50, "primary"),
    ...face.openings.flatMap((opening) => [
      ...(opening.toBase ? [] : [horizontal("sill", opening.y[0] - SILL, "primary", opening.id)]),
      horizontal("head", opening.y[1] + HEAD, "primary", opening.id),
    ]),
    horizontal("top", 2450, "primary"),
    vertical("corner", 0),
    vertical("corner", length),
    ...(face.id === "front" ? [vertical("junction", 1405)] : []),
  ];
}

function courseJoints(face: Face, x: Interval): Joint[] {
  return rodSegments().flatMap(({ courses, gap }) =>
    courses.slice(0, -1).map(
      (course): Joint => ({
        kind: "course gap",
        face: face.id,
        zone: "boards",
        region: rect(x, [course.to, course.to + gap]),
        holes: [],
        width: gap,
        along: "x",
      }),
    ),
  );
}

const SHEET_JOINTS: readonly [Joint["kind"], Interval, Interval, "x" | "y"][] = [
  ["junction", [1400, 1410], [-50, 2450], "y"],
  ["sheet joint", [1410, 2190], [2114, 2122], "x"],
  ["sheet joint", [3110, 4200], [2114, 2122], "x"],
  ["sheet joint", [2190, 2198], [2122, 2450], "y"],
  ["sheet joint", [3102, 3110], [2122, 2450], "y"],
];

function layoutOf(face: Face, zones: readonly { id: string; x: Interval }[]): FaceLayout {
  const zoneLayouts = zones.map(({ id, x }): ZoneLayout => {
    const zone = face.zones.find((one) => one.id === id);
    return {
      id,
      cladding: zone?.cladding ?? "",
      buildUp: zone?.buildUp ?? "",
      region: zoneRegion(face, x),
    };
  });
  const pieces = zones.flatMap(({ id, x }) => {
    const z: Interval = id === "boards" ? [52, 82] : [55, 93];
    const cladding =
      id === "boards" ? boardsOf({ face, x, prefix: face.id.slice(0, 1).toUpperCase() }) : sheetsOf(face);
    return [...battensOf({ face, x, z, zone: id }), ...cladding, ...trimOf({ face, x, z, zone: id })];
  });
  return {
    id: face.id,
    code: face.id.slice(0, 1).toUpperCase(),
    frame: faceFrame(face.plan),
    azimuthDeg: face.azimuthDeg,
    outline: face.outline,
    ground: face.ground,
    openings: face.openings.map(({ id, kind, x, y }) => ({ id, kind, region: { x, y } })),
    zones: zoneLayouts,
    clearances: face.openings.map(({ id, x, y }) => ({
      kind: "head" as const,
      of: id,
      region: rect([x[0] - JAMB, x[1] + JAMB], [y[1], y[1] + HEAD]),
    })),
    solids: solidsOf(face),
    pieces,
    joints: [
      ...zones.filter(({ id }) => id === "boards").flatMap(({ x }) => courseJoints(face, x)),
      ...(face.id === "front"
        ? SHEET_JOINTS.map(
            ([kind, x, y, along]): Joint => ({
              kind,
              face: face.id,
              zone: "sheets",
              region: rect(x, y),
              holes: [],
              width: kind === "junction" ? 10 : 8,
              along,
            }),
          )
        : []),
    ],
    controlLines: controlLinesOf(face),
    vents: zones.map(({ id, x }) => ({
      face: face.id,
      zone: id,
      position: "base" as const,
      x,
      y: -50,
      closure: `${face.id}-${id}-C1`,
      grossCm2PerM: 300,
      netCm2PerM: 180,
    })),
  };
}

export function fixtureFacade(): { readonly facade: Facade; readonly project: Project } {
  const project = fixtureProject();
  const [west, front] = project.faces as [Face, Face];
  const plane = (face: string, zone: string, layers: readonly PlacedLayer[]): ZonePlane => {
    const cladding = layers.at(-1) as PlacedLayer;
    return { face, zone, layers, faceZ: cladding.z[1], backZ: cladding.z[0], cavity: cladding.z[0] - 52 };
  };
  const facade: Facade = {
    faces: [
      layoutOf(west, [{ id: "boards", x: [0, 3000 + REACH] }]),
      layoutOf(front, [
        { id: "boards", x: [-REACH, 1400] },
        { id: "sheets", x: [1410, 4200] },
      ]),
    ],
    rods: [
      {
        id: "main",
        zones: [
          { face: "west", zone: "boards" },
          { face: "front", zone: "boards" },
        ],
        segments: rodSegments(),
        missedLines: [],
      },
    ],
    planes: [
      plane("west", "boards", BOARD_LAYERS),
      plane("front", "boards", BOARD_LAYERS),
      plane("front", "sheets", SHEET_LAYERS),
    ],
    steps: [{ face: "front", zones: ["boards", "sheets"], step: 0 }],
    findings: [
      finding({
        code: "P002",
        outcome: "attention",
        where: { face: "front", at: [3650, 300] },
        says: message("drawing.length", { value: 0 }),
      }),
    ],
  };
  return { facade, project };
}
