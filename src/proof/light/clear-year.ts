/**
 * A year of clear skies: more than any real year on sunny faces, about as much on faces that see little sun. Some days of
 * each month stand for the rest; their time is cut more finely while the sun is low, where its light changes fastest.
 */
import { extraterrestrialBeam } from "../../equations/light/extraterrestrial-beam.ts";
import { type SunDirection, sunCoordinates } from "../../equations/light/sun-direction.ts";
import type { LightSite, Months } from "./model.ts";
import { skyByHeight } from "./sky-by-height.ts";
import { between, overHorizon, type SunTable, SunTableMaker } from "./sun-table.ts";

/** How finely a year is cut. */
export interface Fineness {
  /** Days of a month, evenly spread. */
  readonly daysAMonth: number;
  /** Steps of a day, and parts of a step while the sun is low. */
  readonly stepsADay: number;
  readonly partsWhenLow: number;
}

/** The average of a membrane and its brightest point lie within 0.1 % of a far finer year. */
const FINENESS: Fineness = { daysAMonth: 12, stepsADay: 96, partsWhenLow: 2 };

const DAYS: Months = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Midnight at Greenwich before 1 January 2025, in days from noon of 1 January 2000. Every year's sun is the same to 0.2°. */
export const YEAR_START = 9131.5;
/** Sine of the height under which the sun is low. */
const LOW = 0.25;
/** More than the share of a year in which the sun shines anywhere, with a step at each end of a day. */
const DAYLIGHT = 0.6;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

export function clearYear(site: LightSite, fineness: Fineness = FINENESS): SunTable {
  const { daysAMonth, stepsADay, partsWhenLow } = fineness;
  const maker = new SunTableMaker(Math.ceil(DAYLIGHT * 12 * daysAMonth * stepsADay * partsWhenLow));
  const light = skyByHeight(site.air);
  const dayFor = dayMaker(site, stepsADay);
  let before = 0;
  for (const [month, days] of DAYS.entries()) {
    const stretch = days / daysAMonth;
    const hours = (24 / stepsADay) * stretch;
    const ground = site.groundShare[month] ?? 0;
    for (let i = 0; i < daysAMonth; i++) {
      const day = before + (i + 0.5) * stretch;
      const outside = extraterrestrialBeam({
        dayOfYear: 1 + day,
        solarConstantWPerM2: site.solarConstantWPerM2,
      });
      // Each day starts at another part of a step, so that steps do not end at the same hours all the year.
      const shift = ((GOLDEN * (month * daysAMonth + i)) % 1) / stepsADay;
      for (const { start, end } of dayFor({ day, shift })) {
        const parts = Math.min(start.up, end.up) < LOW ? partsWhenLow : 1;
        let next = start;
        for (let p = 1; p <= parts; p++) {
          const from = next;
          next = p === parts ? end : between(start, end, p / parts);
          const seen = overHorizon(from, next);
          if (!seen) continue;
          const long = (outside * hours * seen.part) / parts;
          const { beam, sky, level } = light((seen.start.up + seen.end.up) / 2, ground);
          maker.addBeam({ month, beam: beam * long }, { start: seen.start, end: seen.end });
          maker.addEven(month, { sky: sky * long, level: level * long });
        }
      }
    }
    before += days;
  }
  return maker.done();
}

interface Step {
  /** The sun at both ends, told so that their mean is the sun's mean between them. */
  readonly start: SunDirection;
  readonly end: SunDirection;
}

interface DayWanted {
  /** The middle of the days that it stands for, in days from the year's start. */
  readonly day: number;
  /** How long after midnight it starts (days). */
  readonly shift: number;
}

/**
 * The steps of a day in which the sun shines. Its coordinates are worked at both ends of the day and change evenly in between.
 * What lies in the middle of several days is mostly no noon: the hours are those of a day, the sun's course that of the middle.
 */
function dayMaker(site: LightSite, steps: number): (wanted: DayWanted) => Step[] {
  const sinLatitude = Math.sin((site.latitudeDeg * Math.PI) / 180);
  const cosLatitude = Math.cos((site.latitudeDeg * Math.PI) / 180);
  const east = (site.longitudeDeg * Math.PI) / 180;
  const turn = 2 * Math.PI;
  // An arc's mean lies further out than its chord's.
  const outward = Math.tan(Math.PI / steps) / (Math.PI / steps);
  return ({ day, shift }) => {
    const ahead = day - Math.floor(day) - 0.5;
    const midnight = YEAR_START + Math.floor(day) - site.longitudeDeg / 360 + shift + ahead;
    const first = sunCoordinates({ daysFromJ2000: midnight });
    const last = sunCoordinates({ daysFromJ2000: midnight + 1 });
    // One turn a day, and what the equation of time changes.
    const rest = last.hourAngle - first.hourAngle - turn;
    const turned = turn + rest - turn * Math.round(rest / turn);
    const begin = first.hourAngle + east - turn * ahead;
    const cosTurn = Math.cos(turned / steps);
    const sinTurn = Math.sin(turned / steps);
    const sinStep = (last.sinDeclination - first.sinDeclination) / steps;
    const cosStep = (last.cosDeclination - first.cosDeclination) / steps;
    // Cosine and sine of the hour angle, turned on by a step at a time.
    let x = Math.cos(begin);
    let y = Math.sin(begin);
    const at = (k: number): SunDirection => {
      const sin = first.sinDeclination + k * sinStep;
      const cos = outward * (first.cosDeclination + k * cosStep);
      return {
        east: -cos * y,
        north: cosLatitude * sin - sinLatitude * cos * x,
        up: sinLatitude * sin + cosLatitude * cos * x,
      };
    };
    const shining: Step[] = [];
    let start = at(0);
    for (let k = 0; k < steps; k++) {
      const before = x;
      x = before * cosTurn - y * sinTurn;
      y = y * cosTurn + before * sinTurn;
      const end = at(k + 1);
      if (start.up > 0 || end.up > 0) shining.push({ start, end });
      start = end;
    }
    return shining;
  };
}
