/** The order list, with what the work uses up and the sum of what has a price. */
import { tableScenes } from "../../../scene/table.ts";
import type { Order, OrderLine } from "../../../takeoff/model.ts";
import { message } from "../../../text/message.ts";
import { figure } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";

type OrderRow = Partial<OrderLine> & Pick<OrderLine, "item">;

export function orderSheets({ takeoff, room, memo }: KindFacts): Drawing[] {
  return takeoff ? memo.recall(orderOf, { order: takeoff.order, room }) : [];
}

function orderOf({
  order: { currency, lines, consumables, sum, withoutPrice },
  room,
}: Pick<KindFacts, "room"> & { readonly order: Order }): Drawing[] {
  const total: OrderRow = {
    item: message("schedule.order.sum", { withoutPrice: withoutPrice + consumables.length }),
    amount: sum,
  };
  const scenes = tableScenes<OrderRow>({
    id: "order",
    title: message("drawing.title.order", { currency }),
    room,
    rows: [...lines, ...consumables, total],
    columns: [
      { head: message("schedule.column.item"), cell: ({ item }) => item, wrap: 150 },
      { head: message("schedule.column.stock"), cell: ({ id }) => id },
      {
        head: message("schedule.column.needed"),
        cell: ({ needed }) => (needed === undefined ? undefined : figure(needed, 2)),
        align: "end",
      },
      {
        head: message("schedule.column.ordered"),
        cell: ({ ordered }) => (ordered === undefined ? undefined : String(ordered)),
        align: "end",
        bold: true,
      },
      {
        head: message("schedule.column.unit"),
        cell: ({ unit }) => unit && message(`schedule.unit.${unit}`),
      },
      {
        head: message("schedule.column.unit-price"),
        cell: ({ unitPrice }) => (unitPrice === undefined ? undefined : figure(unitPrice, 2)),
        align: "end",
      },
      {
        head: message("schedule.column.amount"),
        cell: ({ amount }) => (amount === undefined ? message("schedule.order.no-price") : figure(amount, 2)),
        align: "end",
      },
    ],
  });
  return [{ name: "order", type: message("drawing.document-type.order"), scenes }];
}
