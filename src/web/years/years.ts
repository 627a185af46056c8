/** The years that can be told of a pick: of its own zone, or of the first on its face that has the one. */
import type { Design } from "../../design.ts";
import { proofContext, type ZoneView } from "../../proof/context.ts";
import { type Pick, zoneIdOf } from "../picks/pick.ts";
import { dryingYear } from "./drying-year.ts";
import { gapYear } from "./gap-year.ts";
import { lightYear } from "./light-year.ts";
import { YEAR_KINDS, type Year, type YearKind } from "./year.ts";

const TOLD: Readonly<Record<YearKind, (of: { design: Design; view: ZoneView }) => Year | undefined>> = {
  gap: gapYear,
  light: lightYear,
  drying: dryingYear,
};

export function yearsOf(design: Design, pick: Pick): ReadonlyMap<YearKind, Year> {
  const wanted = zoneIdOf(design, pick);
  const views = proofContext(design).zones.filter(
    ({ where }) => where.face === pick.face && (wanted === undefined || where.zone === wanted),
  );
  const years = new Map<YearKind, Year>();
  for (const kind of YEAR_KINDS) {
    for (const view of views) {
      const year = TOLD[kind]({ design, view });
      if (!year) continue;
      years.set(kind, year);
      break;
    }
  }
  return years;
}
