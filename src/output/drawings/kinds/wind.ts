/** Each face in wind: how far its parts are used, the legend, and those that are used furthest. */
import type { FaceUse, PartUse } from "../../../proof/wind/uses.ts";
import { windUses } from "../../../proof/wind/uses.ts";
import { tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { windElevation } from "../../../scene/views/wind-elevation.ts";
import { legendOfUses } from "../../../scene/views/wind-use.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";

/** Of each kind of part so many stand in the table. */
const FURTHEST = 4;

/** None where the wind is not known. */
export function windSheets({ design, room }: KindFacts): Drawing[] {
  const type = message("drawing.document-type.wind");
  return windUses(design).flatMap((uses): Drawing[] => {
    const face = design.facade.faces.find(({ id }) => id === uses.face);
    if (!face) return [];
    const plan = windElevation(face, uses);
    return [
      {
        name: `wind-${face.id}`,
        type,
        scenes: [plan, legendOfUses(plan.scale), ...table(uses, room)],
        face: face.id,
      },
    ];
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
