/** The key plan, and beside it which sheets show each face. */
import type { Project } from "../../../project/schema/project.ts";
import { tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { keyPlan, type PlanDetail } from "../../../scene/views/key-plan.ts";
import type { FaceLayout, ZonePlane } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts, ListedDrawing } from "../facts.ts";
import { grouped } from "../grouped.ts";
import { largestView } from "../paper.ts";
import { cutsOnPlan, KEY_PLAN } from "../section-places.ts";

export function keyPlanSheets(
  { design, room, paper, memo }: KindFacts,
  set: readonly ListedDrawing[],
): Drawing[] {
  const { facade, project } = design;
  const { faces, planes } = facade;
  const { corners } = project;
  return memo.recall(keyPlanOf, { faces, planes, corners, set: set.flatMap(listed), room, paper });
}

/** Places of the level sections. */
function detailsOf({ faces, planes, corners }: From): PlanDetail[] {
  return cutsOnPlan({ facade: { faces, planes }, project: { corners } }).map(
    ({ mark, scene, face, window }): PlanDetail => ({ mark, scene, face, at: (window[0] + window[1]) / 2 }),
  );
}

type Listed = Pick<ListedDrawing, "kind" | "name" | "number" | "title"> & { readonly face: string };

/** Sheets of a face alone stand on the key plan. */
function listed({ kind, name, number, title, face }: ListedDrawing): Listed[] {
  return face === undefined ? [] : [{ kind, name, number, title, face }];
}

interface From extends Pick<KindFacts, "room" | "paper">, Pick<Project, "corners"> {
  readonly faces: readonly FaceLayout[];
  readonly planes: readonly ZonePlane[];
  readonly set: readonly Listed[];
}

function keyPlanOf(from: From): Drawing[] {
  const { faces, planes, set, room, paper } = from;
  const ofFaces = grouped(set, ({ face }) => face);
  const sheetOf = (face: string) => ofFaces.get(face)?.find(({ kind }) => kind === "set-out");
  const shown = faces.flatMap((face) => (ofFaces.get(face.id) ?? []).map((sheet) => ({ face, sheet })));
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
  const details = detailsOf(from);
  const plan = largestView(
    paper,
    (scale) => keyPlan({ faces, planes }, { sheetOf, details, ...scale }),
    table,
  );
  if (!plan) return [];
  return [{ name: KEY_PLAN, type: message("drawing.document-type.key-plan"), scenes: [plan, ...table] }];
}
