/** The developed elevation, and the set-out elevation of each face. */
import { intervalLength } from "../../../geometry/interval.ts";
import type { Scene } from "../../../scene/model.ts";
import { fittingPaper } from "../../../scene/sheet.ts";
import { developedElevation } from "../../../scene/views/developed-elevation.ts";
import { faceExtent } from "../../../scene/views/extent.ts";
import { faceElevation } from "../../../scene/views/face-elevation.ts";
import { withClouds } from "../../../scene/views/revision-cloud.ts";
import type { Facade, FaceLayout, PieceKind } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { usualPaper } from "../paper.ts";
import { sheetState } from "../revision.ts";

/** What the elevation is a drawing of. */
const SHOWN: readonly PieceKind[] = ["sheet", "board", "post", "return", "flashing"];

export function setOutSheets(facts: KindFacts): Drawing[] {
  const { design, findings } = facts;
  const facade: Facade = { ...design.facade, findings };
  const type = message("drawing.document-type.set-out");
  const changed = new Set(sheetState(design).changed);
  return [
    { name: "developed-elevation", type, scenes: developed(facade, facts) },
    ...facade.faces.flatMap((face): Drawing[] => {
      const { id } = face;
      const scene = faceElevation(facade, design.project, id);
      return scene
        ? [
            {
              name: `face-${id}`,
              type,
              scenes: [withClouds(scene, face, { changed, kinds: SHOWN })],
              face: id,
            },
          ]
        : [];
    }),
  ];
}

/** Rows that the faces are parted into at most, so that they stand on the usual paper. */
const MOST_ROWS = 3;

/**
 * At the largest usual scale (ISO 5455; North American ones in feet and inches) at which the usual paper takes it, in as few rows
 * as will do; in one row on larger paper where none does.
 */
function developed(facade: Facade, { design: { project }, findings, reader }: KindFacts): Scene[] {
  const paper = usualPaper({ units: reader.units, paper: project.sheets?.paper });
  const inFeet = reader.units === "feet-inch";
  const scales = inFeet ? [1 / 48, 1 / 96, 1 / 192] : [1 / 50, 1 / 100, 1 / 200];
  const drawn = (scale: number, rows: number): Scene[] =>
    inRows(facade.faces, rows).map((faces) =>
      developedElevation({ ...facade, faces }, project, { findings, scale }),
    );
  for (const scale of scales) {
    for (let rows = 1; rows <= MOST_ROWS; rows += 1) {
      const scenes = drawn(scale, rows);
      if (fittingPaper(scenes, [paper])) return scenes;
    }
  }
  return drawn(scales[1] ?? 1, 1);
}

/** Faces in their order, in rows of about one length. */
function inRows(faces: readonly FaceLayout[], count: number): FaceLayout[][] {
  const longOf = (face: FaceLayout): number => intervalLength(faceExtent(face).x);
  const share = faces.reduce((sum, face) => sum + longOf(face), 0) / count;
  const rows: FaceLayout[][] = Array.from({ length: count }, () => []);
  let before = 0;
  for (const face of faces) {
    // By its middle: a face goes where most of it would lie.
    const row = Math.min(count - 1, Math.floor((before + longOf(face) / 2) / share));
    rows[row]?.push(face);
    before += longOf(face);
  }
  return rows.filter((row) => row.length > 0);
}
