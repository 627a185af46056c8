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
  const counting = thoseThatCount(entries);
  const of = <Kind extends EntryKind>(kind: Kind): EntryOf<Kind>[] =>
    counting.filter((entry): entry is EntryOf<Kind> => entry.kind === kind);
  const settled = new Set(of("settled").map(({ body }) => body.finding));
  const findings = of("finding");
  return {
    pieces: piecesOf(of("piece")),
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
}

/** Each entry once, without those that another one corrects or takes back, by device and count. */
function thoseThatCount(entries: Iterable<Entry>): Entry[] {
  const byId = new Map<string, Entry>();
  for (const entry of entries) byId.set(entry.id, entry);
  const gone = new Set<string>();
  for (const { kind, corrects = [] } of byId.values()) {
    for (const id of corrects) {
      const corrected = byId.get(id)?.kind;
      // What takes back cannot be taken back: a tick that was wrongly taken back is told anew.
      if (corrected !== "undone" && (kind === "undone" || kind === corrected)) gone.add(id);
    }
  }
  return [...byId.values()].filter(({ id }) => !gone.has(id)).sort(byDeviceAndCount);
}

function byDeviceAndCount(a: Entry, b: Entry): number {
  const [device, count] = partsOf(a);
  const [otherDevice, otherCount] = partsOf(b);
  return device === otherDevice ? count - otherCount : device < otherDevice ? -1 : 1;
}

function partsOf({ id }: Entry): readonly [device: string, count: number] {
  const hyphen = id.indexOf("-");
  return [id.slice(0, hyphen), Number(id.slice(hyphen + 1))];
}

function piecesOf(ticks: readonly EntryOf<"piece">[]): Record<string, PieceState> {
  const byMark = new Map<string, Map<Stage, string[]>>();
  for (const { id, place, body } of ticks) {
    const stages = byMark.get(place.piece) ?? new Map<Stage, string[]>();
    byMark.set(place.piece, stages);
    stages.set(body.stage, [...(stages.get(body.stage) ?? []), id]);
  }
  const pieces = [...byMark].map(([mark, stages]): [string, PieceState] => {
    const stage = STAGES.findLast((one) => stages.has(one)) ?? "cut";
    return [mark, { stage, ticks: Object.fromEntries(stages) }];
  });
  return Object.fromEntries(pieces.sort(([a], [b]) => (a < b ? -1 : 1)));
}
