/** The water that the cavity's air can carry off at most, month by month: without sun and with some. */
import type { Design } from "../../design.ts";
import { REFERENCE_DAY, dryingYear as reckoned } from "../../proof/cavity-drying.ts";
import type { ZoneView } from "../../proof/context.ts";
import { message } from "../../text/message.ts";
import type { Year } from "./year.ts";

const G_PER_KG = 1000;

/** g/m² of wall a day; undefined where air comes and goes too freely to be told, or the project lacks its climate. */
export function dryingYear({ design, view }: { design: Design; view: ZoneView }): Year | undefined {
  const { climate } = design.project.site;
  const year = reckoned(view, { heat: design.demands.heat, ...(climate && { climate }) });
  if (!year) return undefined;
  const months = year.shaded.map((shaded, month) => ({
    least: Math.max(shaded, 0) * G_PER_KG,
    most: Math.max(year.sunny[month] ?? 0, 0) * G_PER_KG,
  }));
  const least = Math.min(...months.map((month) => month.least));
  const most = Math.max(...months.map((month) => month.most));
  const sun = REFERENCE_DAY.sunWPerM2;
  return {
    zone: view.where.zone,
    months,
    limits: [],
    about: message("page.year.drying.about", { sun }),
    range: message("page.year.drying.range", { least, most }),
    says: message("page.year.drying.says", { least, most, sun }),
  };
}
