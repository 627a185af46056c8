/**
 * The user's own joint lines: which of them can be kept, and why the others cannot. A pin that hurts is kept all the
 * same; only one that no layout can hold is refused.
 */
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";
import type { SheetZone } from "./zone.ts";

export type Axis = "x" | "y";

export interface Pin {
  readonly axis: Axis;
  /** As the file has it: the middle of an upright joint, or the line under a level one (mm). */
  readonly at: number;
  /** Its place in the file's list. */
  readonly index: number;
  readonly strip: Interval;
}

export interface RefusedPin extends Pin {
  /** Why no layout can hold it. */
  readonly because: "outside" | "forbidden" | "touches" | "bare";
  /** The band or the other pin's joint that is in its way. */
  readonly by?: Interval;
}

export interface JointWishes {
  readonly pins: Readonly<Record<Axis, readonly Pin[]>>;
  readonly forbidden: Readonly<Record<Axis, readonly Interval[]>>;
  readonly refused: readonly RefusedPin[];
}

export function jointWishes(zone: SheetZone): JointWishes {
  const { joints } = zone.ground.zone;
  const forbidden = { x: joints?.forbidden?.x ?? [], y: joints?.forbidden?.y ?? [] };
  const x = sortPins(zone, "x", forbidden.x);
  const y = sortPins(zone, "y", forbidden.y);
  return { pins: { x: x.kept, y: y.kept }, forbidden, refused: [...x.refused, ...y.refused] };
}

/** The same zone with one pin left out, to see what the pin costs. */
export function withoutPin(wishes: JointWishes, { axis, index }: Pin): JointWishes {
  const pins = wishes.pins[axis].filter((pin) => pin.index !== index);
  return { ...wishes, pins: { ...wishes.pins, [axis]: pins } };
}

/** Whether a joint would touch a forbidden band. */
export function isForbidden(strip: Interval, bands: readonly Interval[]): boolean {
  return bands.some((band) => overlaps(band, strip));
}

function sortPins(
  zone: SheetZone,
  axis: Axis,
  bands: readonly Interval[],
): { readonly kept: readonly Pin[]; readonly refused: readonly RefusedPin[] } {
  const kept: Pin[] = [];
  const refused: RefusedPin[] = [];
  const wanted = zone.ground.zone.joints?.pinned?.[axis] ?? [];
  wanted.forEach((at, index) => {
    // The same pin twice asks for nothing more; the reader has told so.
    if (wanted.indexOf(at) < index) return;
    const pin = { axis, at, index, strip: stripOf(zone, axis, at) };
    const [low, high] = zone.ground.bounds[axis];
    const band = bands.find((one) => overlaps(one, pin.strip));
    const other = kept.find(({ strip }) => pin.strip[0] <= strip[1] && strip[0] <= pin.strip[1]);
    if (pin.strip[0] <= low || pin.strip[1] >= high)
      refused.push({ ...pin, because: "outside", by: [low, high] });
    else if (band) refused.push({ ...pin, because: "forbidden", by: band });
    else if (other) refused.push({ ...pin, because: "touches", by: other.strip });
    else if (isBare(zone, pin)) refused.push({ ...pin, because: "bare" });
    else kept.push(pin);
  });
  return { kept: kept.sort((a, b) => a.at - b.at), refused };
}

function stripOf({ cladding }: SheetZone, axis: Axis, at: number): Interval {
  const from = axis === "x" ? snap(at - cladding.joint / 2) : at;
  return [from, snap(from + cladding.joint)];
}

/** Whether the whole line lies within one opening, so that there is nothing to part. */
function isBare({ ground }: SheetZone, { axis, strip }: Pin): boolean {
  const along = axis === "x" ? "y" : "x";
  const [low, high] = ground.bounds[along];
  return ground.keepOuts.some(
    ({ rect }) =>
      rect[axis][0] <= strip[0] &&
      rect[axis][1] >= strip[1] &&
      rect[along][0] <= low &&
      rect[along][1] >= high,
  );
}
