/** Schedules: every piece, every batten with what is screwed and packed behind it, and what it all comes to. */
import type { Scene } from "../../../scene/model.ts";
import { type TableColumn, tableScenes } from "../../../scene/table.ts";
import type { BattenLine, PieceLine, Takeoff } from "../../../takeoff/model.ts";
import { message } from "../../../text/message.ts";
import { figure, type LengthCells, lengthCells } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function scheduleSheets({ takeoff, reader, room, memo }: KindFacts): Drawing[] {
  if (!takeoff) return [];
  const { pieces, battens, masses, massKg, screws, areas, closures, flashings, gaskets, finishes } = takeoff;
  const type = message("drawing.document-type.schedule");
  const list = (name: string, scenes: readonly Scene[]): Drawing[] =>
    scenes.length === 0 ? [] : [{ name, type, scenes }];
  const counted = { masses, massKg, screws, areas, closures, flashings, gaskets, finishes };
  return [
    ...list("schedule-pieces", memo.recall(pieceTable, { pieces, reader, room })),
    ...list("schedule-battens", memo.recall(battenTable, { battens, reader, room })),
    ...list("quantities", memo.recall(quantities, { ...counted, reader, room })),
  ];
}

type On<Key extends keyof Takeoff> = Pick<KindFacts, "reader" | "room"> & Pick<Takeoff, Key>;

function pieceTable({ pieces, reader, room }: On<"pieces">): Scene[] {
  return tableScenes({
    id: "schedule-pieces",
    title: message("drawing.title.piece-schedule"),
    room,
    rows: pieces,
    columns: [
      ...sizeColumns<PieceLine>(lengthCells(reader)),
      { head: message("schedule.column.lot"), cell: ({ lot }) => lot },
    ],
  });
}

function battenTable({ battens, reader, room }: On<"battens">): Scene[] {
  return tableScenes({
    id: "schedule-battens",
    title: message("drawing.title.batten-schedule"),
    room,
    rows: battens,
    columns: [
      ...sizeColumns<BattenLine>(lengthCells(reader)),
      {
        head: message("schedule.column.screws"),
        cell: ({ screws }) => screws.map(({ screw, count }) => `${count} × ${screw}`).join(", "),
      },
      {
        head: message("schedule.column.packers"),
        cell: ({ packers }) =>
          packers.length === 0
            ? undefined
            : message("drawing.saw.pieces", {
                pieces: packers.map((one) => message("schedule.packers", { ...one })),
              }),
      },
    ],
  });
}

function sizeColumns<Line extends Omit<PieceLine, "course" | "lot" | "finish">>(
  cells: LengthCells,
): TableColumn<Line>[] {
  return [
    { head: message("schedule.column.mark"), cell: ({ mark }) => mark, bold: true },
    { head: message("schedule.column.kind"), cell: ({ kind }) => message("drawing.term", { word: kind }) },
    { head: message("schedule.column.length"), cell: (one) => cells.cut(one.length), align: "end" },
    { head: message("schedule.column.width"), cell: ({ width }) => cells.rip(width), align: "end" },
    { head: message("drawing.column.thick"), cell: ({ thickness }) => cells.size(thickness), align: "end" },
    { head: message("drawing.column.kg"), cell: ({ massKg }) => figure(massKg, 1), align: "end" },
  ];
}

function quantities({
  masses,
  massKg,
  screws,
  areas,
  closures,
  flashings,
  gaskets,
  finishes,
  reader,
  room,
}: On<
  "masses" | "massKg" | "screws" | "areas" | "closures" | "flashings" | "gaskets" | "finishes"
>): Scene[] {
  const cells = lengthCells(reader);
  const strips = [...closures, ...flashings, ...gaskets];
  return [
    ...tableScenes({
      id: "masses",
      title: message("drawing.title.masses", { mass: massKg }),
      room,
      rows: masses,
      columns: [
        {
          head: message("schedule.column.kind"),
          cell: ({ kind }) => message("drawing.term", { word: kind }),
        },
        { head: message("schedule.column.material"), cell: ({ material }) => material },
        { head: message("drawing.column.count"), cell: ({ count }) => String(count), align: "end" },
        { head: message("drawing.column.kg"), cell: (one) => figure(one.massKg, 1), align: "end" },
      ],
    }),
    ...tableScenes({
      id: "areas",
      title: message("drawing.title.areas"),
      room,
      rows: areas,
      columns: [
        { head: message("schedule.column.zone"), cell: ({ face, zone }) => `${face}/${zone}` },
        { head: message("drawing.column.net-m2"), cell: ({ net }) => figure(net, 2), align: "end" },
        {
          head: message("drawing.column.open"),
          cell: (one) => figure(one.openSharePercent, 1),
          align: "end",
        },
      ],
    }),
    ...tableScenes({
      id: "screws",
      title: message("drawing.title.screw-count"),
      room,
      rows: screws,
      columns: [
        { head: message("schedule.column.screw"), cell: ({ screw }) => screw, bold: true },
        { head: message("drawing.column.count"), cell: ({ count }) => String(count), align: "end" },
        { head: message("term.fixed"), cell: ({ fixed }) => String(fixed), align: "end" },
        { head: message("term.sliding"), cell: ({ sliding }) => String(sliding), align: "end" },
      ],
    }),
    ...tableScenes({
      id: "strips",
      title: message("drawing.title.strips"),
      room,
      rows: strips,
      columns: [
        { head: message("schedule.column.material"), cell: ({ material }) => material },
        { head: message("schedule.column.width"), cell: ({ width }) => cells.rip(width), align: "end" },
        {
          head: message("drawing.column.thick"),
          cell: ({ thickness }) => cells.size(thickness),
          align: "end",
        },
        { head: message("drawing.column.metres"), cell: ({ metres }) => figure(metres, 1), align: "end" },
      ],
    }),
    ...tableScenes({
      id: "finishes",
      title: message("drawing.title.finishes"),
      room,
      rows: finishes,
      columns: [
        { head: message("schedule.column.finish"), cell: ({ finish }) => finish, wrap: 90 },
        { head: message("drawing.column.m2"), cell: ({ areaM2 }) => figure(areaM2, 1), align: "end" },
        {
          head: message("drawing.column.litres"),
          cell: ({ litres }) =>
            litres && message("drawing.litres", { least: litres.least, most: litres.most }),
          align: "end",
        },
      ],
    }),
  ];
}
