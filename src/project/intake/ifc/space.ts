/** Points, directions and placements in space; millimetres of the file's own frame, z up. */

export type Vector = readonly [x: number, y: number, z: number];

/** Where a shape's own frame stands: its origin, and what one step along each of its axes is. */
export interface Placement {
  readonly origin: Vector;
  readonly x: Vector;
  readonly y: Vector;
  readonly z: Vector;
}

export const AT_ORIGIN: Placement = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

export function add(a: Vector, b: Vector, times = 1): Vector {
  return [a[0] + b[0] * times, a[1] + b[1] * times, a[2] + b[2] * times];
}

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function crossed(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function times(a: Vector, by: number): Vector {
  return [a[0] * by, a[1] * by, a[2] * by];
}

/** Undefined where it has no direction. */
export function unit(a: Vector): Vector | undefined {
  const length = Math.hypot(...a);
  return length > 0 && Number.isFinite(length) ? times(a, 1 / length) : undefined;
}

/** A direction of a frame in the frame that it stands in. */
export function directed({ x, y, z }: Placement, [a, b, c]: Vector): Vector {
  return add(add(times(x, a), y, b), z, c);
}

export function placed(frame: Placement, point: Vector): Vector {
  return add(frame.origin, directed(frame, point));
}

/** A frame that stands in another. */
export function within(outer: Placement, inner: Placement): Placement {
  return {
    origin: placed(outer, inner.origin),
    x: directed(outer, inner.x),
    y: directed(outer, inner.y),
    z: directed(outer, inner.z),
  };
}

/** Twice the area of a flat ring as a vector along its normal (Newell's method): no three points have to be picked. */
export function ringNormal(ring: readonly Vector[]): Vector {
  let sum: Vector = [0, 0, 0];
  ring.forEach((point, i) => {
    sum = add(sum, crossed(point, ring[(i + 1) % ring.length] as Vector));
  });
  return sum;
}
