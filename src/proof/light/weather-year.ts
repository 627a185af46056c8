/**
 * A year of measured or typical weather as the sun's steps. An hour tells one beam: within the hour it rises and falls with
 * the sun's height as it would under a clear sky.
 */
import { sunDirection } from "../../equations/light/sun-direction.ts";
import type { Weather } from "../../project/weather/epw.ts";
import type { Air } from "./model.ts";
import { skyByHeight } from "./sky-by-height.ts";
import { overHorizon, type SunTable, SunTableMaker } from "./sun-table.ts";

const PARTS = 4;
/** Midnight at Greenwich before 1 January 2025, in days from noon of 1 January 2000. */
const YEAR_START = 9131.5;

export function weatherYear(weather: Weather, air: Air): SunTable {
  const clear = skyByHeight(air);
  const maker = new SunTableMaker(weather.hours.length * PARTS);
  for (const { month, dayOfYear, hour, beam, sky, level } of weather.hours) {
    maker.addEven(month, { sky, level });
    if (beam <= 0) continue;
    const nodes = Array.from({ length: PARTS + 1 }, (_, k) =>
      sunDirection({
        latitudeDeg: weather.latitudeDeg,
        longitudeDeg: weather.longitudeDeg,
        daysFromJ2000: YEAR_START + dayOfYear + (hour + k / PARTS - weather.zoneHours) / 24,
      }),
    );
    const seen = nodes.slice(1).flatMap((end, k) => {
      const step = overHorizon(nodes[k] ?? end, end);
      if (!step) return [];
      return [{ weight: step.part * clear((step.start.up + step.end.up) / 2, 0).beam, ...step }];
    });
    const whole = seen.reduce((sum, { weight }) => sum + weight, 0);
    for (const { start, end, weight } of seen) {
      maker.addBeam({ month, beam: (beam * weight) / whole }, { start, end });
    }
  }
  return maker.done();
}
