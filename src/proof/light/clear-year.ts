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

/** On the average of a membrane within 0.1 % of a far finer year, at its brightest point within 0.5 %. */
export const FINENESS: Fineness = { daysAMonth: 4, stepsADay: 72, partsWhenLow: 3 };

const DAYS: Months = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Midnight at Greenwich before 1 January 2025, in days from noon of 1 January 2000. Every year's sun is the same to 0.2°. */
const YEAR_START = 9131.5;
/** Sine of the height under which the sun is low. */
const LOW = 0.25;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

export function clearYear(site: LightSite, fineness: Fineness = FINENESS): SunTable {
  const { daysAMonth, stepsADay, partsWhenLow } = fineness;
  const maker = new SunTableMaker(12 * daysAMonth * stepsADay * 3);
  const light = skyByHeight(site.air);
  const turnFor = turner(site);
  let before = 0;
  for (const [month, days] of DAYS.entries()) {
    const stretch = days / daysAMonth;
    const hours = (24 / stepsADay) * stretch;
    const ground = site.groundShare[month] ?? 0;
    for (let i = 0; i < daysAMonth; i++) {
      const day = before + (i + 0.5) * stretch;
      const outside = extraterrestrialBeam({ dayOfYear: 1 + day });
      // Each day starts at another part of a step, so that steps do not end at the same hours all the year.
      const shift = ((GOLDEN * (month * daysAMonth + i)) % 1) / stepsADay;
      const sun = turnFor({
        midnight: YEAR_START + Math.floor(day) - site.longitudeDeg / 360 + shift,
        stretch,
      });
      let start = sun.at(0);
      for (let k = 1; k <= stepsADay; k++) {
        const end = sun.at(k / stepsADay);
        if (start.up > 0 || end.up > 0) {
          const parts = Math.min(start.up, end.up) < LOW ? partsWhenLow : 1;
          const drift = sun.drift((k - 0.5) / stepsADay);
          let next = start;
          for (let p = 1; p <= parts; p++) {
            const from = next;
            next = p === parts ? end : between(start, end, p / parts);
            const seen = overHorizon(from, next);
            if (!seen) continue;
            const long = (outside * hours * seen.part) / parts;
            const { beam, sky, level } = light((seen.start.up + seen.end.up) / 2, ground);
            maker.addBeam({ month, beam: beam * long }, { start: seen.start, end: seen.end, drift });
            maker.addEven(month, { sky: sky * long, level: level * long });
          }
        }
        start = end;
      }
    }
    before += days;
  }
  return maker.done();
}

interface DayOfSun {
  /** The sun's direction at a part of the day, 0 to 1. */
  readonly at: (part: number) => SunDirection;
  /** What leads there from the middle of the days that this one stands for to the last of them. */
  readonly drift: (part: number) => SunDirection;
}

/** The sun through one day: its coordinates are worked at both ends and change evenly in between. */
function turner(site: LightSite): (of: { midnight: number; stretch: number }) => DayOfSun {
  const sinLatitude = Math.sin((site.latitudeDeg * Math.PI) / 180);
  const cosLatitude = Math.cos((site.latitudeDeg * Math.PI) / 180);
  const east = (site.longitudeDeg * Math.PI) / 180;
  return ({ midnight, stretch }) => {
    const first = sunCoordinates({ daysFromJ2000: midnight });
    const last = sunCoordinates({ daysFromJ2000: midnight + 1 });
    const turn = 2 * Math.PI;
    // One turn a day, and what the equation of time changes.
    const rest = last.hourAngle - first.hourAngle - turn;
    const turned = turn + rest - turn * Math.round(rest / turn);
    const begin = first.hourAngle + east;
    const sinStep = last.sinDeclination - first.sinDeclination;
    const cosStep = last.cosDeclination - first.cosDeclination;
    // Half of the way that the declination goes in the days of the stretch.
    const half = (Math.asin(last.sinDeclination) - Math.asin(first.sinDeclination)) * (stretch / 2);
    return {
      at: (part) => {
        const sin = first.sinDeclination + part * sinStep;
        const cos = first.cosDeclination + part * cosStep;
        const angle = begin + part * turned;
        const meridian = cos * Math.cos(angle);
        return {
          east: -cos * Math.sin(angle),
          north: cosLatitude * sin - sinLatitude * meridian,
          up: sinLatitude * sin + cosLatitude * meridian,
        };
      },
      drift: (part) => {
        const sin = first.sinDeclination + part * sinStep;
        const cos = first.cosDeclination + part * cosStep;
        const angle = begin + part * turned;
        const meridian = sin * Math.cos(angle);
        return {
          east: half * sin * Math.sin(angle),
          north: half * (cosLatitude * cos + sinLatitude * meridian),
          up: half * (sinLatitude * cos - cosLatitude * meridian),
        };
      },
    };
  };
}
