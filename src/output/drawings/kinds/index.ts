/** What draws each kind of sheet: a kind joins by its line here and its name among `SHEET_KINDS`. */
import type { SheetKind } from "../../../project/schema/sheets.ts";
import type { Drawing, KindFacts, ListedDrawing } from "../facts.ts";
import { battenSheets } from "./battens.ts";
import { bentMetalSheets } from "./bent-metal.ts";
import { bookSheets } from "./book.ts";
import { coverSheets } from "./cover.ts";
import { cutLengthSheets } from "./cut-lengths.ts";
import { cutSheetSheets } from "./cut-sheets.ts";
import { drillingSheets } from "./drilling.ts";
import { finishSheets } from "./finish.ts";
import { fixingSheets } from "./fixings.ts";
import { holdPointSheets } from "./hold-points.ts";
import { keyPlanSheets } from "./key-plan.ts";
import { lightSheets } from "./light.ts";
import { methodSheets } from "./method.ts";
import { orderSheets } from "./order.ts";
import { ownerSheets } from "./owner.ts";
import { packingSheets } from "./packing.ts";
import { planSectionSheets } from "./plan-sections.ts";
import { ripSheets } from "./rips.ts";
import { scheduleSheets } from "./schedules.ts";
import { sectionSheets } from "./sections.ts";
import { setOutSheets } from "./set-out.ts";
import { windSheets } from "./wind.ts";

export const KINDS: Partial<Record<SheetKind, (facts: KindFacts) => Iterable<Drawing>>> = {
  "set-out": setOutSheets,
  battens: battenSheets,
  packing: packingSheets,
  sections: sectionSheets,
  "plan-sections": planSectionSheets,
  fixings: fixingSheets,
  drilling: drillingSheets,
  "cut-sheets": cutSheetSheets,
  "cut-lengths": cutLengthSheets,
  rips: ripSheets,
  "bent-metal": bentMetalSheets,
  schedules: scheduleSheets,
  order: orderSheets,
  book: bookSheets,
  light: lightSheets,
  wind: windSheets,
  method: methodSheets,
  "hold-points": holdPointSheets,
  finish: finishSheets,
  owner: ownerSheets,
};

/** Kinds that tell of the whole set. */
export const INDEXES: Partial<
  Record<SheetKind, (facts: KindFacts, set: readonly ListedDrawing[]) => Iterable<Drawing>>
> = {
  cover: coverSheets,
  "key-plan": keyPlanSheets,
};
