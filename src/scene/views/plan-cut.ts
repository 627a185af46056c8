/**
 * What a level plane through a wall cuts, or an upright one across a soffit: both run across the face's second axis. Section frame:
 * along the face to the right, outward down the paper.
 */
import { common, type Interval, subtractIntervals } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds, sliceVertical } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade, FaceLayout, Piece } from "../../setout/facade.ts";
import type { HatchItem } from "../model.ts";
import type { FillRole, LayerElement } from "../roles.ts";
import { ELEMENTS, PIECE_FILLS } from "./section-cut.ts";
import { FRAME_DEPTH } from "./section-opening.ts";

/** One thing in the section, as points of along and z (outward), mm. */
export interface PlanPart {
  readonly of: string;
  readonly element: LayerElement;
  readonly outline: Polygon;
  readonly fill?: FillRole;
  readonly hatch?: HatchItem["pattern"];
  /** An open line: bent metal. */
  readonly open?: true;
}

export interface PlanPlace {
  readonly facade: Pick<Facade, "planes">;
  readonly project: Pick<Project, "structure" | "faces" | "claddings">;
  readonly face: FaceLayout;
  /** The axis along which the section runs: x for a wall cut level, y for a soffit cut across. */
  readonly along: "x" | "y";
  /** Where the plane stands on the other axis, mm. */
  readonly at: number;
  /** The wall behind the sheathing begins here: what lies before it is drawn with the face round the corner. */
  readonly wallFrom?: number;
}

/** Stretches of an outline along the section. */
export function stretchesOf(outline: Polygon, { along, at }: Pick<PlanPlace, "along" | "at">): Interval[] {
  return sliceVertical(along === "x" ? outline.map(([x, y]): Point => [y, x]) : outline, at);
}

function block(along: Interval, z: Interval): Polygon {
  return [
    [along[0], z[0]],
    [along[1], z[0]],
    [along[1], z[1]],
    [along[0], z[1]],
  ];
}

/** Openings that the plane passes through, with where they lie along it. */
export function openingsCut({ face, along, at }: PlanPlace): { id: string; span: Interval }[] {
  const across = along === "x" ? "y" : "x";
  return face.openings
    .filter(({ region }) => region[across][0] < at && at < region[across][1])
    .map(({ id, region }) => ({ id, span: region[along] }));
}

/** Everything that the plane cuts, in painting order. */
export function planParts(place: PlanPlace): PlanPart[] {
  return [
    ...structure(place),
    ...layers(place),
    ...place.face.pieces.flatMap((piece) => pieceParts(piece, place)),
    ...frames(place),
  ];
}

function structure(place: PlanPlace): PlanPart[] {
  const { face, project } = place;
  const { sheathingThickness, studs } = project.structure;
  const open = openingsCut(place).map(({ span }) => span);
  const [start, end] = wallEnds(place);
  const own: Interval = [Math.max(place.wallFrom ?? start, start), end];
  const walls = stretchesOf(face.outline, place)
    .map((whole) => common(whole, own))
    .flatMap((whole) => (whole ? subtractIntervals(whole, open) : []));
  const bay: Interval = [-sheathingThickness - studs.depth, -sheathingThickness];
  const solids = face.solids.flatMap((solid) =>
    stretchesOf(solid.region, place).flatMap((span) => {
      const within = common(span, own);
      return within ? [{ solid, span: within }] : [];
    }),
  );
  const wool = walls.flatMap((wall) =>
    subtractIntervals(
      wall,
      solids.map(({ span }) => span),
    ),
  );
  return [
    ...wool.map(
      (span): PlanPart => ({
        of: `${face.id}/bay`,
        element: "INSUL",
        outline: block(span, bay),
        fill: "insulation",
        hatch: "diagonal",
      }),
    ),
    ...solids.map(
      ({ solid, span }): PlanPart => ({
        of: solid.id,
        element: "STRUCT",
        outline: block(span, solid.z),
        fill: "timber",
        hatch: "end-grain",
      }),
    ),
    ...walls.map(
      (span): PlanPart => ({
        of: `${face.id}/sheathing`,
        element: "STRUCT",
        outline: block(span, [-sheathingThickness, 0]),
        fill: "sheathing",
      }),
    ),
  ];
}

/** Membrane and insulation cover their zone, round an outer corner as far as they are thick; the rest comes from its pieces. */
function layers(place: PlanPlace): PlanPart[] {
  const { face, facade } = place;
  const open = openingsCut(place).map(({ span }) => span);
  const [start, end] = wallEnds(place);
  return face.zones.flatMap((zone) => {
    const plane = facade.planes.find((one) => one.face === face.id && one.zone === zone.id);
    return (plane?.layers ?? []).flatMap(({ kind, z }): PlanPart[] => {
      if (kind !== "membrane" && kind !== "insulation") return [];
      const reach: Interval = [place.wallFrom === undefined ? start - z[1] : start, end + z[1]];
      const spans = stretchesOf(zone.region, place)
        .map((whole) => common(whole, reach))
        .flatMap((whole) => (whole ? subtractIntervals(whole, open) : []));
      const of = `${face.id}/${zone.id}/${kind}`;
      return spans.map(
        ([from, to]): PlanPart =>
          kind === "membrane"
            ? {
                of,
                element: "MEMBR",
                open: true,
                outline: [
                  [from, z[1]],
                  [to, z[1]],
                ],
              }
            : { of, element: "INSUL", outline: block([from, to], z), fill: "insulation", hatch: "diagonal" },
      );
    });
  });
}

/** Where the wall itself begins and ends, as the file says: the layout's outline reaches round corners as the cladding does. */
function wallEnds({ face, project, along }: PlanPlace): Interval {
  const outline = project.faces.find(({ id }) => id === face.id)?.outline ?? face.outline;
  const own = outline.map((point) => point[along === "x" ? 0 : 1]);
  return [Math.min(...own), Math.max(...own)];
}

const SKIPPED: ReadonlySet<Piece["kind"]> = new Set(["membrane", "closure"]);

function pieceParts(piece: Piece, place: PlanPlace): PlanPart[] {
  if (SKIPPED.has(piece.kind)) return [];
  const tagged = { of: piece.mark, element: ELEMENTS[piece.kind] };
  if (piece.planProfile) {
    const reached = stretchesOf(piece.outline, place).length > 0 && place.along === "x";
    return reached ? [{ ...tagged, outline: piece.planProfile, open: true }] : [];
  }
  if (piece.profile) return [];
  const open = piece.holes.flatMap((hole) => stretchesOf(hole, place));
  const whole = stretchesOf(piece.outline, place);
  // Timber cut across its grain: battens and posts that stand upright in a level cut, rails in an upright one.
  const box = polygonBounds(piece.outline);
  const across = place.along === "x" ? "y" : "x";
  const runs = box[across][1] - box[across][0] > box[place.along][1] - box[place.along][0];
  const endGrain = runs && (tagged.element === "BATTEN" || piece.kind === "board" || piece.kind === "post");
  return whole.flatMap((span) =>
    subtractIntervals(span, open).map(
      (part): PlanPart => ({
        ...tagged,
        outline: mitred(piece, part, span, place),
        fill: PIECE_FILLS[piece.kind],
        ...(endGrain && tagged.element === "BATTEN" && { hatch: "end-grain" as const }),
      }),
    ),
  );
}

/** Mitred ends are longer at the outer face; a part that a hole parted is square there. */
function mitred({ ends, z }: Piece, part: Interval, whole: Interval, { along }: PlanPlace): Polygon {
  const deep = z[1] - z[0];
  const less = (end: Piece["ends"]["left"], own: boolean): number =>
    own && along === "x" && end.cut === "mitre" ? deep * Math.tan((end.angleDeg * Math.PI) / 180) : 0;
  const left = less(ends.left, part[0] === whole[0]);
  const right = less(ends.right, part[1] === whole[1]);
  return [
    [part[0] + left, z[0]],
    [part[1] - right, z[0]],
    [part[1], z[1]],
    [part[0], z[1]],
  ];
}

/** How wide a jamb of a frame looks, mm: a picture only, as in the elevation. */
const JAMB = 60;

function frames(place: PlanPlace): PlanPart[] {
  const { face, project } = place;
  const given = project.faces.find(({ id }) => id === face.id);
  return openingsCut(place).flatMap(({ id, span }): PlanPart[] => {
    if (face.openings.find((one) => one.id === id)?.kind === "recess") return [];
    const own = given?.openings.find((one) => one.id === id);
    const front = own?.frameProjection ?? given?.frameProjection ?? 0;
    const z: Interval = [front - FRAME_DEPTH, front];
    const glass = common([span[0] + JAMB, span[1] - JAMB], span);
    const middle = (z[0] + z[1]) / 2;
    const jamb = (from: number): PlanPart => ({
      of: id,
      element: "OPENNG",
      outline: block([from, from + JAMB], z),
      fill: "paper",
    });
    return [
      jamb(span[0]),
      jamb(span[1] - JAMB),
      ...(glass
        ? [
            {
              of: id,
              element: "OPENNG" as const,
              outline: block(glass, [middle - 12, middle + 12]),
              fill: "glass" as const,
            },
          ]
        : []),
    ];
  });
}
