/**
 * What a journal comes to: a pure function of the set of its entries. The order in which they came, and how often, makes
 * no difference (`docs/decisions/0020`).
 */
import { type Entry, type EntryKind, type EntryOf, STAGES, type Stage } from "./entry.ts";

/** One piece, and the entries that say so for each stage; a stage that nobody told is absent. */
export interface PieceState {
  /** The furthest that was told. A piece that is fixed was cut, whether or not anyone ticked that. */
  readonly stage: Stage;
  /** Ids of the ticks that count: who takes a stage back names them all. */
  readonly ticks: { readonly [S in Stage]?: readonly string[] };
}

/** Lists stand in the order of devices and their counts, so that the same entries give the same state. */
export interface SiteState {
  /** By mark. */
  readonly pieces: Readonly<Record<string, PieceState>>;
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

export function foldJournal(entries: Iterable<Entry>): SiteState {
  const fold = createFold();
  fold.add(entries);
  return fold.state();
}

/** A fold that goes on: what it comes to is that of all the entries it was ever given. */
export interface Fold {
  add(entries: Iterable<Entry>): void;
  state(): SiteState;
}

/** A site's journal only grows, so each entry is reckoned with once: an entry more costs itself, not all that came before. */
export function createFold(): Fold {
  const byId = new Map<string, Entry>();
  const gone = new Set<string>();
  /** Kinds of entries that named an id which has not come yet. */
  const named = new Map<string, EntryKind[]>();
  /** Those that count, but for ticks: by kind, and by device in the order of its counts. */
  const lists = new Map<EntryKind, Map<string, Entry[]>>();
  const pieces = createPieces();

  const drop = (entry: Entry): void => {
    if (gone.has(entry.id)) return;
    gone.add(entry.id);
    if (entry.kind === "piece") pieces.drop(entry);
    else {
      const list = listOf(lists, entry);
      const at = list.indexOf(entry);
      if (at >= 0) list.splice(at, 1);
    }
  };
  const addOne = (entry: Entry): void => {
    if (byId.has(entry.id)) return;
    byId.set(entry.id, entry);
    for (const id of entry.corrects ?? []) {
      const corrected = byId.get(id);
      if (!corrected) named.set(id, [...(named.get(id) ?? []), entry.kind]);
      else if (reaches(entry.kind, corrected.kind)) drop(corrected);
    }
    if (named.get(entry.id)?.some((kind) => reaches(kind, entry.kind))) gone.add(entry.id);
    named.delete(entry.id);
    if (gone.has(entry.id)) return;
    if (entry.kind === "piece") pieces.add(entry);
    else {
      const list = listOf(lists, entry);
      const { count } = partsOf(entry);
      // A device counts up: nearly always it is the last.
      const at = list.findLastIndex((one) => partsOf(one).count < count) + 1;
      list.splice(at, 0, entry);
    }
  };
  const of = <Kind extends EntryKind>(kind: Kind): EntryOf<Kind>[] =>
    [...(lists.get(kind) ?? [])]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .flatMap(([, list]) => list as EntryOf<Kind>[]);
  return {
    add: (entries) => {
      for (const entry of entries) addOne(entry);
    },
    state: () => {
      const settled = new Set(of("settled").map(({ body }) => body.finding));
      const findings = of("finding");
      return {
        pieces: pieces.state(),
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
    },
  };
}

/** Whether an entry that names another takes it back. What takes back cannot be taken back: a tick that was wrongly taken back is told anew. */
function reaches(kind: EntryKind, corrected: EntryKind): boolean {
  return corrected !== "undone" && (kind === "undone" || kind === corrected);
}

function listOf(lists: Map<EntryKind, Map<string, Entry[]>>, entry: Entry): Entry[] {
  const ofKind = lists.get(entry.kind) ?? new Map<string, Entry[]>();
  lists.set(entry.kind, ofKind);
  const { device } = partsOf(entry);
  const list = ofKind.get(device) ?? [];
  ofKind.set(device, list);
  return list;
}

function partsOf({ id }: Entry): { readonly device: string; readonly count: number } {
  const hyphen = id.indexOf("-");
  return { device: id.slice(0, hyphen), count: Number(id.slice(hyphen + 1)) };
}

function byDeviceAndCount(a: Entry, b: Entry): number {
  const [one, other] = [partsOf(a), partsOf(b)];
  return one.device === other.device ? one.count - other.count : one.device < other.device ? -1 : 1;
}

/** The pieces with their ticks; a piece is reckoned anew only where a tick of it came or went. */
function createPieces() {
  const ticks = new Map<string, EntryOf<"piece">[]>();
  const known = new Map<string, PieceState>();
  let marks: string[] | undefined;
  return {
    add: (tick: EntryOf<"piece">): void => {
      const { piece } = tick.place;
      const held = ticks.get(piece);
      if (held) held.push(tick);
      else {
        ticks.set(piece, [tick]);
        marks = undefined;
      }
      known.delete(piece);
    },
    drop: (tick: EntryOf<"piece">): void => {
      const { piece } = tick.place;
      const left = (ticks.get(piece) ?? []).filter((one) => one !== tick);
      known.delete(piece);
      if (left.length > 0) ticks.set(piece, left);
      else {
        ticks.delete(piece);
        marks = undefined;
      }
    },
    state: (): Record<string, PieceState> => {
      marks ??= [...ticks.keys()].sort((a, b) => (a < b ? -1 : 1));
      for (const mark of marks) {
        if (!known.has(mark)) known.set(mark, pieceOf(ticks.get(mark) ?? []));
      }
      return Object.fromEntries(marks.map((mark) => [mark, known.get(mark) as PieceState]));
    },
  };
}

function pieceOf(ticks: readonly EntryOf<"piece">[]): PieceState {
  const stages = new Map<Stage, string[]>();
  for (const { id, body } of ticks.length > 1 ? [...ticks].sort(byDeviceAndCount) : ticks) {
    stages.set(body.stage, [...(stages.get(body.stage) ?? []), id]);
  }
  const stage = STAGES.findLast((one) => stages.has(one)) ?? "cut";
  return { stage, ticks: Object.fromEntries(stages) };
}
