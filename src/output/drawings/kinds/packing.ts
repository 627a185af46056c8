/** The packing map of each face that was read, to the outer plane that fits its corners, and its packers to cut. */
import type { Face, Project } from "../../../project/schema/project.ts";
import { tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { packingMap } from "../../../scene/views/packing-map.ts";
import type { FaceLayout } from "../../../setout/facade.ts";
import { leanOf } from "../../../site/survey/findings.ts";
import { joinedPlanes } from "../../../site/survey/joined.ts";
import { surveyFace, usualPacking } from "../../../site/survey/packing.ts";
import type { Lean, Plane } from "../../../site/survey/plane.ts";
import { type Reading, readingsOf } from "../../../site/survey/reading.ts";
import { message } from "../../../text/message.ts";
import { lengthCells } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { oneByOne } from "../grouped.ts";
import { ownFace } from "../of-face.ts";

export function packingSheets(facts: KindFacts): Iterable<Drawing> {
  const { project, facade } = facts.design;
  const { reader, room, memo } = facts;
  const readings = readingsOf(project);
  const shared = { lean: leanOf(project), buildUps: project.buildUps, packers: project.stock.packers };
  const { planes } = joinedPlanes(facts.design, { readings, lean: shared.lean });
  const faces = new Set(readings.map(({ face }) => face));
  return oneByOne(faces, (id): Drawing[] => {
    const face = facade.faces.find((one) => one.id === id);
    if (!face) return [];
    const own = {
      own: ownFace(facts, face),
      readings: readings.filter((one) => one.face === id),
      joined: planes.get(id),
    };
    return memo.recall(packingOf, { face, ...own, ...shared, reader, room });
  });
}

interface From extends Pick<KindFacts, "reader" | "room"> {
  readonly face: FaceLayout;
  readonly own: Face | undefined;
  readonly readings: readonly Reading[];
  readonly lean: Lean;
  readonly joined: Plane | undefined;
  readonly buildUps: Project["buildUps"];
  readonly packers: Project["stock"]["packers"];
}

function packingOf({ face, own, readings, lean, joined, buildUps, packers, reader, room }: From): Drawing[] {
  const design = {
    facade: { faces: [face] },
    project: { buildUps, stock: { packers }, faces: own ? [own] : [] },
  };
  const { packings } = surveyFace(design, { face: face.id, readings, lean, joined });
  const packing = usualPacking(packings);
  const map = packing && packingMap(design, { face: face.id, packing });
  if (!packing || !map) return [];
  const table = tableScenes({
    id: `packers-${face.id}`,
    title: message("survey.packers.title", { face: heading(face.id) }),
    room,
    rows: packing.packers,
    columns: [
      {
        head: message("schedule.column.thickness"),
        cell: ({ thickness }) => lengthCells(reader).size(thickness),
        align: "end",
      },
      { head: message("drawing.column.count"), cell: ({ count }) => String(count), align: "end" },
    ],
  });
  const type = message("drawing.document-type.packing");
  return [{ name: `packing-${face.id}`, type, scenes: [map, ...table], face: face.id }];
}
