/** When the cladding will be done if it goes on as so far: a plain average, said as such. */
import type { Facade } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import type { SiteState } from "../journal/fold.ts";
import { areaM2, isSkin } from "./counts.ts";
import { dateOf, dayOf } from "./days.ts";

export type Forecast = { readonly says: Message } & (
  | { readonly kind: "done" }
  /** Too little is known for an average. */
  | { readonly kind: "cannot evaluate" }
  | {
      readonly kind: "forecast";
      /** Square metres a day, rest days counted in. */
      readonly perDayM2: number;
      readonly leftM2: number;
      /** `2026-05-04`. */
      readonly finish: string;
    }
);

/** Days on which something was fixed, before their average says anything (our own choice). */
const LEAST_DAYS = 3;

/**
 * From the first piece fixed until now, by the phones' own clocks.
 * @param now ISO 8601, UTC
 */
export function forecastOf(
  { faces }: Pick<Facade, "faces">,
  { pieces: told }: Pick<SiteState, "pieces">,
  now: string,
): Forecast {
  const skin = faces.flatMap(({ pieces }) => pieces.filter(isSkin));
  const left = skin.filter(({ mark }) => told.stage(mark) !== "fixed");
  if (skin.length > 0 && left.length === 0) return { kind: "done", says: message("survey.forecast.done") };
  const fixed = skin.flatMap((piece) => {
    const days = (told.of(piece.mark)?.ticks.fixed ?? []).map((tick) => dayOf(tick.told));
    return days.length === 0 ? [] : [{ areaM2: areaM2(piece), day: Math.floor(Math.min(...days)) }];
  });
  const days = new Set(fixed.map(({ day }) => day));
  const first = Math.min(...days);
  const today = Math.floor(dayOf(now));
  if (days.size < LEAST_DAYS) {
    const says = message("survey.forecast.too-little", { days: days.size, least: LEAST_DAYS });
    return { kind: "cannot evaluate", says };
  }
  // A phone whose clock is wrong tells of days that have not come.
  if (!(Math.max(...days) <= today))
    return { kind: "cannot evaluate", says: message("survey.forecast.clock") };
  const perDayM2 = fixed.reduce((sum, one) => sum + one.areaM2, 0) / (today - first + 1);
  const leftM2 = left.reduce((sum, piece) => sum + areaM2(piece), 0);
  const finish = dateOf(today + Math.ceil(leftM2 / perDayM2));
  const says = message("survey.forecast", { finish, perDay: perDayM2, left: leftM2, first: dateOf(first) });
  return { kind: "forecast", perDayM2, leftM2, finish, says };
}
