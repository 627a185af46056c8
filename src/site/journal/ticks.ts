/** How far each piece was told to be, by the ticks that count. */
import { type EntryOf, STAGES, type Stage } from "./entry.ts";
import { partsOf } from "./seen.ts";

export interface Tick {
  readonly id: string;
  /** By the device's clock: ISO 8601, UTC. */
  readonly told: string;
}

/** One piece, and the entries that say so for each stage; a stage that nobody told is absent. */
export interface PieceState {
  /** The furthest that was told. A piece that is fixed was cut, whether or not anyone ticked that. */
  readonly stage: Stage;
  /** The ticks that count, in the order of devices and their counts: who takes a stage back names them all. */
  readonly ticks: { readonly [S in Stage]?: readonly Tick[] };
}

export type PieceStates = Readonly<Record<string, PieceState>>;

/** States are never changed but replaced, so one that was given out stays as it is. */
export function createTicks(from: PieceStates = {}) {
  const pieces = new Map(Object.entries(from));
  /** The piece of each tick; made when a tick is first looked for that is not where it was said to be. */
  let placeOf: Map<string, string> | undefined;
  const everyPlace = (): Map<string, string> => {
    const places = new Map<string, string>();
    for (const [mark, { ticks }] of pieces) {
      for (const list of Object.values(ticks)) for (const { id } of list) places.set(id, mark);
    }
    return places;
  };
  const isOn = (mark: string | undefined, id: string): mark is string =>
    mark !== undefined &&
    Object.values(pieces.get(mark)?.ticks ?? {}).some((list) => list.some((tick) => tick.id === id));

  return {
    add: ({ id, told, place: { piece }, body: { stage } }: EntryOf<"piece">): void => {
      const ticks = pieces.get(piece)?.ticks ?? {};
      pieces.set(piece, stateOf({ ...ticks, [stage]: inOrder([...(ticks[stage] ?? []), { id, told }]) }));
      placeOf?.set(id, piece);
    },

    /** @param near the piece that it is likely one of */
    drop: (id: string, near: string | undefined): void => {
      if (!isOn(near, id)) placeOf ??= everyPlace();
      const mark = isOn(near, id) ? near : placeOf?.get(id);
      const held = mark === undefined ? undefined : pieces.get(mark);
      if (mark === undefined || held === undefined) return;
      const ticks = Object.fromEntries(
        Object.entries(held.ticks)
          .map(([stage, list]) => [stage, list.filter((tick) => tick.id !== id)] as const)
          .filter(([, list]) => list.length > 0),
      );
      placeOf?.delete(id);
      if (Object.keys(ticks).length > 0) pieces.set(mark, stateOf(ticks));
      else pieces.delete(mark);
    },

    state: (): PieceStates => Object.fromEntries(pieces),
  };
}

function stateOf(ticks: PieceState["ticks"]): PieceState {
  return { stage: STAGES.findLast((one) => ticks[one]) ?? "cut", ticks };
}

function inOrder(ticks: readonly Tick[]): readonly Tick[] {
  if (ticks.length < 2) return ticks;
  return [...ticks].sort((a, b) => {
    const [one, other] = [partsOf(a.id), partsOf(b.id)];
    return one.device === other.device ? one.count - other.count : one.device < other.device ? -1 : 1;
  });
}
