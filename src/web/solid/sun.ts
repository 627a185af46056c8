/** Where the sun stands over the building at a day and an hour. */
import { sunDirection } from "../../equations/light/sun-direction.ts";
import type { Project } from "../../project/schema/project.ts";
import { YEAR_START } from "../../proof/light/clear-year.ts";
import type { Facade } from "../../setout/facade.ts";
import { degreesToRadians, normaliseDegrees, radiansToDegrees } from "../../units/angle.ts";
import type { Vector } from "./placing.ts";

/** Hours are local mean time, as in the proof of light: noon is when the mean sun stands over the place's meridian. */
export interface Moment {
  /** 1 to 365, of a year without a leap day. */
  readonly dayOfYear: number;
  /** 0 to 24. */
  readonly hour: number;
}

export interface Sun {
  /** Unit vector from the building to the sun, building frame. */
  readonly towards: Vector;
  /** Degrees above the horizon, and clockwise from north. */
  readonly elevationDeg: number;
  readonly azimuthDeg: number;
}

export function sunOver(
  { site }: Pick<Project, "site">,
  { faces }: Pick<Facade, "faces">,
  { dayOfYear, hour }: Moment,
): Sun {
  const { latitudeDeg, longitudeDeg } = site;
  const daysFromJ2000 = YEAR_START + dayOfYear - 1 + hour / 24 - longitudeDeg / 360;
  const { east, north, up } = sunDirection({ latitudeDeg, longitudeDeg, daysFromJ2000 });
  // Every face gives the same north, else the file is told so.
  const face = faces.find(({ azimuthDeg }) => azimuthDeg !== undefined);
  const [ox, oy] = face?.frame.outward ?? [0, -1];
  const planNorth = degreesToRadians((face?.azimuthDeg ?? 180) - radiansToDegrees(Math.atan2(ox, oy)));
  const [cos, sin] = [Math.cos(planNorth), Math.sin(planNorth)];
  return {
    towards: [east * cos - north * sin, east * sin + north * cos, up],
    elevationDeg: radiansToDegrees(Math.asin(up)),
    azimuthDeg: normaliseDegrees(radiansToDegrees(Math.atan2(east, north))),
  };
}
