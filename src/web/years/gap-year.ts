/** The gap between courses month by month, between the two months that the proof reckons with. */
import type { Design } from "../../design.ts";
import { equilibriumMoisture } from "../../equations/equilibrium-moisture.ts";
import type { ZoneView } from "../../proof/context.ts";
import { message } from "../../text/message.ts";
import type { Year } from "./year.ts";

/** The humidities of the table behind the equation, percent. */
const TABLED = [5, 95] as const;

/** Millimetres; undefined where there are no boards, or where the project lacks its climate. */
export function gapYear({ design, view }: { design: Design; view: ZoneView }): Year | undefined {
  const demand = design.demands.boards[view.cladding.id];
  const { meanTempC, meanRelativeHumidityPercent } = design.project.site.climate ?? {};
  if (!demand?.seasonal || !meanTempC || !meanRelativeHumidityPercent) return undefined;
  const gaps = view.joints.filter(({ kind }) => kind === "course gap");
  const boards = view.pieces.filter(({ kind }) => kind === "board");
  if (gaps.length === 0 || boards.length === 0) return undefined;
  const { wettestMm, driestMm, wettestPercent, driestPercent, fixingPercent } = demand.seasonal;
  const widestBoard = Math.max(...boards.map(({ cut }) => cut.width));
  const tightest = Math.min(...gaps.map(({ width }) => width));
  const widest = Math.max(...gaps.map(({ width }) => width));
  // Movement is proportional to moisture content, so the months lie on the line through the two that were reckoned.
  const slope =
    driestPercent === wettestPercent ? 0 : (driestMm - wettestMm) / (driestPercent - wettestPercent);
  const months = meanTempC.values.map((temperatureC, month) => {
    const humidity = meanRelativeHumidityPercent.values[month] ?? 0;
    const percent = equilibriumMoisture({
      temperatureC,
      humidityPercent: Math.min(Math.max(humidity, TABLED[0]), TABLED[1]),
    });
    const change = (wettestMm + slope * (percent - wettestPercent)) * widestBoard;
    return { least: tightest + change, most: widest + change };
  });
  const least = Math.min(...months.map((month) => month.least));
  const most = Math.max(...months.map((month) => month.most));
  const [from, to] = demand.gapBand;
  return {
    zone: view.where.zone,
    months,
    limits: demand.gapBand.map((value) => ({ value, name: message("page.year.limit", { value }) })),
    about: message("page.year.about", { kind: "boards", percent: fixingPercent }),
    range: message("page.year.gap.range", { least, most }),
    says: message("page.year.gap.says", { least, most, from, to }),
  };
}
