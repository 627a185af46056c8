/** A card for each finish batch: what belongs to it, how much it takes, and a line a piece to tick coat by coat. */
import type { Scene } from "../../../scene/model.ts";
import { CAPTION_ROOM, GAP } from "../../../scene/sheet.ts";
import { type TableColumn, tableScenes } from "../../../scene/table.ts";
import { textBlock } from "../../../scene/text-block.ts";
import { heading } from "../../../scene/views/extent.ts";
import { type FinishBatch, finishBatches } from "../../../takeoff/finish-batches.ts";
import type { PieceLine } from "../../../takeoff/model.ts";
import { message } from "../../../text/message.ts";
import { lengthCells } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { oneByOne } from "../grouped.ts";

export function finishSheets(facts: KindFacts): Iterable<Drawing> {
  const { takeoff, design, reader, room, memo } = facts;
  if (!takeoff) return [];
  return oneByOne(finishBatches(takeoff, design.facade), (batch) => [
    {
      name: `finish-${batch.code}`,
      type: message("drawing.document-type.finish"),
      scenes: memo.recall(card, { batch, reader, room }),
      face: batch.face,
    },
  ]);
}

interface From extends Pick<KindFacts, "reader" | "room"> {
  readonly batch: FinishBatch;
}

function card({ batch, reader, room }: From): Scene[] {
  const cells = lengthCells(reader);
  const { code, face, finish, areaM2, coats, dryingDays, litres } = batch;
  const head = textBlock({
    id: `finish-${code}`,
    title: message("drawing.title.finish-batch", { code, face: heading(face) }),
    width: Math.min(room.width, 250),
    paragraphs: [
      { text: finish, weight: "bold" },
      { text: message("drawing.finish.area", { area: areaM2, count: batch.pieces.length }) },
      ...(litres ? [{ text: message("drawing.finish.litres", { ...litres }) }] : []),
      ...(dryingDays === undefined ? [] : [{ text: message("drawing.finish.days", { days: dryingDays }) }]),
      { text: message("drawing.finish.ends") },
      { text: message("drawing.finish.fire"), weight: "bold" },
    ],
  });
  const ticks = Array.from(
    { length: coats ?? 1 },
    (_, i): TableColumn<PieceLine> => ({
      head: message("drawing.column.coat", { number: i + 1 }),
      cell: () => "tick box",
    }),
  );
  const firstHeight = room.height - (head.bounds.y[1] - head.bounds.y[0]) - CAPTION_ROOM - GAP;
  return [
    head,
    ...tableScenes<PieceLine>({
      id: `finish-pieces-${code}`,
      title: message("drawing.title.finish-pieces", { code }),
      room: { ...room, firstHeight },
      rows: batch.pieces,
      columns: [
        { head: message("schedule.column.mark"), cell: ({ mark }) => mark, bold: true },
        { head: message("schedule.column.length"), cell: ({ length }) => cells.cut(length), align: "end" },
        { head: message("schedule.column.width"), cell: ({ width }) => cells.rip(width), align: "end" },
        { head: message("schedule.column.lot"), cell: ({ lot }) => lot },
        ...ticks,
        { head: message("drawing.column.ends"), cell: () => "tick box" },
      ],
    }),
  ];
}
