/** The ultraviolet on the membrane month by month: spread over the zone, and at its brightest point. */
import type { Design } from "../../design.ts";
import type { ZoneView } from "../../proof/context.ts";
import { zoneLights } from "../../proof/light/zone-light.ts";
import { message } from "../../text/message.ts";
import type { Year } from "./year.ts";

/** MJ/m²; undefined where no light gets in, or where the project does not tell its ground. */
export function lightYear({ design, view }: { design: Design; view: ZoneView }): Year | undefined {
  const [light] = zoneLights({ ...design, zones: [view] }) ?? [];
  if (!light?.worst) return undefined;
  const { year } = light.worst.point;
  const months = year.uvMJ.map((most, month) => ({ least: light.average.uvMJ[month] ?? 0, most }));
  const limit = design.project.limits.membrane?.maxUvPerYear;
  const peak = year.uvMJYear;
  const average = light.average.uvMJYear;
  return {
    zone: view.where.zone,
    months,
    // A year's limit spread evenly: months over it are made up for by others.
    limits: limit
      ? [
          {
            value: limit.value / months.length,
            name: message("page.year.light.limit", { value: limit.value }),
          },
        ]
      : [],
    about: message("page.year.light.about", { gap: light.worst.kind.slot.gapMm }),
    range: message("page.year.light.range", { average, peak }),
    says: message("page.year.light.says", {
      average,
      peak,
      least: Math.min(...months.map((month) => month.most)),
      most: Math.max(...months.map((month) => month.most)),
    }),
  };
}
