/** The developed elevation, and the set-out elevation of each face. */
import { intervalLength } from "../../../geometry/interval.ts";
import type { Face } from "../../../project/schema/project.ts";
import type { Scene } from "../../../scene/model.ts";
import { fittingPaper } from "../../../scene/sheet.ts";
import { developedElevation } from "../../../scene/views/developed-elevation.ts";
import { faceExtent } from "../../../scene/views/extent.ts";
import { faceElevation } from "../../../scene/views/face-elevation.ts";
import { type PlacedFinding, placedFindings } from "../../../scene/views/finding-symbols.ts";
import { withClouds } from "../../../scene/views/revision-cloud.ts";
import { type SectionMark, withSectionMarks } from "../../../scene/views/section-marks.ts";
import type { FaceLayout, PieceKind, RodResult } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import type { Tape } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { grouped } from "../grouped.ts";
import { changedOn, ownFace } from "../of-face.ts";
import { largestView } from "../paper.ts";
import { cutsOf, elevationOf } from "../section-places.ts";

/** What the elevation is a drawing of. */
const SHOWN: readonly PieceKind[] = ["sheet", "board", "post", "return", "flashing"];

export function* setOutSheets(facts: KindFacts): Generator<Drawing> {
  const { design, reader, paper, memo } = facts;
  const { project, facade } = design;
  const { faces, rods } = facade;
  const placed = placedFindings(facts.findings);
  const onFace = grouped(placed, ({ where }) => where.face ?? "");
  const whole = { faces, rods, title: project.title, project: project.faces, findings: placed };
  yield {
    name: "developed-elevation",
    type: message("drawing.document-type.set-out"),
    scenes: memo.recall(developed, { ...whole, units: reader.units, paper }),
  };
  for (const face of faces) {
    yield* memo.recall(elevationSheet, {
      face,
      own: ownFace(facts, face),
      rods: rods.filter(({ zones }) => zones.some((zone) => zone.face === face.id)),
      findings: onFace.get(face.id) ?? [],
      changed: changedOn(facts, face),
      cuts: cutsOf(face, design),
      paper,
    });
  }
}

interface From extends Pick<KindFacts, "paper"> {
  readonly face: FaceLayout;
  readonly cuts: readonly SectionMark[];
  readonly own: Face | undefined;
  readonly rods: readonly RodResult[];
  readonly findings: readonly PlacedFinding[];
  readonly changed: readonly string[];
}

function elevationSheet({ face, own, rods, findings, changed, cuts, paper }: From): Drawing[] {
  const scene = largestView(paper, (scale) => {
    const bare = faceElevation(
      { faces: [face], rods, findings },
      { faces: own ? [own] : [] },
      face.id,
      scale,
    );
    return bare && withSectionMarks(bare, cuts);
  });
  if (!scene) return [];
  return [
    {
      name: elevationOf(face),
      type: message("drawing.document-type.set-out"),
      scenes: [withClouds(scene, face, { changed: new Set(changed), kinds: SHOWN })],
      face: face.id,
    },
  ];
}

interface Whole extends Pick<KindFacts, "paper">, Pick<Tape, "units"> {
  readonly faces: readonly FaceLayout[];
  readonly rods: readonly RodResult[];
  readonly title: string;
  readonly project: readonly Face[];
  readonly findings: readonly PlacedFinding[];
}

/** Rows that the faces are parted into at most, so that they stand on the usual paper. */
const MOST_ROWS = 3;

/**
 * At the largest usual scale (ISO 5455; North American ones in feet and inches) at which the usual paper takes it, in as few rows
 * as will do; in one row on larger paper where none does.
 */
function developed({ faces: all, rods, title, project, findings, units, paper }: Whole): Scene[] {
  const inFeet = units === "feet-inch";
  const scales = inFeet ? [1 / 48, 1 / 96, 1 / 192] : [1 / 50, 1 / 100, 1 / 200];
  const drawn = (scale: number, rows: number): Scene[] =>
    inRows(all, rows).map((faces) =>
      developedElevation({ faces, rods }, { title, faces: [...project] }, { findings, scale }),
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
