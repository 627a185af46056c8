/**
 * Where the sun stands: the low-precision formula of the Astronomical Almanac, good to 0.01° between 1950 and 2050.
 * Refraction is left out: it lifts the sun by half a degree at the horizon, where there is hardly any light.
 */

const RADIANS = Math.PI / 180;

export const SUN_SOURCE = {
  document:
    "The Astronomical Almanac, low-precision formulas for the sun, as in Michalsky, Solar Energy 40 (1988)",
} as const;

export interface PlaceAndTime {
  /** North is positive. */
  readonly latitudeDeg: number;
  /** East is positive. */
  readonly longitudeDeg: number;
  /** Days of universal time from noon of 1 January 2000, −18 262 to 18 263. */
  readonly daysFromJ2000: number;
}

/** A unit vector from the place to the sun. */
export interface SunDirection {
  readonly east: number;
  readonly north: number;
  readonly up: number;
}

/** Where the sun stands over the turning earth. */
export interface SunCoordinates {
  readonly sinDeclination: number;
  readonly cosDeclination: number;
  /** West of Greenwich's meridian (radians), any number of turns. */
  readonly hourAngle: number;
}

export function sunCoordinates({ daysFromJ2000: n }: Pick<PlaceAndTime, "daysFromJ2000">): SunCoordinates {
  const meanLongitude = 280.46 + 0.9856474 * n;
  const anomaly = (357.528 + 0.9856003 * n) * RADIANS;
  const ecliptic = (meanLongitude + 1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly)) * RADIANS;
  const tilt = (23.439 - 0.0000004 * n) * RADIANS;
  const sinDeclination = Math.sin(tilt) * Math.sin(ecliptic);
  const rightAscension = Math.atan2(Math.cos(tilt) * Math.sin(ecliptic), Math.cos(ecliptic));
  const hours = 24 * (n + 0.5 - Math.floor(n + 0.5));
  const siderealHours = 6.697375 + 0.0657098242 * n + hours;
  return {
    sinDeclination,
    cosDeclination: Math.sqrt(1 - sinDeclination * sinDeclination),
    hourAngle: 15 * RADIANS * siderealHours - rightAscension,
  };
}

/** The direction at a place from the sun's coordinates. */
function directionAt(
  { sinDeclination, cosDeclination, hourAngle }: SunCoordinates,
  { latitudeDeg, longitudeDeg }: Pick<PlaceAndTime, "latitudeDeg" | "longitudeDeg">,
): SunDirection {
  const angle = hourAngle + longitudeDeg * RADIANS;
  const sinLatitude = Math.sin(latitudeDeg * RADIANS);
  const cosLatitude = Math.cos(latitudeDeg * RADIANS);
  const towardsMeridian = cosDeclination * Math.cos(angle);
  return {
    east: -cosDeclination * Math.sin(angle),
    north: cosLatitude * sinDeclination - sinLatitude * towardsMeridian,
    up: sinLatitude * sinDeclination + cosLatitude * towardsMeridian,
  };
}

export function sunDirection(at: PlaceAndTime): SunDirection {
  return directionAt(sunCoordinates(at), at);
}

/** What the formula reads, as `reckon` lists it. */
export const SUN_INPUTS = [
  { key: "latitudeDeg", unit: "°", range: [-90, 90] },
  { key: "longitudeDeg", unit: "°", range: [-180, 180] },
  { key: "daysFromJ2000", unit: "d", range: [-18_262, 18_263] },
] as const;

/** The formula's steps in symbols, up to the declination δ and the hour angle H. */
export const SUN_STEPS =
  "n = daysFromJ2000; λ = 280.46 + 0.9856474n + 1.915 sin g + 0.02 sin 2g; g = 357.528 + 0.9856003n; ε = 23.439 − 4e-7n; sin δ = sin ε · sin λ; H = 15 · (6.697375 + 0.0657098242n + UT) + longitudeDeg − atan2(cos ε · sin λ, cos λ)";
