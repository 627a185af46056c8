/** Each face in wind: how far its parts are used, the legend, and those that are used furthest. */
import type { Demands } from "../../../codes/demands.ts";
import type { Face } from "../../../project/schema/project.ts";
import type { FacelessProject } from "../../../proof/context.ts";
import { facelessProject } from "../../../proof/face-contexts.ts";
import type { FaceUse, PartUse } from "../../../proof/wind/uses.ts";
import { windUses } from "../../../proof/wind/uses.ts";
import { tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { windElevation } from "../../../scene/views/wind-elevation.ts";
import { legendOfUses } from "../../../scene/views/wind-use.ts";
import type { FaceLayout, ZonePlane } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { oneByOne } from "../grouped.ts";
import { ownFace, ownPlanes } from "../of-face.ts";

/** Of each kind of part so many stand in the table. */
const FURTHEST = 4;

/** None where the wind is not known. */
export function windSheets(facts: KindFacts): Iterable<Drawing> {
  const { design, room, memo } = facts;
  const { project, demands } = design;
  const shared = memo.recall(sharedOf, { job: facelessProject(project), demands });
  memo.byThemselves([shared]);
  return oneByOne(design.facade.faces, (face) =>
    memo.recall(windOf, {
      face,
      own: ownFace(facts, face),
      planes: ownPlanes(facts, face),
      shared,
      room,
    }),
  );
}

interface Shared {
  readonly job: FacelessProject;
  readonly demands: Demands;
}

/** One thing for all faces as long as its text stays: it is far longer than what is a face's own. */
function sharedOf(shared: Shared): Shared {
  return shared;
}

interface From extends Pick<KindFacts, "room"> {
  readonly face: FaceLayout;
  readonly own: Face | undefined;
  readonly planes: readonly ZonePlane[];
  readonly shared: Shared;
}

function windOf({ face, own, planes, shared: { job, demands }, room }: From): Drawing[] {
  if (!own) return [];
  const project = { ...job, faces: [own] };
  return windUses({ project, facade: { faces: [face], planes }, demands }).map((uses): Drawing => {
    const plan = windElevation(face, uses);
    return {
      name: `wind-${face.id}`,
      type: message("drawing.document-type.wind"),
      scenes: [plan, legendOfUses(plan.scale), ...table(uses, room)],
      face: face.id,
    };
  });
}

interface Row extends PartUse {
  readonly part: "skin" | "carrier" | "screw";
}

function table(uses: FaceUse, room: KindFacts["room"]) {
  const furthest = (part: Row["part"], list: readonly PartUse[]): Row[] =>
    [...new Map([...list].sort(byUse).map((use) => [use.mark, use])).values()]
      .sort(byUse)
      .reverse()
      .slice(0, FURTHEST)
      .map((use) => ({ ...use, part }));
  return tableScenes({
    id: `wind-uses-${uses.face}`,
    title: message("drawing.title.wind-uses", { face: heading(uses.face) }),
    room,
    rows: [
      ...furthest("skin", uses.skins),
      ...furthest("carrier", uses.carriers),
      ...furthest("screw", uses.screws),
    ],
    columns: [
      { head: message("drawing.column.in"), cell: ({ part }) => message(`drawing.use.part-${part}`) },
      { head: message("schedule.column.mark"), cell: ({ mark }) => mark },
      {
        head: message("drawing.column.used"),
        cell: ({ use }) =>
          use === undefined
            ? message("drawing.use.unknown")
            : message("drawing.use.percent", { percent: use * 100 }),
        align: "end",
      },
    ],
  });
}

/** The least used first, what is not judged last: it stands over all that is. */
function byUse(a: PartUse, b: PartUse): number {
  return (a.use ?? Number.POSITIVE_INFINITY) - (b.use ?? Number.POSITIVE_INFINITY);
}
