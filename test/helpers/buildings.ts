/** Random buildings for property tests: plans, rakes, openings, ducts, claddings and corners that a reader accepts. */
import fc from "fast-check";
import { readDocument } from "../../src/project/read.ts";
import type { Project, ProjectDocument } from "../../src/project/schema/project.ts";
import { demo, demoBoards, demoSheets } from "./hard-buildings/makes.ts";

type FaceDocument = ProjectDocument["faces"][number];
type OpeningDocument = FaceDocument["openings"][number];

interface Slot {
  readonly kind: "none" | "window" | "door";
  readonly left: number;
  readonly width: number;
  readonly sill: number;
  readonly height: number;
}

interface FaceSeed {
  readonly cladding: "boards" | "sheets" | "both" | "upright";
  readonly slots: readonly Slot[];
  readonly duct: { readonly at: number; readonly up: number; readonly diameter: number } | null;
}

export interface BuildingSeed {
  readonly plan: "box" | "ell" | "wall";
  readonly width: number;
  readonly depth: number;
  readonly eaves: readonly number[];
  readonly rakes: boolean;
  readonly faces: readonly FaceSeed[];
  readonly lead: readonly boolean[];
  readonly widths: readonly number[];
}

const millimetres = (min: number, max: number, step = 1): fc.Arbitrary<number> =>
  fc.integer({ min: Math.ceil(min / step), max: Math.floor(max / step) }).map((n) => n * step);

const slot: fc.Arbitrary<Slot> = fc.record({
  kind: fc.constantFrom("none", "window", "window", "door"),
  left: millimetres(250, 700),
  width: millimetres(500, 1500, 5),
  sill: millimetres(500, 1300, 10),
  height: millimetres(400, 1100, 10),
});

const faceSeed: fc.Arbitrary<FaceSeed> = fc.record({
  cladding: fc.constantFrom("boards", "sheets", "both", "upright"),
  slots: fc.array(slot, { minLength: 1, maxLength: 3 }),
  duct: fc.option(
    fc.record({ at: millimetres(200, 900), up: millimetres(300, 2200), diameter: millimetres(40, 160, 10) }),
  ),
});

export const buildingSeed: fc.Arbitrary<BuildingSeed> = fc.record({
  plan: fc.constantFrom("box", "ell", "wall"),
  width: millimetres(4200, 11000, 10),
  depth: millimetres(3600, 8000, 10),
  eaves: fc.array(millimetres(2300, 3300, 10), { minLength: 6, maxLength: 6 }),
  rakes: fc.boolean(),
  faces: fc.array(faceSeed, { minLength: 6, maxLength: 6 }),
  lead: fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
  widths: fc.uniqueArray(millimetres(80, 150), { minLength: 2, maxLength: 3 }),
});

/** Corners of the plan, counter-clockwise in building X, Y as the faces run to the right seen from outside. */
function planOf({ plan, width: w, depth: d }: BuildingSeed): readonly (readonly [number, number])[] {
  if (plan === "wall") {
    return [
      [0, 0],
      [w, 0],
    ];
  }
  if (plan === "box") {
    return [
      [0, 0],
      [w, 0],
      [w, d],
      [0, d],
    ];
  }
  const [iw, id] = [Math.round(w / 20) * 10, Math.round(d / 20) * 10];
  return [
    [0, 0],
    [w, 0],
    [w, id],
    [iw, id],
    [iw, d],
    [0, d],
  ];
}

const BASE = -50;

/** Battens, rails and boards on the bare wall; the rails' screw bites the batten and no further. */
export const UPRIGHT: ProjectDocument["buildUps"][number] = {
  id: "bare-upright",
  battenScrew: "batten-100",
  railScrew: "batten-100",
  layers: [
    { kind: "membrane", thickness: 0, lightStable: true },
    { kind: "batten", stock: "b30x64" },
    { kind: "rail", stock: "b25x64" },
  ],
};

export function buildingDocument(seed: BuildingSeed): ProjectDocument {
  const plan = planOf(seed);
  const closed = seed.plan !== "wall";
  const count = closed ? plan.length : plan.length - 1;
  const heights = plan.map((_, i) => (seed.rakes ? (seed.eaves[i] as number) : (seed.eaves[0] as number)));
  const faces = Array.from({ length: count }, (_, i): FaceDocument => {
    const from = plan[i] as [number, number];
    const to = plan[(i + 1) % plan.length] as [number, number];
    const tops: [number, number] = [heights[i] as number, heights[(i + 1) % plan.length] as number];
    return faceDocument(seed.faces[i] as FaceSeed, { id: `f${i + 1}`, from, to, tops });
  });
  const corners = faces.flatMap((face, i) => {
    const next = faces[(i + 1) % faces.length];
    if (!next || (!closed && i === faces.length - 1)) return [];
    return [
      {
        left: face.id,
        right: next.id,
        kind: "lapped" as const,
        lead: seed.lead[i] ? face.id : next.id,
        gap: 8,
      },
    ];
  });
  const boardZones = faces.flatMap((face) =>
    face.zones
      .filter(({ cladding }) => cladding === "charred-boards")
      .map(({ id }) => ({ face: face.id, zone: id })),
  );
  const level = { ...demoBoards(), widths: [...seed.widths], gapBand: [6, 14] as [number, number] };
  const upright = { ...level, id: "upright-boards", direction: "vertical" as const };
  return {
    ...demo,
    title: "Generated",
    claddings: [level, upright, demoSheets()],
    buildUps: [...demo.buildUps, UPRIGHT],
    faces,
    corners,
    rods:
      boardZones.length === 0
        ? []
        : [{ id: "rod", zones: boardZones, leads: [boardZones[0]?.face ?? ""], lineTolerance: 2 }],
    survey: [],
    crews: [],
  };
}

function faceDocument(
  seed: FaceSeed,
  at: { id: string; from: [number, number]; to: [number, number]; tops: [number, number] },
): FaceDocument {
  const length = Math.hypot(at.to[0] - at.from[0], at.to[1] - at.from[1]);
  const openings = openingsOf(seed, { id: at.id, length, top: Math.min(...at.tops) });
  const split = Math.round(length / 2);
  const zones: FaceDocument["zones"] =
    seed.cladding === "both"
      ? [
          { id: "boards", cladding: "charred-boards", buildUp: "over-wool-boards", x: ["left end", split] },
          {
            id: "sheets",
            cladding: "grey-sheets",
            buildUp: "over-wool-sheets",
            x: [split + 10, "right end"],
          },
        ]
      : seed.cladding === "upright"
        ? [
            {
              id: "upright",
              cladding: "upright-boards",
              buildUp: "bare-upright",
              x: ["left end", "right end"],
            },
          ]
        : seed.cladding === "boards"
          ? [
              {
                id: "boards",
                cladding: "charred-boards",
                buildUp: "over-wool-boards",
                x: ["left end", "right end"],
              },
            ]
          : [{ id: "sheets", cladding: "grey-sheets", buildUp: "bare-sheets", x: ["left end", "right end"] }];
  const azimuth = (Math.atan2(at.to[1] - at.from[1], at.to[0] - at.from[0]) * 180) / Math.PI;
  return {
    id: at.id,
    // Walking on counter-clockwise in plan turns the outward normal against the compass.
    azimuthDeg: (((180 - azimuth) % 360) + 360) % 360,
    plan: { from: at.from, to: at.to },
    outline: [
      [0, BASE],
      [length, BASE],
      [length, at.tops[1]],
      [0, at.tops[0]],
    ],
    ground: [
      [0, -350],
      [length, -350],
    ],
    openings,
    penetrations: ductOf(seed, at.id, openings, { length, top: Math.min(...at.tops) }),
    zones,
  };
}

function openingsOf({ slots }: FaceSeed, at: { id: string; length: number; top: number }): OpeningDocument[] {
  const openings: OpeningDocument[] = [];
  let x = 0;
  for (const one of slots) {
    const from = x + one.left;
    const to = from + one.width;
    if (to + 250 > at.length) break;
    x = to;
    if (one.kind === "none") continue;
    const door = one.kind === "door";
    const head = Math.min(door ? 2100 : one.sill + one.height, at.top - 80);
    openings.push({
      id: `${at.id}-${openings.length + 1}`,
      kind: door ? "door" : "window",
      x: [from, to],
      y: [door ? 0 : one.sill, head],
      ...(door && { toBase: true }),
    });
  }
  return openings;
}

function ductOf(
  { duct }: FaceSeed,
  face: string,
  openings: readonly OpeningDocument[],
  { length, top }: { length: number; top: number },
): NonNullable<FaceDocument["penetrations"]> {
  if (!duct) return [];
  const x = length - duct.at;
  const away = duct.diameter / 2 + 60;
  const clash = openings.some(({ x: [from, to] }) => x + away > Number(from) && x - away < Number(to));
  if (clash || duct.up + away > top || x < away) return [];
  return [{ id: `${face}-duct`, kind: "duct", x, y: duct.up, diameter: duct.diameter }];
}

/** Reads a generated document; a document that the reader refuses is a mistake of the generator. */
export function read(document: ProjectDocument): Project {
  const result = readDocument(JSON.parse(JSON.stringify(document)), "generated.outerleaf.json");
  if (!result.ok)
    throw new Error(JSON.stringify(result.findings.map(({ code, where, says }) => [code, where, says])));
  return result.project;
}
