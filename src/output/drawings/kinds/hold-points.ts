/** Checklists of the hold points of each face: what is looked at, what the drawings ask, and room to sign. */
import { type TableColumn, tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { type HoldCheck, holdChecks } from "../../../site/hold-points.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function holdPointSheets({ design, room }: KindFacts): Drawing[] {
  const type = message("drawing.document-type.hold-points");
  const blank = (key: string): TableColumn<HoldCheck> => ({
    head: message(key),
    cell: () => undefined,
    wrap: 30,
  });
  return design.facade.faces.flatMap((face): Drawing[] => {
    const scenes = tableScenes({
      id: `hold-points-${face.id}`,
      title: message("drawing.title.hold-points", { face: heading(face.id) }),
      room,
      rows: holdChecks(face, design),
      columns: [
        { head: "", cell: ({ point }) => point, bold: true },
        { head: message("drawing.column.check"), cell: ({ check }) => check, wrap: 130 },
        { head: message("drawing.column.asked"), cell: ({ asked }) => asked },
        { head: message("drawing.column.measured"), cell: () => message("drawing.hold.blank") },
        { head: message("drawing.column.seen"), cell: () => "tick box" },
        { ...blank("drawing.column.signed"), cell: () => message("drawing.hold.blank") },
      ],
    });
    return [{ name: `hold-points-${face.id}`, type, scenes, face: face.id }];
  });
}
