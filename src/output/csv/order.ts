/** The order as CSV, with what the work uses up; its last record is the sum of the lines that have a price. */
import type { OrderLine, Takeoff } from "../../takeoff/model.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { type CsvFile, column, csvFile } from "./table.ts";

type OrderRow = Partial<OrderLine> & Pick<OrderLine, "item">;

export function orderCsv({ order }: Takeoff, reader: Reader): CsvFile {
  const { currency, lines, consumables, sum, withoutPrice } = order;
  const total: OrderRow = {
    item: message("schedule.order.sum", { withoutPrice: withoutPrice + consumables.length }),
    amount: sum,
  };
  return csvFile<OrderRow>("order.csv", {
    reader,
    rows: [...lines, ...consumables, total],
    columns: [
      column("item", ({ item }) => say(item, reader)),
      column("stock", ({ id }) => id),
      column("unit", ({ unit }) => unit && say(message(`schedule.unit.${unit}`), reader)),
      column("needed", ({ needed }) => (needed === undefined ? undefined : Number(needed.toFixed(2)))),
      column("ordered", ({ ordered }) => ordered),
      column("unit-price", ({ unitPrice }) => unitPrice, currency),
      column("amount", ({ amount }) => amount, currency),
      column("note", ({ amount }) =>
        amount === undefined ? say(message("schedule.order.no-price"), reader) : undefined,
      ),
    ],
  });
}
