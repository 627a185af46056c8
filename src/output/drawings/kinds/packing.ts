/** The packing map of each face that was read, to the outer plane, and its packers to cut. */
import { tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { packingMap } from "../../../scene/views/packing-map.ts";
import { leanOf } from "../../../site/survey/findings.ts";
import { surveyFace } from "../../../site/survey/packing.ts";
import { readingsOf } from "../../../site/survey/reading.ts";
import { message } from "../../../text/message.ts";
import { lengthCells } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function packingSheets({ design, reader, room }: KindFacts): Drawing[] {
  const { project } = design;
  const readings = readingsOf(project);
  const faces = [...new Set(readings.map(({ face }) => face))];
  const cells = lengthCells(reader);
  return faces.flatMap((face): Drawing[] => {
    const { packings } = surveyFace(design, { face, readings, lean: leanOf(project) });
    const packing = packings.find(({ kind }) => kind === "outer");
    const map = packing && packingMap(design, { face, packing });
    if (!packing || !map) return [];
    const packers = tableScenes({
      id: `packers-${face}`,
      title: message("survey.packers.title", { face: heading(face) }),
      room,
      rows: packing.packers,
      columns: [
        {
          head: message("schedule.column.thickness"),
          cell: ({ thickness }) => cells.size(thickness),
          align: "end",
        },
        { head: message("drawing.column.count"), cell: ({ count }) => String(count), align: "end" },
      ],
    });
    const type = message("drawing.document-type.packing");
    return [{ name: `packing-${face}`, type, scenes: [map, ...packers], face }];
  });
}
