/** Hard buildings for property tests: walls that turn in and out, rakes, steps, recesses, passages, pins, mixes of makes. */
import fc from "fast-check";
import type { ProjectDocument } from "../../../src/project/schema/project.ts";
import { type FaceDocument, type FaceSeed, faceOf, faceSeed, liningsOf } from "./faces.ts";
import {
  buildUpsOf,
  CLADDING,
  claddingsOf,
  demo,
  limitsOf,
  type MakesSeed,
  makesSeed,
  POSTS,
  stockOf,
  structureOf,
} from "./makes.ts";
import { inInches, millimetres, toSixteenth } from "./numbers.ts";
import { type PlanSeed, planOf, planSeed } from "./plans.ts";

interface CornerSeed {
  readonly kind: "open mitre" | "lapped" | "post" | "unsaid";
  readonly leftLeads: boolean;
  readonly post: string;
  readonly gap: number;
}

export interface HardBuilding {
  readonly plan: PlanSeed;
  readonly faces: readonly FaceSeed[];
  readonly corners: readonly CornerSeed[];
  readonly makes: MakesSeed;
  readonly imperial: boolean;
  readonly lineTolerance: number;
}

const MOST_FACES = 6;

export const hardBuilding = ({ longest = 3600 } = {}): fc.Arbitrary<HardBuilding> =>
  fc.record({
    plan: planSeed(longest),
    faces: fc.array(faceSeed, { minLength: MOST_FACES, maxLength: MOST_FACES }),
    corners: fc.array(
      fc.record({
        kind: fc.constantFrom("open mitre", "lapped", "lapped", "post", "unsaid"),
        post: fc.constantFrom(...POSTS.map(({ id }) => id)),
        leftLeads: fc.boolean(),
        gap: millimetres(3, 14),
      }),
      { minLength: MOST_FACES, maxLength: MOST_FACES },
    ),
    makes: makesSeed,
    imperial: fc.boolean(),
    lineTolerance: millimetres(0, 5),
  });

export function hardDocument(seed: HardBuilding): ProjectDocument {
  const { points: drawn, closed } = planOf(seed.plan);
  const written = seed.imperial ? toSixteenth : Math.round;
  const points = drawn.map(([x, y]) => [written(x), written(y)] as const);
  const count = closed ? points.length : points.length - 1;
  const walls = Array.from({ length: count }, (_, i) =>
    faceOf(
      seed.faces[i % seed.faces.length] as FaceSeed,
      {
        id: `f${i + 1}`,
        from: points[i] as readonly [number, number],
        to: points[(i + 1) % points.length] as readonly [number, number],
      },
      written,
    ),
  );
  const linings = walls.flatMap((face, i) => {
    const { lining } = seed.faces[i % seed.faces.length] as FaceSeed;
    return liningsOf(face, { make: lining, planeZ: planeOf(seed.makes, face), written });
  });
  const faces = [...walls, ...linings];
  const level = faces.flatMap((face) =>
    face.zones
      .filter(({ cladding }) => cladding === CLADDING.boards)
      .map(({ id }) => ({ face: face.id, zone: id })),
  );
  const document: ProjectDocument = {
    ...demo,
    title: "Hard building",
    structure: structureOf(seed.makes),
    buildUps: buildUpsOf(seed.makes),
    claddings: claddingsOf(seed.makes),
    limits: limitsOf(seed.makes),
    stock: stockOf(seed.makes),
    faces,
    corners: cornersOf(seed, walls, closed),
    rods: level[0]
      ? [{ id: "rod", zones: level, leads: [level[0].face], lineTolerance: seed.lineTolerance }]
      : [],
    survey: [],
    crews: [],
  };
  return seed.imperial ? asImperial(document) : document;
}

/** How far the claddings of a face stand out from its sheathing, the farthest of its zones. */
function planeOf(makes: MakesSeed, { zones }: FaceDocument): number {
  const claddings = claddingsOf(makes);
  const buildUps = buildUpsOf(makes);
  const depths = zones.map(({ cladding, buildUp }) => {
    const layers = buildUps.find(({ id }) => id === buildUp)?.layers ?? [];
    const thickness = layers.reduce((sum, layer) => {
      if (layer.kind !== "batten" && layer.kind !== "rail") return sum + Number(layer.thickness);
      return sum + Number(demo.stock.battens.find(({ id }) => id === layer.stock)?.thickness ?? 0);
    }, 0);
    return thickness + Number(claddings.find(({ id }) => id === cladding)?.thickness ?? 0);
  });
  return Math.max(...depths);
}

function cornersOf(
  seed: HardBuilding,
  walls: readonly FaceDocument[],
  closed: boolean,
): ProjectDocument["corners"] {
  return walls.flatMap((left, i) => {
    const right = walls[(i + 1) % walls.length];
    const { kind, leftLeads, gap, post } = seed.corners[i % seed.corners.length] as CornerSeed;
    if (!right || (!closed && i === walls.length - 1) || kind === "unsaid") return [];
    return [
      {
        left: left.id,
        right: right.id,
        kind,
        ...(kind === "lapped" && { lead: leftLeads ? left.id : right.id }),
        ...(kind === "post" && { post: { stock: post, material: "oak", screw: "batten-160" } }),
        gap,
      },
    ];
  });
}

/** Everything measured on the walls written in feet and inches to the sixteenth. */
function asImperial(document: ProjectDocument): ProjectDocument {
  return {
    ...document,
    display: { ...document.display, units: "feet-inch" },
    faces: document.faces.map((face) => ({
      ...face,
      plan: inInches(face.plan),
      outline: inInches(face.outline),
      ground: inInches(face.ground),
      openings: face.openings.map((one) => ({ ...one, x: inInches(one.x), y: inInches(one.y) })),
      penetrations: (face.penetrations ?? []).map((one) => ({
        ...one,
        x: inInches(one.x),
        y: inInches(one.y),
        diameter: inInches(one.diameter),
      })),
      zones: face.zones.map((zone) => ({
        ...zone,
        x: zone.x.map((end) => (typeof end === "number" ? inInches(end) : end)) as typeof zone.x,
        ...(zone.joints && { joints: inInches(zone.joints) }),
      })),
    })),
    corners: (document.corners ?? []).map((one) => ({ ...one, gap: inInches(one.gap) })),
  };
}
