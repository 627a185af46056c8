/** The boards of the pile as they are ripped and crosscut: each drawn, and all in a list. */
import type { PilePart } from "../../../cutting/facade/plan.ts";
import type { Scene } from "../../../scene/model.ts";
import { tableScenes } from "../../../scene/table.ts";
import { cutBoardScene } from "../../../scene/views/cutting/cut-board.ts";
import { fittingScale } from "../../../scene/views/scales.ts";
import { type Message, message } from "../../../text/message.ts";
import { lengthCells } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function ripSheets(facts: KindFacts): Drawing[] {
  const { plan, reader, room, memo } = facts;
  const rips = plan?.rips;
  if (!rips || rips.ripped.length === 0) return [];
  const scenes = [...memo.recall(ripList, { rips, reader, room }), ...memo.recall(pictures, { rips, room })];
  return [{ name: "rips", type: message("drawing.document-type.rips"), scenes }];
}

interface From extends Pick<KindFacts, "room"> {
  readonly rips: PilePart;
}

function ripList({
  rips: { ripped, request, result },
  reader,
  room,
}: From & Pick<KindFacts, "reader">): Scene[] {
  const cells = lengthCells(reader);
  const boards = new Map(request.boards.map((one) => [one.id, one]));
  const bars = new Map(result.lengths.plan.bars.map((bar) => [bar.stockId, bar]));
  const rows = ripped.flatMap(({ boardId, strips }) => {
    const board = boards.get(boardId);
    return board ? strips.map((strip) => ({ board, strip })) : [];
  });
  return tableScenes({
    id: "rip-list",
    title: message("drawing.title.rip-list"),
    room,
    rows,
    columns: [
      { head: message("schedule.column.board"), cell: ({ board }) => board.id, bold: true },
      { head: message("schedule.column.lot"), cell: ({ board }) => board.lot },
      {
        head: message("drawing.column.left-edge"),
        cell: ({ strip }) => cells.place(strip.across.from),
        align: "end",
      },
      {
        head: message("drawing.column.rip-to"),
        cell: ({ strip }) => cells.rip(strip.across.to - strip.across.from),
        align: "end",
      },
      {
        head: message("drawing.column.from-start"),
        cell: ({ strip }): Message =>
          message("drawing.saw.pieces", {
            pieces: (bars.get(strip.id)?.pieces ?? []).map(({ demandId, from, to }) =>
              message("drawing.saw.piece-from", {
                mark: demandId,
                from: cells.place(from),
                length: cells.cut(to - from),
              }),
            ),
          }),
        wrap: 100,
      },
    ],
  });
}

function pictures({ rips: { ripped, request, result }, room }: From): Scene[] {
  const boards = new Map(request.boards.map((one) => [one.id, one]));
  const longest = Math.max(...ripped.map(({ boardId }) => boards.get(boardId)?.length ?? 0));
  const scale = fittingScale(
    { x: [0, longest], y: [0, 1] },
    { room: [(room.width - 40) / 2 - 10, room.height] },
  );
  return ripped.flatMap((one) => {
    const board = boards.get(one.boardId);
    return board ? [cutBoardScene(one, { board, result, scale })] : [];
  });
}
