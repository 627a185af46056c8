/**
 * A year of weather in the EPW format: eight lines of heading, then a line an hour. Read are the place, the hour (it ends
 * at the number told) and the light: columns 14 to 16, level, beam across itself and sky, in Wh/m² of the hour.
 */
import { type Message, message } from "../../text/message.ts";

export interface WeatherHour {
  /** 0 is January. */
  readonly month: number;
  /** From 0, 29 February left out. */
  readonly dayOfYear: number;
  /** At which the hour starts, 0 to 23, by standard time. */
  readonly hour: number;
  /** Across the sun's beam, from the sky on level ground, and both together there (Wh/m²). */
  readonly beam: number;
  readonly sky: number;
  readonly level: number;
}

export interface Weather {
  readonly place: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** Standard time less universal time. */
  readonly zoneHours: number;
  readonly hours: readonly WeatherHour[];
}

export type WeatherRead =
  | { readonly ok: true; readonly weather: Weather }
  | { readonly ok: false; readonly fault: Message };

const HEADING = 8;
const HOURS = 8760;
const DAYS_BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334] as const;
/** A value from here on means that it was not measured. */
const MISSING = 9999;

export function readEpw(text: string): WeatherRead {
  const lines = text.replace(/^\uFEFF/, "").split(/\r?\n/);
  const [first = ""] = lines;
  const [kind = "", place = ""] = first.split(",");
  const [latitudeDeg = Number.NaN, longitudeDeg = Number.NaN, zoneHours = Number.NaN] = first
    .split(",")
    .slice(6, 9)
    .map(number);
  const headed = kind.trim().toUpperCase() === "LOCATION";
  if (!headed || ![latitudeDeg, longitudeDeg, zoneHours].every(Number.isFinite)) {
    return fault("light.weather.no-heading");
  }
  const hours: WeatherHour[] = [];
  for (let i = HEADING; i < lines.length; i++) {
    const line = lines[i] ?? "";
    if (line.trim() === "") continue;
    const cells = line.split(",");
    const [month = 0, day = 0, hour = 0] = cells.slice(1, 4).map(number);
    if (month === 2 && day === 29) continue;
    const before = DAYS_BEFORE[month - 1];
    if (before === undefined || !(day >= 1 && day <= 31) || !(hour >= 1 && hour <= 24)) {
      return fault("light.weather.no-time", { line: i + 1 });
    }
    const [level = Number.NaN, beam = Number.NaN, sky = Number.NaN] = cells.slice(13, 16).map(number);
    if (![level, beam, sky].every((value) => value >= 0 && value < MISSING)) {
      return fault("light.weather.no-light", { line: i + 1 });
    }
    hours.push({ month: month - 1, dayOfYear: before + day - 1, hour: hour - 1, beam, sky, level });
  }
  if (hours.length !== HOURS)
    return fault("light.weather.not-a-year", { hours: hours.length, needed: HOURS });
  return { ok: true, weather: { place: place.trim(), latitudeDeg, longitudeDeg, zoneHours, hours } };
}

/** A cell without figures is no number; `Number` would read it as nought. */
function number(cell: string): number {
  return cell.trim() === "" ? Number.NaN : Number(cell);
}

function fault(key: string, values: Record<string, number> = {}): WeatherRead {
  return { ok: false, fault: message(key, values) };
}
