/** The key plan, and beside it which sheets show each face. */
import { tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { keyPlan } from "../../../scene/views/key-plan.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts, NumberedDrawing } from "../facts.ts";

export function keyPlanSheets(
  { design: { facade }, room }: KindFacts,
  set: readonly NumberedDrawing[],
): Drawing[] {
  const sheetOf = (face: string) => set.find((one) => one.kind === "set-out" && one.face === face);
  const shown = facade.faces.flatMap((face) =>
    set.filter((one) => one.face === face.id).map((sheet) => ({ face, sheet })),
  );
  const plan = keyPlan(facade, { sheetOf, room: [room.width - 190, room.height] });
  const table = tableScenes({
    id: "sheets-of-faces",
    title: message("drawing.title.sheets-of-faces"),
    room,
    rows: shown,
    columns: [
      { head: message("drawing.column.face"), cell: ({ face }) => heading(face.id), bold: true },
      { head: message("drawing.column.sheet"), cell: ({ sheet }) => String(sheet.number), align: "end" },
      {
        head: message("drawing.sheet.title"),
        cell: ({ sheet }) => ({ text: sheet.title, link: sheet.name }),
        wrap: 82,
      },
    ],
  });
  return [{ name: "key-plan", type: message("drawing.document-type.key-plan"), scenes: [plan, ...table] }];
}
