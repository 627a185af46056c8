/**
 * The ticks of many pieces in columns of numbers: a browser reads them several times sooner than an object for each, and makes
 * objects of those pieces alone that someone looks at.
 */
import { STAGES, type Stage } from "./entry.ts";
import type { PieceState, Tick } from "./piece-state.ts";
import { partsOf } from "./seen.ts";

/** Plain values, and the same for the same ticks: pieces stand by their marks, ticks by stage, device and count. */
export interface PackedTicks {
  readonly marks: readonly string[];
  /** How many ticks each mark has, in the order of `marks`; at least one. */
  readonly each: readonly number[];
  readonly devices: readonly string[];
  /** One for each tick: place in `STAGES`, place in `devices`, the device's count and its time. */
  readonly stage: readonly number[];
  readonly device: readonly number[];
  readonly count: readonly number[];
  readonly told: readonly string[];
}

export function packTicks(pieces: Iterable<readonly [mark: string, state: PieceState]>): PackedTicks {
  const sorted = [...pieces].sort(([a], [b]) => (a < b ? -1 : 1));
  const devices = new Set<string>();
  for (const [, { ticks }] of sorted)
    for (const list of Object.values(ticks)) for (const { id } of list) devices.add(partsOf(id).device);
  const placeOf = new Map([...devices].sort().map((device, place) => [device, place]));
  const packed = {
    marks: sorted.map(([mark]) => mark),
    each: [] as number[],
    devices: [...placeOf.keys()],
    stage: [] as number[],
    device: [] as number[],
    count: [] as number[],
    told: [] as string[],
  };
  for (const [, { ticks }] of sorted) {
    const before = packed.count.length;
    STAGES.forEach((stage, place) => {
      for (const { id, told } of ticks[stage] ?? []) {
        const { device, count } = partsOf(id);
        packed.stage.push(place);
        packed.device.push(placeOf.get(device) ?? 0);
        packed.count.push(count);
        packed.told.push(told);
      }
    });
    packed.each.push(packed.count.length - before);
  }
  return packed;
}

/** What is packed, piece by piece. */
export interface TicksReader {
  readonly marks: readonly string[];
  of(mark: string): PieceState | undefined;
  stage(mark: string): Stage | undefined;
}

export function readTicks(packed: PackedTicks): TicksReader {
  const { marks, each, devices, stage, device, count, told } = packed;
  let first: Uint32Array | undefined;
  let placeOf: ReadonlyMap<string, number> | undefined;

  /** From which tick to before which those of a mark lie. */
  const rangeOf = (mark: string): readonly [from: number, to: number] | undefined => {
    placeOf ??= new Map(marks.map((one, place) => [one, place]));
    const place = placeOf.get(mark);
    if (place === undefined) return undefined;
    if (first === undefined) {
      first = new Uint32Array(marks.length);
      for (let at = 1; at < marks.length; at++) first[at] = (first[at - 1] ?? 0) + (each[at - 1] ?? 0);
    }
    const from = first[place] ?? 0;
    return [from, from + (each[place] ?? 0)];
  };
  const tick = (at: number): Tick => ({
    id: `${devices[device[at] ?? 0]}-${count[at]}`,
    told: told[at] ?? "",
  });
  const furthest = ([, to]: readonly [number, number]): Stage => STAGES[stage[to - 1] ?? 0] ?? "cut";

  return {
    marks,
    stage: (mark) => {
      const range = rangeOf(mark);
      return range && furthest(range);
    },
    of: (mark) => {
      const range = rangeOf(mark);
      if (!range) return undefined;
      const ticks: { [S in Stage]?: Tick[] } = {};
      for (let at = range[0]; at < range[1]; at++) {
        const name = STAGES[stage[at] ?? 0] ?? "cut";
        ticks[name] = [...(ticks[name] ?? []), tick(at)];
      }
      return { stage: furthest(range), ticks };
    },
  };
}
