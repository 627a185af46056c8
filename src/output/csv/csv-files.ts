/** Schedules, cut lists and the order of a facade as CSV files. Same facade, same bytes. */
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Facade } from "../../setout/facade.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import type { Reader } from "../../text/say.ts";
import { lengthListCsv, ripListCsv, sheetListCsv } from "./cut-lists.ts";
import { cutOrderCsv } from "./cut-order.ts";
import { orderCsv } from "./order.ts";
import { battenScheduleCsv, fixingsCsv, pieceScheduleCsv } from "./schedules.ts";
import type { CsvFile } from "./table.ts";

export interface CsvRequest {
  readonly facade: Facade;
  /** Undefined where cutting gave none: the cut lists then have titles alone. */
  readonly cutPlan: CutPlan | undefined;
  readonly takeoff: Takeoff;
  /** Language of the titles and words; feet and inches stand beside millimetres where they are read. */
  readonly reader: Reader;
}

export function csvFiles({ facade, cutPlan, takeoff, reader }: CsvRequest): CsvFile[] {
  return [
    pieceScheduleCsv(takeoff, reader),
    battenScheduleCsv(takeoff, reader),
    fixingsCsv(facade, reader),
    sheetListCsv(cutPlan, reader),
    cutOrderCsv(cutPlan, reader),
    lengthListCsv(cutPlan, reader),
    ripListCsv(cutPlan, reader),
    orderCsv(takeoff, reader),
  ];
}
