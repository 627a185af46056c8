/** Where faces stand in the building frame, and on their way from there into one plane. */
import { type FaceFrame, inBuilding, turnDeg } from "../../geometry/frame.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { degreesToRadians } from "../../units/angle.ts";

export type Vector = readonly [x: number, y: number, z: number];

/** A face's frame in the building's: where its origin lies (mm), and unit vectors along its axes. */
export interface Placing {
  readonly origin: Vector;
  readonly x: Vector;
  readonly y: Vector;
  readonly z: Vector;
}

export function placed({ origin, x, y, z }: Placing, [px, py, pz]: Vector): Vector {
  const along = (axis: 0 | 1 | 2): number => origin[axis] + x[axis] * px + y[axis] * py + z[axis] * pz;
  return [along(0), along(1), along(2)];
}

/** In the building, as `inBuilding` has it. A soffit's axes are left-handed. */
export function standing(frame: FaceFrame): Placing {
  const origin = inBuilding(frame, { x: 0, y: 0, z: 0 });
  const axis = (x: number, y: number, z: number): Vector => {
    const to = inBuilding(frame, { x, y, z });
    return [to[0] - origin[0], to[1] - origin[1], to[2] - origin[2]];
  };
  return { origin, x: axis(1, 0, 0), y: axis(0, 1, 0), z: axis(0, 0, 1) };
}

/** What a face turns through to lie in the plane of the first (degrees), each after its neighbour, so that none turns back. */
export function turnsOf(faces: readonly Pick<FaceLayout, "frame">[]): number[] {
  let last: FaceFrame | undefined;
  let turned = 0;
  return faces.map(({ frame }) => {
    turned = last ? turned + turnDeg(last, frame) : turnDeg(ALONG_X, frame);
    last = frame;
    return turned;
  });
}

const ALONG_X: FaceFrame = { origin: [0, 0], along: [1, 0], outward: [0, -1] };

export interface Unfolding {
  readonly turn: number;
  /** Where the face's origin lies in the plane (building frame, mm). */
  readonly to: Vector;
  /** 0: as it stands; 1: in one plane that looks towards −Y. */
  readonly part: number;
}

export function unfolding(frame: FaceFrame, { turn, to, part }: Unfolding): Placing {
  if (part === 0) return standing(frame);
  const from = inBuilding(frame, { x: 0, y: 0, z: 0 });
  const between = (axis: 0 | 1 | 2): number => from[axis] + (to[axis] - from[axis]) * part;
  const origin: Vector = [between(0), between(1), between(2)];
  const angle = degreesToRadians(turn * (1 - part));
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const x: Vector = [cos, sin, 0];
  if (frame.level === undefined) return { origin, x, y: [0, 0, 1], z: [sin, -cos, 0] };
  const lift = degreesToRadians(90 * part);
  const [level, up] = [Math.cos(lift), Math.sin(lift)];
  const y: Vector = [-sin * level, cos * level, up];
  // A soffit is drawn as its mirror on the floor would show it: half way it is turned inside out.
  const side = part < 0.5 ? 1 : -1;
  return { origin, x, y, z: [-sin * up * side, cos * up * side, -level * side] };
}
