/** Checklists of the hold points of each face: what is looked at, what the drawings ask, and room to sign. */
import { type TableColumn, tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { type HoldCheck, holdChecks } from "../../../site/hold-points.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function holdPointSheets({ design, room, memo }: KindFacts): Drawing[] {
  return design.facade.faces.map((face) =>
    memo.recall(holdPointsOf, { face: face.id, checks: holdChecks(face, design), room }),
  );
}

interface From extends Pick<KindFacts, "room"> {
  readonly face: string;
  readonly checks: readonly HoldCheck[];
}

function holdPointsOf({ face, checks, room }: From): Drawing {
  const type = message("drawing.document-type.hold-points");
  const blank = (key: string): TableColumn<HoldCheck> => ({
    head: message(key),
    cell: () => undefined,
    wrap: 30,
  });
  const scenes = tableScenes({
    id: `hold-points-${face}`,
    title: message("drawing.title.hold-points", { face: heading(face) }),
    room,
    rows: checks,
    columns: [
      { head: "", cell: ({ point }) => point, bold: true },
      { head: message("drawing.column.check"), cell: ({ check }) => check, wrap: 130 },
      { head: message("drawing.column.asked"), cell: ({ asked }) => asked },
      { head: message("drawing.column.measured"), cell: () => message("drawing.hold.blank") },
      { head: message("drawing.column.seen"), cell: () => "tick box" },
      { ...blank("drawing.column.signed"), cell: () => message("drawing.hold.blank") },
    ],
  });
  return { name: `hold-points-${face}`, type, scenes, face };
}
