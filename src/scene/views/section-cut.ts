/** What a vertical plane across a face cuts, and what is seen just behind it. Section frame: z to the right, y up. */

import type { Interval } from "../../geometry/interval.ts";
import { common, overlaps, subtractIntervals } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds, sliceVertical } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { intersect } from "../../geometry/region.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade, FaceLayout, Piece, Solid, ZonePlane } from "../../setout/facade.ts";
import type { HatchItem } from "../model.ts";
import type { FillRole, LayerElement } from "../roles.ts";

/** One thing in the section. */
export interface CutPart {
  readonly of: string;
  readonly element: LayerElement;
  readonly outline: Polygon;
  readonly fill: FillRole;
  /** `cut`: the plane goes through it; `beyond`: it is seen behind the plane. */
  readonly seen: "cut" | "beyond";
  readonly hatch?: HatchItem["pattern"];
  /** A layer too thin for an outline: its fill alone shows it. */
  readonly thin?: boolean;
}

/** What of a project a section shows. */
export type SectionProject = Pick<Project, "structure" | "faces" | "claddings"> & {
  readonly stock: Pick<Project["stock"], "screws">;
};

export interface SectionPlace {
  readonly facade: Pick<Facade, "planes">;
  readonly project: SectionProject;
  readonly face: FaceLayout;
  readonly x: number;
}

/** Thinner than this shows by its fill alone, mm. */
const THIN = 4;

/** The build-up's plane where the section stands. */
export function planeAt({ facade, face, x }: SectionPlace): ZonePlane | undefined {
  const zone = face.zones.find(({ region }) => sliceVertical(region, x).length > 0);
  return facade.planes.find((plane) => plane.face === face.id && plane.zone === zone?.id);
}

/** Everything in the section, in painting order. */
export function cutParts(place: SectionPlace): CutPart[] {
  return [...structureParts(place), ...layerParts(place), ...pieceParts(place)];
}

const block = (z: Interval, y: Interval): Polygon => rectOutline({ x: z, y });

function wallHeights({ face, x }: SectionPlace): Interval[] {
  const openings = face.openings.filter(({ region }) => region.x[0] < x && x < region.x[1]);
  const holes = openings.map(({ region }): Interval => region.y);
  const solids = cutSolids(face, x).flatMap(({ region }) => sliceVertical(region, x));
  return sliceVertical(face.outline, x).flatMap(([from, to]) =>
    // The sheathing goes on down over whatever timber is found there, the rim for one.
    subtractIntervals([Math.min(from, ...solids.map(([low]) => low)), to], holes),
  );
}

function cutSolids(face: FaceLayout, x: number): Solid[] {
  return face.solids.filter(({ region }) => sliceVertical(region, x).length > 0);
}

function structureParts(place: SectionPlace): CutPart[] {
  const { face, x, project } = place;
  const { sheathingThickness, studs } = project.structure;
  const walls = wallHeights(place);
  const solids = cutSolids(face, x);
  const bay: Interval = [-sheathingThickness - studs.depth, -sheathingThickness];
  // Timber that fills the bay's depth ends the insulation; shallower timber lies over it.
  const timber = solids
    .filter(({ z }) => z[0] <= bay[0] && z[1] >= bay[1])
    .flatMap(({ region }) => sliceVertical(region, x));
  const wool = walls.flatMap((wall) => subtractIntervals(wall, timber));
  return [
    ...wool.map(
      (y): CutPart => ({
        of: `${face.id}/bay`,
        element: "INSUL",
        outline: block(bay, y),
        fill: "insulation",
        seen: "cut",
        hatch: "soft",
      }),
    ),
    ...solids.flatMap((solid) =>
      sliceVertical(solid.region, x).map((y): CutPart => {
        const upright = solid.kind === "stud" || solid.kind === "trimmer";
        return {
          of: solid.id,
          element: "STRUCT",
          outline: block(solid.z, y),
          fill: "timber",
          seen: "cut",
          ...(upright ? {} : { hatch: "end-grain" as const }),
        };
      }),
    ),
    ...walls.map(
      (y): CutPart => ({
        of: `${face.id}/sheathing`,
        element: "STRUCT",
        outline: block([-sheathingThickness, 0], y),
        fill: "sheathing",
        seen: "cut",
      }),
    ),
  ];
}

/** The heights of the zone at the plane, openings taken out. */
function zoneHeights({ face, x }: SectionPlace): Interval[] {
  const open = face.openings
    .filter(({ region }) => region.x[0] < x && x < region.x[1])
    .map(({ region }): Interval => region.y);
  return face.zones
    .flatMap(({ region }) => sliceVertical(region, x))
    .flatMap((whole) => subtractIntervals(whole, open));
}

/** Membrane and insulation cover the zone; battens and cladding come from their pieces. */
function layerParts(place: SectionPlace): CutPart[] {
  const { face } = place;
  const plane = planeAt(place);
  const zone = face.zones.find(({ id }) => id === plane?.zone);
  if (!plane || !zone) return [];
  const heights = zoneHeights(place);
  return plane.layers
    .filter(({ kind }) => kind === "membrane" || kind === "insulation")
    .flatMap((layer) =>
      heights.map(
        (y): CutPart => ({
          of: `${face.id}/${zone.id}/${layer.kind}`,
          element: layer.kind === "membrane" ? "MEMBR" : "INSUL",
          outline: block(layer.z, y),
          fill: layer.kind === "membrane" ? "membrane" : "insulation",
          seen: "cut",
          ...(layer.kind === "insulation" ? { hatch: "diagonal" as const } : {}),
          ...(layer.z[1] - layer.z[0] < THIN ? { thin: true } : {}),
        }),
      ),
    );
}

export const ELEMENTS: Readonly<Record<Piece["kind"], LayerElement>> = {
  sheet: "SHEET",
  board: "BOARD",
  batten: "BATTEN",
  "counter-batten": "BATTEN",
  rail: "BATTEN",
  post: "BOARD",
  backing: "BATTEN",
  packer: "BATTEN",
  closure: "TRIM",
  flashing: "TRIM",
  gasket: "TRIM",
  sleeve: "TRIM",
  membrane: "MEMBR",
  return: "BOARD",
};

export const PIECE_FILLS: Readonly<Record<Piece["kind"], FillRole>> = {
  sheet: "sheet",
  board: "board",
  batten: "batten",
  "counter-batten": "batten",
  rail: "batten",
  post: "board",
  backing: "timber",
  packer: "timber",
  closure: "metal",
  flashing: "metal",
  gasket: "membrane",
  sleeve: "paper",
  membrane: "membrane",
  return: "board",
};

/** Farther behind the plane than this nothing is drawn, mm. */
const SIGHT = 700;

function pieceParts({ facade, project, face, x }: SectionPlace): CutPart[] {
  // The membrane's strips lie where the build-up's layer is drawn; a pan has no thickness to draw.
  const seen = face.pieces.filter(({ kind }) => kind !== "membrane");
  const cut = seen.flatMap((piece) =>
    sliceVertical(piece.outline, x)
      .flatMap((whole) =>
        subtractIntervals(
          whole,
          piece.holes.flatMap((hole) => sliceVertical(hole, x)),
        ),
      )
      .map((y): CutPart => partOf(piece, y, "cut")),
  );
  const battens = cut.filter(({ element }) => element === "BATTEN");
  const behind =
    battens.length > 0
      ? []
      : face.pieces
          .filter(({ kind, outline }) => {
            const { x: reach } = polygonBounds(outline);
            return kind === "batten" && reach[0] > x && reach[0] < x + SIGHT;
          })
          .flatMap((piece) =>
            zoneHeights({ facade, project, face, x }).flatMap((height) => {
              const y = common(height, polygonBounds(piece.outline).y);
              return y ? [partOf(piece, y, "beyond")] : [];
            }),
          );
  return [
    ...behind,
    ...jambBeyond({ face, x }),
    ...cut,
    ...stripParts({ facade, project, face, x }, battens),
  ];
}

/** The return or trim on the far jamb of an opening that the section passes through. */
function jambBeyond({ face, x }: Pick<SectionPlace, "face" | "x">): CutPart[] {
  const crossed = face.openings.filter(({ region }) => region.x[0] < x && x < region.x[1]);
  if (crossed.length === 0) return [];
  return face.pieces
    .filter(({ kind, planProfile }) => kind === "return" || planProfile)
    .flatMap((piece) => {
      const box = polygonBounds(piece.outline);
      const far = crossed.some(
        ({ region, id }) =>
          (box.x[1] === region.x[1] || piece.why.line === `${face.id} jamb right ${id}`) &&
          box.x[0] > x &&
          overlaps(box.y, region.y),
      );
      return far && !isLevel(piece) ? [partOf(piece, box.y, "beyond")] : [];
    });
}

/** Packers and gaskets that the build-up has and no piece stands for: strips along the battens that are cut. */
function stripParts(place: SectionPlace, battens: readonly CutPart[]): CutPart[] {
  const plane = planeAt(place);
  const pieces = new Set(place.face.pieces.map(({ kind }) => kind));
  const layers = plane?.layers ?? [];
  return layers.flatMap((layer): CutPart[] => {
    if ((layer.kind !== "packer" && layer.kind !== "gasket") || pieces.has(layer.kind)) return [];
    return battens.map(
      ({ outline }): CutPart => ({
        of: `${place.face.id}/${plane?.zone}/${layer.kind}`,
        element: layer.kind === "packer" ? "BATTEN" : "TRIM",
        outline: block(layer.z, polygonBounds(outline).y),
        fill: layer.kind === "packer" ? PIECE_FILLS.packer : PIECE_FILLS.gasket,
        seen: "cut",
        thin: true,
      }),
    );
  });
}

function partOf(piece: Piece, y: Interval, seen: CutPart["seen"]): CutPart {
  const across = piece.kind === "rail" || (piece.kind === "backing" && isLevel(piece));
  // A return is of boards, which have a grain, or of sheets.
  const as = piece.kind === "return" && piece.grain === undefined ? "sheet" : piece.kind;
  return {
    of: piece.mark,
    element: ELEMENTS[as],
    outline: sectionOutline(piece, y),
    fill: seen === "beyond" ? "paper" : PIECE_FILLS[as],
    seen,
    ...(across ? { hatch: "end-grain" as const } : {}),
    ...(Math.min(piece.z[1] - piece.z[0], y[1] - y[0]) < THIN ? { thin: true } : {}),
  };
}

function sectionOutline(piece: Piece, y: Interval): Polygon {
  if (piece.profile) return bentSection(piece.profile);
  return piece.kind === "board" ? boardSection(piece, y) : block(piece.z, y);
}

/** Bent metal is too thin to show to scale: its section is drawn as a line this thick, mm. */
const BENT_MM = 1;

function bentSection(profile: readonly Point[]): Polygon {
  const inner = [...profile].reverse().map(([z, y]): Point => [z - BENT_MM, y - BENT_MM]);
  return [...profile, ...inner];
}

function isLevel(piece: Piece): boolean {
  const box = polygonBounds(piece.outline);
  return box.x[1] - box.x[0] > box.y[1] - box.y[0];
}

/** The outline is at the outer face; the top edge falls outward and the underside runs parallel to it. */
export function boardSection(piece: Pick<Piece, "z" | "bevelDeg">, y: Interval): Polygon {
  const [back, front] = piece.z;
  const rise = (front - back) * Math.tan(((piece.bevelDeg ?? 0) * Math.PI) / 180);
  return [
    [back, y[0] + rise],
    [front, y[0]],
    [front, y[1]],
    [back, y[1] + rise],
  ];
}

/** The part of a section that a window shows: its area, and the edges that are its own and not the window's. */
export function throughWindow(outline: Polygon, window: Interval): { areas: Polygon[]; edges: Polygon[] } {
  const { x, y } = polygonBounds(outline);
  if (y[0] >= window[0] && y[1] <= window[1])
    return { areas: [outline], edges: [[...outline, ...outline.slice(0, 1)]] };
  const areas = intersect(outline, block([x[0] - 1, x[1] + 1], window)).map((region) => region.outline);
  const edges = areas.flatMap((area) =>
    area.flatMap((a, i): Polygon[] => {
      const b = area[(i + 1) % area.length] ?? a;
      const onWindow = window.some((limit) => a[1] === limit && b[1] === limit);
      return onWindow ? [] : [[a, b]];
    }),
  );
  return { areas, edges };
}
