/** The cuts of every sheet in the order in which they are made, as CSV: by the numbers that stand on the drawn sheets. */
import { type NumberedCut, numberedCuts } from "../../cutting/cut-order.ts";
import type { CutPlan } from "../../cutting/facade/plan.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { type CsvFile, column, csvFile, lengthColumns } from "./table.ts";

interface CutRow extends NumberedCut {
  readonly sheet: number;
  readonly stock: string;
}

/**
 * `At` is measured in the sheet's frame, from its left for a cut along the height and from its bottom for one across; the blade
 * takes the kerf from there up. `Off the edge` is the same from the left or bottom edge of the part: what the fence is set to.
 */
export function cutOrderCsv(plan: CutPlan | undefined, reader: Reader): CsvFile {
  const length = lengthColumns(reader);
  return csvFile<CutRow>("cut-order-sheets.csv", {
    reader,
    rows: cutRows(plan),
    columns: [
      column("sheet", ({ sheet }) => sheet),
      column("stock", ({ stock }) => stock),
      column("cut-number", ({ number }) => number),
      column("cut-way", (cut) => say(message(`schedule.cut-way.${wayOf(cut)}`), reader)),
      length("cut-at", "place", placeOf),
      length("cut-off-edge", "cut", (cut) => placeOf(cut) - edgeOf(cut)),
      length("cut-length", "size", (cut) => (wayOf(cut) === "along" ? cut.region.height : cut.region.width)),
      column("cut-part", ({ part }) =>
        say(
          part
            ? message(`schedule.cut-part.${part.side}`, { cut: part.cut })
            : message("schedule.cut-part.whole"),
          reader,
        ),
      ),
    ],
  });
}

/** Sheets are numbered through the whole building, as in the list of their pieces. */
function cutRows(plan: CutPlan | undefined): CutRow[] {
  return (plan?.sheets ?? [])
    .flatMap(({ result }) => result.plan.sheets)
    .flatMap(({ stockId, tree }, index) =>
      numberedCuts(tree).map((cut): CutRow => ({ ...cut, sheet: index + 1, stock: stockId })),
    );
}

function wayOf({ from, to }: NumberedCut): "along" | "across" {
  return from[0] === to[0] ? "along" : "across";
}

function placeOf(cut: NumberedCut): number {
  return wayOf(cut) === "along" ? cut.from[0] : cut.from[1];
}

function edgeOf(cut: NumberedCut): number {
  return wayOf(cut) === "along" ? cut.region.x : cut.region.y;
}
