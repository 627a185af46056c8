/** What the light proof reckons with and what it tells. Light is in Wh/m², January first. */

/** The air over a place, as the clear sky reads it. */
export interface Air {
  readonly pressureMbar: number;
  readonly ozoneCm: number;
  readonly waterCm: number;
  readonly haze380: number;
  readonly haze500: number;
  readonly forwardShare: number;
}

/** Twelve values, January first. */
export type Months = readonly number[];

/** The place, as plain values. */
export interface LightSite {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly air: Air;
  /** Sunlight at the earth's mean distance (W/m²). */
  readonly solarConstantWPerM2: number;
  /** Share of light, and of ultraviolet, that the ground throws back. */
  readonly groundShare: Months;
  readonly groundUvShare: Months;
  /** Ultraviolet share of the beam and of the sky's light. */
  readonly beamUvShare: number;
  readonly skyUvShare: number;
}

/** A year of light on a surface: all of it (kWh/m²), and the ultraviolet (MJ/m²). */
export interface YearOfLight {
  readonly lightKWh: Months;
  readonly uvMJ: Months;
  readonly lightKWhYear: number;
  readonly uvMJYear: number;
  /** The year's ultraviolet by where it comes from (MJ/m²). */
  readonly uvParts: { readonly beam: number; readonly sky: number; readonly ground: number };
}

/** What stands before a wall, as tangents of the angles from its normal beyond which it hides sky and sun. */
export interface Shade {
  readonly up: number;
  /** Towards the left and the right seen from outside. */
  readonly left: number;
  readonly right: number;
}

export const NO_SHADE: Shade = { up: Infinity, left: Infinity, right: Infinity };
