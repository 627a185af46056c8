/**
 * What a journal comes to: a pure function of the set of its entries. The order in which they came, and how often, makes
 * no difference (`docs/decisions/0020`).
 */
import type { Entry, EntryKind, EntryOf } from "./entry.ts";
import type { PackedTicks } from "./packed-ticks.ts";
import { createSeen, partsOf, type SeenRuns } from "./seen.ts";
import { createTicks, type PieceStates } from "./ticks.ts";

/** What counts of all kinds but ticks, in the order of devices and their counts, so that the same entries give the same lists. */
export interface SiteLists {
  readonly readings: readonly EntryOf<"reading">[];
  readonly openings: readonly EntryOf<"opening">[];
  readonly ends: readonly EntryOf<"end">[];
  readonly moisture: readonly EntryOf<"moisture">[];
  readonly photos: readonly EntryOf<"photo">[];
  readonly holdPoints: readonly EntryOf<"hold-point">[];
  /** Those not settled. */
  readonly open: readonly EntryOf<"finding">[];
  readonly settled: readonly EntryOf<"finding">[];
  /** Pieces to be made again; until that is taken back. */
  readonly short: readonly EntryOf<"short">[];
  readonly notes: readonly EntryOf<"note">[];
  readonly upkeep: readonly EntryOf<"upkeep">[];
}

export interface SiteState extends SiteLists {
  readonly pieces: PieceStates;
}

/**
 * Of what `Folded` holds. Another fold, or another shape of its state, has another number: what was put by under an earlier
 * one is reckoned anew from the entries.
 */
export const FOLD_VERSION = 2;

/** All that a fold goes on from, as plain values: with the entries that it was not given yet it comes to what all come to. */
export interface Folded {
  readonly pieces: PackedTicks;
  readonly lists: SiteLists;
  readonly rest: {
    readonly settles: readonly EntryOf<"settled">[];
    /** The ids of all that was given, also of what no longer counts. */
    readonly seen: SeenRuns;
    /** Kinds of entries that named an id which has not come yet. */
    readonly named: Readonly<Record<string, readonly EntryKind[]>>;
  };
}

export function foldJournal(entries: Iterable<Entry>): SiteState {
  const fold = createFold();
  fold.add(entries);
  return fold.state();
}

/** A fold that goes on: what it comes to is that of all the entries it was ever given. */
export interface Fold {
  add(entries: Iterable<Entry>): void;
  state(): SiteState;
  folded(): Folded;
}

/** A site's journal only grows, so each entry is reckoned with once: an entry more costs itself, not all that came before. */
export function createFold(from?: Folded): Fold {
  const seen = createSeen(from?.rest.seen);
  const named = new Map(Object.entries(from?.rest.named ?? {}));
  const pieces = createTicks(from?.pieces);
  const lists = listsOf(from);

  const drop = (id: string, by: Entry): void => {
    if (by.kind === "piece" || by.kind === "undone") pieces.drop(id, by.place.piece);
    for (const [kind, list] of lists) {
      if (by.kind === kind || by.kind === "undone") list.drop(id);
    }
  };
  const addOne = (entry: Entry): void => {
    if (!seen.add(entry.id)) return;
    for (const id of entry.corrects ?? []) {
      if (seen.has(id)) drop(id, entry);
      else named.set(id, [...new Set([...(named.get(id) ?? []), entry.kind])]);
    }
    const isGone = named.get(entry.id)?.some((kind) => kind === "undone" || kind === entry.kind);
    named.delete(entry.id);
    // What takes back cannot be taken back: a tick that was wrongly taken back is told anew.
    if (isGone || entry.kind === "undone") return;
    if (entry.kind === "piece") pieces.add(entry);
    else lists.get(entry.kind)?.add(entry);
  };
  const of = <Kind extends ListedKind>(kind: Kind): EntryOf<Kind>[] =>
    (lists.get(kind)?.all() ?? []) as EntryOf<Kind>[];
  const listed = (): SiteLists => {
    const settled = new Set(of("settled").map(({ body }) => body.finding));
    const findings = of("finding");
    return {
      readings: of("reading"),
      openings: of("opening"),
      ends: of("end"),
      moisture: of("moisture"),
      photos: of("photo"),
      holdPoints: of("hold-point"),
      open: findings.filter(({ id }) => !settled.has(id)),
      settled: findings.filter(({ id }) => settled.has(id)),
      short: of("short"),
      notes: of("note"),
      upkeep: of("upkeep"),
    };
  };
  return {
    add: (entries) => {
      for (const entry of entries) addOne(entry);
    },
    state: () => ({ pieces: pieces.states(), ...listed() }),
    folded: () => ({
      pieces: pieces.packed(),
      lists: listed(),
      rest: { settles: of("settled"), seen: seen.runs(), named: Object.fromEntries(named) },
    }),
  };
}

/** Kinds that a state lists; ticks stand by their pieces, and what takes back is not shown. */
type ListedKind = Exclude<EntryKind, "piece" | "undone">;

function listsOf(from: Folded | undefined): ReadonlyMap<ListedKind, List> {
  const { lists, rest } = from ?? {};
  const held: Readonly<Record<ListedKind, readonly Entry[]>> = {
    reading: lists?.readings ?? [],
    opening: lists?.openings ?? [],
    end: lists?.ends ?? [],
    moisture: lists?.moisture ?? [],
    photo: lists?.photos ?? [],
    "hold-point": lists?.holdPoints ?? [],
    finding: [...(lists?.open ?? []), ...(lists?.settled ?? [])],
    short: lists?.short ?? [],
    settled: rest?.settles ?? [],
    note: lists?.notes ?? [],
    upkeep: lists?.upkeep ?? [],
  };
  return new Map(
    Object.entries(held).map(([kind, entries]) => [kind as ListedKind, createList(entries)] as const),
  );
}

type List = ReturnType<typeof createList>;

/** Entries of one kind that count, by device in the order of its counts. */
function createList(from: readonly Entry[]) {
  const byDevice = new Map<string, { readonly count: number; readonly entry: Entry }[]>();
  const add = (entry: Entry): void => {
    const { device, count } = partsOf(entry.id);
    const own = byDevice.get(device) ?? [];
    byDevice.set(device, own);
    // A device counts up: nearly always it is the last.
    own.splice(own.findLastIndex((one) => one.count < count) + 1, 0, { count, entry });
  };
  for (const entry of from) add(entry);
  return {
    add,
    drop: (id: string): void => {
      const own = byDevice.get(partsOf(id).device);
      const at = own?.findIndex(({ entry }) => entry.id === id) ?? -1;
      if (at >= 0) own?.splice(at, 1);
    },
    all: (): Entry[] =>
      [...byDevice].sort(([a], [b]) => (a < b ? -1 : 1)).flatMap(([, own]) => own.map(({ entry }) => entry)),
  };
}
