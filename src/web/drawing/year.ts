/** The gap between courses month by month, between the two months that the proof reckons with. */
import type { Design } from "../../design.ts";
import { equilibriumMoisture } from "../../equations/equilibrium-moisture.ts";
import { type Pick, zoneIdOf } from "../picks/pick.ts";

export interface GapYear {
  /** January first: the tightest and the widest gap of the zone, mm. */
  readonly months: readonly { readonly least: number; readonly most: number }[];
  /** The band that the gap should keep to, mm. */
  readonly band: readonly [least: number, most: number];
  readonly widestBoard: number;
  readonly fixingPercent: number;
}

/** The humidities of the table behind the equation, percent. */
const TABLED = [5, 95] as const;

/** Undefined where there are no boards, or where the project lacks its climate. */
export function gapYear(design: Design, pick: Pick): GapYear | undefined {
  const face = design.facade.faces.find(({ id }) => id === pick.face);
  const wanted = zoneIdOf(design, pick);
  const zone = face?.zones.find(
    ({ id, cladding }) => (wanted === undefined || id === wanted) && design.demands.boards[cladding],
  );
  const demand = zone && design.demands.boards[zone.cladding];
  const { meanTempC, meanRelativeHumidityPercent } = design.project.site.climate ?? {};
  if (!face || !zone || !demand?.seasonal || !meanTempC || !meanRelativeHumidityPercent) return undefined;
  const gaps = face.joints.filter((joint) => joint.zone === zone.id && joint.kind === "course gap");
  const boards = face.pieces.filter((piece) => piece.zone === zone.id && piece.kind === "board");
  if (gaps.length === 0 || boards.length === 0) return undefined;
  const { wettestMm, driestMm, wettestPercent, driestPercent, fixingPercent } = demand.seasonal;
  const widestBoard = Math.max(...boards.map(({ cut }) => cut.width));
  const least = Math.min(...gaps.map(({ width }) => width));
  const most = Math.max(...gaps.map(({ width }) => width));
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
    return { least: least + change, most: most + change };
  });
  return { months, band: demand.gapBand, widestBoard, fixingPercent };
}
