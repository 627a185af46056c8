/** How far each piece was told to be, by the ticks that count. */
import { type EntryOf, STAGES, type Stage } from "./entry.ts";
import { type PackedTicks, packTicks, readTicks } from "./packed-ticks.ts";
import type { PieceState, Tick } from "./piece-state.ts";
import { partsOf } from "./seen.ts";

/** As they stood when it was asked for; what comes later does not reach it. */
export interface PieceStates {
  /** Undefined where nothing that counts was told of the piece. */
  of(mark: string): PieceState | undefined;
  /** The furthest that was told, without the ticks that say so. */
  stage(mark: string): Stage | undefined;
  /** Every mark that something was told of, in no order. */
  marks(): string[];
}

/** States are never changed but replaced, so one that was given out stays as it is. */
export function createTicks(from?: PackedTicks) {
  const begun = from && readTicks(from);
  /** What differs from what it begun with; undefined where a piece has no tick any more. */
  const changed = new Map<string, PieceState | undefined>();
  /** The piece of each tick; made when a tick is first looked for that is not where it was said to be. */
  let placeOf: Map<string, string> | undefined;

  const states = (over: ReadonlyMap<string, PieceState | undefined>): PieceStates => ({
    of: (mark) => (over.has(mark) ? over.get(mark) : begun?.of(mark)),
    stage: (mark) => (over.has(mark) ? over.get(mark)?.stage : begun?.stage(mark)),
    marks: () => [
      ...(begun?.marks ?? []).filter((mark) => !over.has(mark)),
      ...[...over].flatMap(([mark, state]) => (state ? [mark] : [])),
    ],
  });
  const now = states(changed);

  const everyPlace = (): Map<string, string> => {
    const places = new Map<string, string>();
    for (const mark of now.marks()) {
      for (const list of Object.values(now.of(mark)?.ticks ?? {})) {
        for (const { id } of list) places.set(id, mark);
      }
    }
    return places;
  };
  const isOn = (mark: string | undefined, id: string): mark is string =>
    mark !== undefined &&
    Object.values(now.of(mark)?.ticks ?? {}).some((list) => list.some((tick) => tick.id === id));

  return {
    add: ({ id, told, place: { piece }, body: { stage } }: EntryOf<"piece">): void => {
      const ticks = now.of(piece)?.ticks ?? {};
      changed.set(piece, stateOf({ ...ticks, [stage]: inOrder([...(ticks[stage] ?? []), { id, told }]) }));
      placeOf?.set(id, piece);
    },

    /** @param near the piece that it is likely one of */
    drop: (id: string, near: string | undefined): void => {
      if (!isOn(near, id)) placeOf ??= everyPlace();
      const mark = isOn(near, id) ? near : placeOf?.get(id);
      const held = mark === undefined ? undefined : now.of(mark);
      if (mark === undefined || held === undefined) return;
      const ticks = Object.fromEntries(
        Object.entries(held.ticks)
          .map(([stage, list]) => [stage, list.filter((tick) => tick.id !== id)] as const)
          .filter(([, list]) => list.length > 0),
      );
      placeOf?.delete(id);
      changed.set(mark, Object.keys(ticks).length > 0 ? stateOf(ticks) : undefined);
    },

    states: (): PieceStates => states(new Map(changed)),

    packed: (): PackedTicks => {
      if (from && changed.size === 0) return from;
      return packTicks(
        now.marks().flatMap((mark) => {
          const state = now.of(mark);
          return state ? [[mark, state] as const] : [];
        }),
      );
    },
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
