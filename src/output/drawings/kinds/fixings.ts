/** The fixing plan of each face, and what its screws are. */
import type { WindDemand } from "../../../codes/packs/index.ts";
import type { Face } from "../../../project/schema/project.ts";
import { knownWind } from "../../../proof/wind/bands.ts";
import { tableScenes } from "../../../scene/table.ts";
import { heading } from "../../../scene/views/extent.ts";
import { fixingPlan } from "../../../scene/views/fixing-plan.ts";
import type { FaceLayout, Fixing } from "../../../setout/facade.ts";
import { message } from "../../../text/message.ts";
import { lengthCells } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { grouped, oneByOne } from "../grouped.ts";
import { ownFace } from "../of-face.ts";
import { largestView } from "../paper.ts";

export function fixingSheets(facts: KindFacts): Iterable<Drawing> {
  const { facade, demands } = facts.design;
  const wind = knownWind(demands.structure);
  const { reader, room, paper, memo } = facts;
  return oneByOne(facade.faces, (face) =>
    memo.recall(fixingsOf, { face, own: ownFace(facts, face), wind, reader, room, paper }),
  );
}

interface From extends Pick<KindFacts, "reader" | "room" | "paper"> {
  readonly face: FaceLayout;
  readonly own: Face | undefined;
  readonly wind: WindDemand | undefined;
}

function fixingsOf(from: From): Drawing[] {
  const { face, own, wind, paper } = from;
  const project = { faces: own ? [own] : [] };
  const table = screwTable(from);
  const plan = largestView(
    paper,
    (scale) => fixingPlan({ faces: [face] }, project, { face: face.id, wind, ...scale }),
    table,
  );
  if (!plan) return [];
  const type = message("drawing.document-type.fixings");
  return [{ name: `fixings-${face.id}`, type, scenes: [plan, ...table], face: face.id }];
}

interface ScrewRow extends Pick<Fixing, "kind" | "screw" | "hole"> {
  readonly of: string;
  readonly count: number;
  readonly leastBite: number;
}

function screwTable({ face, reader, room }: From) {
  const cells = lengthCells(reader);
  const all = face.pieces
    .filter(({ kind }) => kind === "sheet" || kind === "board" || kind === "post")
    .flatMap(({ kind: of, fixings }) => fixings.map((fixing) => ({ ...fixing, of })));
  const rows = [...grouped(all, ({ of, screw, kind, hole }) => `${of} ${screw} ${kind} ${hole}`).values()]
    .flatMap((group): ScrewRow[] => {
      const [first] = group;
      if (!first) return [];
      return [{ ...first, count: group.length, leastBite: Math.min(...group.map(({ bite }) => bite)) }];
    })
    .sort((a, b) => (a.of < b.of ? -1 : a.of > b.of ? 1 : a.hole - b.hole));
  return tableScenes({
    id: `screws-${face.id}`,
    title: message("drawing.title.screws", { face: heading(face.id) }),
    room,
    rows,
    columns: [
      { head: message("drawing.column.in"), cell: ({ of }) => message("drawing.term", { word: of }) },
      { head: message("schedule.column.screw"), cell: ({ screw }) => screw },
      { head: message("drawing.column.point"), cell: ({ kind }) => message("drawing.term", { word: kind }) },
      { head: message("schedule.column.hole"), cell: ({ hole }) => cells.hole(hole), align: "end" },
      { head: message("drawing.column.count"), cell: ({ count }) => String(count), align: "end" },
      {
        head: message("drawing.column.least-bite"),
        cell: ({ leastBite }) => cells.size(leastBite),
        align: "end",
      },
    ],
  });
}
