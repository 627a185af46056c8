/** Everything that stands on a face, as meshes in its frame, with the layer that each is taken away with and its ink. */
import type { Design } from "../../design.ts";
import type { Polygon } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { intersect, type Region, subtract } from "../../geometry/region.ts";
import { faceById } from "../../project/lookup.ts";
import type { FillRole } from "../../scene/roles.ts";
import { boardTones } from "../../scene/views/cladding.ts";
import { FRAME_WIDTH, inset } from "../../scene/views/openings.ts";
import { PIECE_FILLS } from "../../scene/views/section-cut.ts";
import { FRAME_DEPTH } from "../../scene/views/section-opening.ts";
import type { FaceLayout, Piece } from "../../setout/facade.ts";
import { layerOfPiece } from "../drawing/layers.ts";
import type { Pick } from "../picks/pick.ts";
import { groundBefore } from "./ground.ts";
import { pieceMesh, prismMesh } from "./mesh.ts";
import type { Head, Shape } from "./shape.ts";

/** @returns the shapes of a face; they change with its layout, its planes and the structure alone */
export function shapesOn(face: FaceLayout, { facade, project }: Design): Shape[] {
  const tones = boardTones(face.pieces.filter(({ kind }) => kind === "board"));
  return [
    ...face.pieces.map(
      (piece): Shape => ({
        layer: layerOfPiece(piece.kind),
        fill: tones.get(piece.mark) ?? fillOf(piece),
        mesh: pieceMesh(piece),
        pick: { kind: "piece", face: face.id, id: piece.mark },
      }),
    ),
    ...face.openings.flatMap((opening) => openingShapes(face, opening, project)),
    ...insulationOn(face, facade),
    ...sheathingOn(face, project),
    ...groundBefore(face, project),
    ...face.solids.map(
      ({ region, z }): Shape => ({
        layer: "framing",
        fill: "timber",
        mesh: prismMesh({ outline: region, holes: [], z }),
      }),
    ),
  ];
}

export function headsOn(face: FaceLayout): Head[] {
  return face.pieces.flatMap(({ kind, fixings, z }) =>
    fixings
      .filter(({ side }) => side === undefined)
      .map(({ x, y }): Head => ({ layer: layerOfPiece(kind), at: [x, y, z[1]] })),
  );
}

function fillOf({ kind, grain }: Piece): FillRole {
  return kind === "return" && grain === undefined ? "sheet" : PIECE_FILLS[kind];
}

/** The walls of a recess are faces of their own: it is left open. */
function openingShapes(
  face: FaceLayout,
  { id, kind, region }: FaceLayout["openings"][number],
  project: Design["project"],
): Shape[] {
  if (kind === "recess") return [];
  const given = faceById(project, face.id);
  const own = given?.openings.find((one) => one.id === id);
  const front = own?.frameProjection ?? given?.frameProjection ?? 0;
  const back = front - FRAME_DEPTH;
  const pick: Pick = { kind: "opening", face: face.id, id };
  const inner = inset(region, FRAME_WIDTH);
  const pane = inner && rectOutline(inner);
  const frame = {
    outline: rectOutline(region),
    holes: pane ? [[...pane].reverse()] : [],
    z: [back, front] as const,
  };
  const middle = (back + front) / 2;
  return [
    { layer: "always", fill: "paper", mesh: prismMesh(frame), pick },
    ...(pane
      ? [
          {
            layer: "always" as const,
            fill: "glass" as const,
            mesh: prismMesh({ outline: pane, holes: [], z: [middle, middle] }),
            pick,
          },
        ]
      : []),
  ];
}

/** As far as the sheathing goes: what fills a corner is drawn by neither face. */
function insulationOn(face: FaceLayout, { planes }: Design["facade"]): Shape[] {
  return face.zones.flatMap((zone) => {
    const plane = planes.find((one) => one.face === face.id && one.zone === zone.id);
    const layers = plane?.layers.filter(({ kind, z }) => kind === "insulation" && z[1] > z[0]) ?? [];
    return layers.flatMap(({ z }) =>
      intersect(face.outline, zone.region).flatMap(({ outline }) =>
        slab(outline, face).map(
          (region): Shape => ({
            layer: "insulation",
            fill: "insulation",
            mesh: prismMesh({ ...region, z }),
            pick: { kind: "zone", face: face.id, id: zone.id },
          }),
        ),
      ),
    );
  });
}

function sheathingOn(face: FaceLayout, { structure }: Design["project"]): Shape[] {
  return slab(face.outline, face).map((region) => ({
    layer: "sheathing",
    fill: "sheathing",
    mesh: prismMesh({ ...region, z: [-structure.sheathingThickness, 0] }),
    pick: { kind: "face", face: face.id },
  }));
}

function slab(outline: Polygon, { openings }: FaceLayout): Region[] {
  return subtract(
    outline,
    openings.map(({ region }) => rectOutline(region)),
  );
}
