/** The timber behind a face's sheathing: studs, trimmers, plates, rims and headers, as a screw finds them. */
import { common, type Interval, subtractIntervals } from "../geometry/interval.ts";
import type { Point } from "../geometry/point.ts";
import { type Polygon, polygonBounds, rectInsidePolygon, sliceVertical } from "../geometry/polygon.ts";
import { rectOutline } from "../geometry/rect.ts";
import { intersect } from "../geometry/region.ts";
import type { Face, Project } from "../project/schema/project.ts";
import { snap } from "../units/length.ts";
import { faceLength } from "./corners.ts";
import type { Solid, SolidKind } from "./facade.ts";

type Structure = Project["structure"];

type Band = Structure["bands"][number];
type HeaderBand = Extract<Band, { kind: "header" }>;
type UnderTopBand = Exclude<Extract<Band, { kind: "top plates" }>, { y: unknown }>;

function isHeader(band: Band): band is HeaderBand {
  return band.kind === "header";
}

function isUnderTop(band: Band): band is UnderTopBand {
  return band.kind === "top plates" && !Array.isArray(band.y);
}

/** Every solid of a face, left to right within its kind. */
export function solidsOf(project: Project, face: Face): Solid[] {
  const { structure } = project;
  const length = faceLength(face);
  const z: Interval = [
    snap(-structure.sheathingThickness - structure.studs.depth),
    -structure.sheathingThickness,
  ];
  const bands = bandsOf(structure, face, length);
  const trimmers = trimmersOf(structure, face);
  const studs = studsOf(structure, face, length, trimmers);
  const named = [...studs, ...trimmers, ...bands];
  const counts = new Map<SolidKind, number>();
  return named.map(({ kind, region }) => {
    const number = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, number);
    return { id: `${face.id} ${kind} ${number}`, kind, region, z };
  });
}

interface Timber {
  readonly kind: SolidKind;
  readonly region: Polygon;
}

function bandsOf(structure: Structure, face: Face, length: number): Timber[] {
  const outline = face.outline as Polygon;
  return structure.bands.flatMap((band): Timber[] => {
    if (isHeader(band)) {
      const beside = structure.studs.width * structure.studs.besideOpenings;
      return face.openings.map(({ x, y }) => ({
        kind: "header",
        region: rectOutline({
          x: [Math.max(0, snap(x[0] - beside)), Math.min(length, snap(x[1] + beside))],
          y: [y[1], snap(y[1] + band.aboveOpening)],
        }),
      }));
    }
    if (isUnderTop(band)) return underTop(outline, band.belowTop);
    const spaces = face.openings
      .filter(({ y }) => y[0] < band.y[1] && y[1] > band.y[0])
      .map(({ x }): Interval => x);
    return subtractIntervals([0, length], spaces).map((x) => ({
      kind: band.kind as SolidKind,
      region: rectOutline({ x, y: band.y }),
    }));
  });
}

/** The plates under the outline's upper edges, rakes and steps included. */
function underTop(outline: Polygon, depth: number): Timber[] {
  return outline.flatMap((from, i): Timber[] => {
    const to = outline[(i + 1) % outline.length] as Point;
    // Counter-clockwise, upper edges run from right to left.
    if (to[0] >= from[0]) return [];
    const region: Polygon = [[to[0], snap(to[1] - depth)], [from[0], snap(from[1] - depth)], from, to];
    return [{ kind: "top plates", region }];
  });
}

function trimmersOf(structure: Structure, face: Face): Timber[] {
  const { width, besideOpenings } = structure.studs;
  const over = structure.bands.find(isHeader)?.aboveOpening ?? 0;
  const bottom = Math.min(...face.outline.map(([, y]) => y));
  return face.openings.flatMap(({ x, y }) => {
    const height: Interval = [Math.min(bottom, y[0]), snap(y[1] + over)];
    return Array.from({ length: besideOpenings }, (_, i) => i).flatMap((i): Timber[] => [
      upright([snap(x[0] - (i + 1) * width), snap(x[0] - i * width)], height),
      upright([snap(x[1] + i * width), snap(x[1] + (i + 1) * width)], height),
    ]);
  });
}

function upright(x: Interval, y: Interval): Timber {
  return { kind: "trimmer", region: rectOutline({ x, y }) };
}

/** Stud centres from the left end, the spacing on from the first, and one at the right end. */
export function studCentres(structure: Structure, length: number): number[] {
  const { firstAt, spacing } = structure.studs;
  const last = snap(length - firstAt);
  const centres: number[] = [];
  for (let i = 0; snap(firstAt + i * spacing) < last; i++) centres.push(snap(firstAt + i * spacing));
  return [...centres, last];
}

function studsOf(structure: Structure, face: Face, length: number, trimmers: readonly Timber[]): Timber[] {
  const outline = face.outline as Polygon;
  return studCentres(structure, length).flatMap((centre): Timber[] => {
    const x: Interval = [snap(centre - structure.studs.width / 2), snap(centre + structure.studs.width / 2)];
    const stretches = sliceVertical(outline, Math.min(Math.max(centre, 0.5), length - 0.5));
    const taken = [
      ...face.openings.map(({ x: ox, y }) => ({ x: ox, y })),
      ...trimmers.map(({ region }) => polygonBounds(region)),
    ]
      .filter((box) => common(box.x, x))
      .map(({ y }) => y);
    const inside: Interval = [Math.max(0, x[0]), Math.min(length, x[1])];
    return stretches
      .flatMap((stretch) => subtractIntervals(stretch, taken))
      .flatMap((y): Polygon[] => {
        const rect = { x: inside, y };
        if (rectInsidePolygon(rect, outline)) return [rectOutline(rect)];
        return intersect(outline, rectOutline(rect)).map((region) => region.outline);
      })
      .map((region) => ({ kind: "stud", region }));
  });
}
