/** The key plan, and beside it which sheets show each face. */
import { tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { keyPlan } from "../../../scene/views/key-plan.ts";
import type { FaceLayout, ZonePlane } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts, ListedDrawing } from "../facts.ts";
import { grouped } from "../grouped.ts";

export function keyPlanSheets(
  { design: { facade }, room, memo }: KindFacts,
  set: readonly ListedDrawing[],
): Drawing[] {
  const { faces, planes } = facade;
  return memo.recall(keyPlanOf, { faces, planes, set: set.flatMap(listed), room });
}

type Listed = Pick<ListedDrawing, "kind" | "name" | "number" | "title"> & { readonly face: string };

/** Sheets of a face alone stand on the key plan. */
function listed({ kind, name, number, title, face }: ListedDrawing): Listed[] {
  return face === undefined ? [] : [{ kind, name, number, title, face }];
}

interface From extends Pick<KindFacts, "room"> {
  readonly faces: readonly FaceLayout[];
  readonly planes: readonly ZonePlane[];
  readonly set: readonly Listed[];
}

function keyPlanOf({ faces, planes, set, room }: From): Drawing[] {
  const ofFaces = grouped(set, ({ face }) => face);
  const sheetOf = (face: string) => ofFaces.get(face)?.find(({ kind }) => kind === "set-out");
  const shown = faces.flatMap((face) => (ofFaces.get(face.id) ?? []).map((sheet) => ({ face, sheet })));
  const plan = keyPlan({ faces, planes }, { sheetOf, room: [room.width - 190, room.height] });
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
