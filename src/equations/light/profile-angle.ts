/** The sun's angle as a slot sees it: projected on the plane across the slot. */
import { equation } from "../equation.ts";
import { incidence, SUN_WALL_INPUTS, type SunAndWall } from "./incidence.ts";

const RADIANS = Math.PI / 180;
const source = {
  document:
    "Profile angle of a level or upright slot, ASHRAE Handbook Fundamentals, shading by overhangs and fins",
} as const;

/** Degrees above level, across a level slot. For a sun before the wall; over 90 or below −90 it is behind. */
export function profileAngleLevel(at: SunAndWall): number {
  return Math.atan2(Math.sin(at.elevationDeg * RADIANS), incidence(at)) / RADIANS;
}

/** Degrees from the wall's normal, clockwise seen from above, across an upright slot. */
export function profileAngleUpright({ azimuthDeg, wallAzimuthDeg }: SunAndWall): number {
  const turn = (azimuthDeg - wallAzimuthDeg) * RADIANS;
  return Math.atan2(Math.sin(turn), Math.cos(turn)) / RADIANS;
}

export const PROFILE_ANGLE_LEVEL = equation({
  name: "profile-angle-level",
  formula: "atan(tan elevationDeg / cos(azimuthDeg − wallAzimuthDeg))",
  inputs: SUN_WALL_INPUTS,
  result: { unit: "°" },
  source,
  work: profileAngleLevel,
});

export const PROFILE_ANGLE_UPRIGHT = equation({
  name: "profile-angle-upright",
  formula: "azimuthDeg − wallAzimuthDeg, between −180 and 180",
  inputs: [
    { key: "azimuthDeg", unit: "°", range: [0, 360] },
    { key: "wallAzimuthDeg", unit: "°", range: [0, 360] },
  ],
  result: { unit: "°" },
  source,
  work: (at) => profileAngleUpright({ ...at, elevationDeg: 0 }),
});
