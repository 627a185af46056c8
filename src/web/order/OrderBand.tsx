import { orderCsv } from "../../output/csv/order.ts";
import type { OrderLine } from "../../takeoff/model.ts";
import { message } from "../../text/message.ts";
import { sayNumber } from "../../text/say.ts";
import { CuttingState } from "../cutting/CuttingState.tsx";
import type { Cutting } from "../cutting/use-cutting.ts";
import { handOut } from "../sheet/hand-out.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import { useWords } from "../words.ts";

/** What is bought, with spare, and what it weighs. */
export function OrderBand({ cutting, currency }: { cutting: Cutting; currency: string }) {
  const words = useWords();
  const { w, s, reader } = words;
  const { cut, stale, closing } = cutting;
  const takeoff = cut?.takeoff;
  const waits = stale || closing !== undefined;
  const money = (value: number | undefined): string =>
    value === undefined ? w("schedule.order.no-price") : sayNumber(value, 2, reader);
  return (
    <div className="order-band" aria-busy={stale}>
      <div className="order-head">
        <h2>{w("page.order")}</h2>
        <CuttingState {...{ cutting, currency }}>{w("page.order.about")}</CuttingState>
        {takeoff && (
          <button
            type="button"
            className="fold"
            aria-disabled={waits}
            onClick={() => {
              if (waits) return;
              const { name, text } = orderCsv(takeoff, reader);
              handOut({ name, content: text }, "text/csv");
            }}
          >
            {w("page.order.save")}
          </button>
        )}
      </div>
      {takeoff && (
        <Scrolls className="order-tables" label={w("page.order")}>
          <table>
            <thead>
              <tr>
                <th scope="col">{w("schedule.column.item")}</th>
                <th scope="col">{w("schedule.column.needed")}</th>
                <th scope="col">{w("schedule.column.ordered")}</th>
                <th scope="col">{w("schedule.column.unit")}</th>
                <th scope="col">{w("schedule.column.unit-price")}</th>
                <th scope="col">
                  {s(
                    message("schedule.column.in-unit", {
                      name: message("schedule.column.amount"),
                      unit: takeoff.order.currency,
                    }),
                  )}
                </th>
              </tr>
            </thead>
            <tbody>
              {[...takeoff.order.lines, ...takeoff.order.consumables].map((line: OrderLine) => (
                <tr key={`${s(line.item)} ${line.id ?? ""}`}>
                  <th scope="row">
                    {s(line.item)} {line.id && <span className="sub">{line.id}</span>}
                  </th>
                  <td>{sayNumber(Number(line.needed.toFixed(2)), undefined, reader)}</td>
                  <td>{sayNumber(line.ordered, undefined, reader)}</td>
                  <td className="word">{w(`schedule.unit.${line.unit}`)}</td>
                  <td>{money(line.unitPrice)}</td>
                  <td>{line.amount === undefined ? "" : money(line.amount)}</td>
                </tr>
              ))}
            </tbody>
            <tfoot>
              <tr>
                <th scope="row" colSpan={5}>
                  {w("schedule.order.sum", {
                    withoutPrice: takeoff.order.withoutPrice + takeoff.order.consumables.length,
                  })}
                </th>
                <td>{money(takeoff.order.sum)}</td>
              </tr>
            </tfoot>
          </table>
          <table>
            <thead>
              <tr>
                <th scope="col">{w("page.order.masses")}</th>
                <th scope="col">{w("page.order.count")}</th>
                <th scope="col">kg</th>
              </tr>
            </thead>
            <tbody>
              {takeoff.masses.map(({ kind, material, count, massKg }) => (
                <tr key={`${kind} ${material}`}>
                  <th scope="row">
                    {w(`term.${kind}`)} <span className="sub">{material}</span>
                  </th>
                  <td>{count}</td>
                  <td>{sayNumber(massKg, 1, reader)}</td>
                </tr>
              ))}
            </tbody>
            <tfoot>
              <tr>
                <th scope="row" colSpan={2}>
                  {w("page.order.mass")}
                </th>
                <td>{sayNumber(takeoff.massKg, 0, reader)}</td>
              </tr>
            </tfoot>
          </table>
        </Scrolls>
      )}
    </div>
  );
}
