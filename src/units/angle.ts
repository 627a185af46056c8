/** Angles: degrees where a person reads or types them, radians inside trigonometry. */

/** Radians of an angle in degrees. */
export function degreesToRadians(angleDeg: number): number {
  return (angleDeg * Math.PI) / 180;
}

/** Degrees of an angle in radians. */
export function radiansToDegrees(angleRad: number): number {
  return (angleRad * 180) / Math.PI;
}

/** The same direction as `angleDeg`, in [0, 360) degrees; never -0. */
export function normaliseDegrees(angleDeg: number): number {
  const turned = ((angleDeg % 360) + 360) % 360;
  return turned + 0;
}
