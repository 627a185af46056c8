/** The owner's book: where each part is and how it comes off, what is kept as spare, and what is looked after when. */

import type { Scene } from "../../../scene/model.ts";
import { CAPTION_ROOM, GAP } from "../../../scene/sheet.ts";
import { tableScenes } from "../../../scene/table.ts";
import { textBlock } from "../../../scene/text-block.ts";
import { heading } from "../../../scene/views/extent.ts";
import type { FaceLayout, Piece } from "../../../setout/facade.ts";
import type { OrderLine } from "../../../takeoff/model.ts";
import { message } from "../../../text/message.ts";
import { figure } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";

const UPKEEP = ["look", "joints", "finish", "wash", "wear", "log"] as const;
/** Marks named before a count takes their place. */
const MARKS_SHOWN = 4;

export function ownerSheets(facts: KindFacts): Drawing[] {
  const type = message("drawing.document-type.owner");
  const { design, takeoff, room, memo } = facts;
  const block = memo.recall(upkeep, { room });
  const firstHeight = room.height - (block.bounds.y[1] - block.bounds.y[0]) - CAPTION_ROOM - GAP;
  const lines = (takeoff?.order.lines ?? []).filter(({ ordered, needed }) => ordered > needed);
  return [
    {
      name: "upkeep",
      type,
      scenes: [block, ...memo.recall(spares, { lines, room: { ...room, firstHeight } })],
    },
    { name: "part-map", type, scenes: memo.recall(parts, { faces: design.facade.faces, room }) },
  ].filter(({ scenes }) => scenes.length > 0);
}

function upkeep({ room }: Pick<KindFacts, "room">): Scene {
  return textBlock({
    id: "upkeep",
    title: message("drawing.title.upkeep"),
    width: Math.min(room.width, 250),
    paragraphs: [
      ...UPKEEP.map((what) => ({ text: message(`drawing.owner.${what}`) })),
      { text: message("drawing.owner.caution"), weight: "bold" as const },
    ],
  });
}

/** What was ordered over what the facade takes, to be kept from the same batch. */
function spares({
  lines,
  room,
}: Pick<KindFacts, "room"> & { readonly lines: readonly OrderLine[] }): Scene[] {
  return tableScenes({
    id: "spares",
    title: message("drawing.title.spares"),
    room,
    rows: lines,
    columns: [
      { head: message("schedule.column.item"), cell: ({ item }) => item, wrap: 130 },
      {
        head: message("drawing.column.spare"),
        cell: ({ ordered, needed }) => figure(ordered - needed, 1),
        align: "end",
        bold: true,
      },
      { head: message("schedule.column.unit"), cell: ({ unit }) => message(`schedule.unit.${unit}`) },
    ],
  });
}

function parts({
  faces,
  room,
}: Pick<KindFacts, "room"> & { readonly faces: readonly FaceLayout[] }): Scene[] {
  const clad = faces.flatMap((face) =>
    face.pieces
      .filter(({ kind }) => kind === "sheet" || kind === "board" || kind === "post" || kind === "return")
      .map((piece) => ({ face, piece })),
  );
  return tableScenes({
    id: "part-map",
    title: message("drawing.title.part-map"),
    room,
    rows: clad,
    columns: [
      { head: message("schedule.column.mark"), cell: ({ piece }) => piece.mark, bold: true },
      { head: message("drawing.column.face"), cell: ({ face }) => heading(face.id) },
      { head: message("schedule.column.material"), cell: ({ piece }) => piece.material, wrap: 46 },
      { head: message("drawing.column.off-with"), cell: ({ piece }) => screwsOf(piece) },
      {
        head: message("drawing.column.first-off"),
        cell: ({ piece }) => {
          const { removeBefore: marks } = piece;
          if (marks.length === 0) return undefined;
          return marks.length > MARKS_SHOWN
            ? message("drawing.owner.marks-more", {
                marks: marks.slice(0, MARKS_SHOWN),
                count: marks.length - MARKS_SHOWN,
              })
            : marks.join(", ");
        },
        wrap: 50,
      },
    ],
  });
}

function screwsOf({ fixings }: Piece): string {
  const counts = new Map<string, number>();
  for (const { screw } of fixings) counts.set(screw, (counts.get(screw) ?? 0) + 1);
  return [...counts].map(([screw, count]) => `${count} × ${screw}`).join(", ");
}
