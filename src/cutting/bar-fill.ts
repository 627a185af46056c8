/**
 * Two ways of filling bars, used by the search over both: best fit, longest piece first; and bar by bar, each filled
 * as full as the waiting pieces allow. Lengths in steps, pieces grown by the kerf and runs by the kerf.
 */
import type { PieceGroup, SubsetSums } from "./subset-sums.ts";
import { subsetSums } from "./subset-sums.ts";

export interface Piece {
  readonly demand: number;
  readonly length: number;
  /** Pieces of one class may lie on the same bars. */
  readonly kind: number;
}

export interface BarType {
  readonly stock: number;
  readonly cost: number;
  readonly runs: readonly number[];
  /** Classes of pieces that it may serve. */
  readonly serves: ReadonlySet<number>;
}

export interface FilledBar {
  readonly type: BarType;
  /** By run, in the order along the bar. */
  readonly pieces: Piece[][];
}

export interface FillJob {
  readonly pieces: readonly Piece[];
  readonly types: readonly BarType[];
  /** Bars left, by stock number. */
  readonly available: readonly number[];
  /** A length that divides all lengths. */
  readonly unit: number;
  /** What a bar of a type counts as costing; a search may shake it. */
  readonly price: (type: BarType) => number;
}

export interface Filling {
  readonly bars: FilledBar[];
  readonly left: Piece[];
}

/** Each piece in its order into the run that it leaves least of; a new bar by least price for its sound length. */
export function bestFit(job: FillJob): Filling {
  const available = [...job.available];
  const bars: FilledBar[] = [];
  const left: Piece[] = [];
  const room: number[][] = [];
  for (const piece of job.pieces) {
    let at = tightest(piece, bars, room);
    if (at === undefined) {
      const type = cheapestFor(piece, job, available);
      if (type === undefined) {
        left.push(piece);
        continue;
      }
      available[type.stock] = (available[type.stock] ?? 0) - 1;
      bars.push({ type, pieces: type.runs.map(() => []) });
      room.push([...type.runs]);
      at = { bar: bars.length - 1, run: shortestRunFor(piece.length, type.runs) };
    }
    bars[at.bar]?.pieces[at.run]?.push(piece);
    const rooms = room[at.bar];
    if (rooms !== undefined) rooms[at.run] = (rooms[at.run] ?? 0) - piece.length;
  }
  return { bars, left };
}

function tightest(piece: Piece, bars: readonly FilledBar[], room: readonly number[][]) {
  let best: { bar: number; run: number } | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let bar = 0; bar < bars.length; bar++) {
    if (bars[bar]?.type.serves.has(piece.kind) !== true) continue;
    const rooms = room[bar] ?? [];
    for (let run = 0; run < rooms.length; run++) {
      const spare = (rooms[run] ?? 0) - piece.length;
      if (spare >= 0 && spare < least) {
        least = spare;
        best = { bar, run };
      }
    }
  }
  return best;
}

function cheapestFor(piece: Piece, job: FillJob, available: readonly number[]): BarType | undefined {
  let best: BarType | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const type of job.types) {
    if (!canTake(piece, type, available)) continue;
    const rate = rateOf(job.price(type), total(type.runs), total(type.runs));
    if (rate < least) {
      least = rate;
      best = type;
    }
  }
  return best;
}

function canTake(piece: Piece, type: BarType, available: readonly number[]): boolean {
  if ((available[type.stock] ?? 0) <= 0 || !type.serves.has(piece.kind)) return false;
  return type.runs.some((run) => run >= piece.length);
}

/** Price for each unit of length used; where bars cost nothing, the fullest comes first. */
function rateOf(price: number, used: number, whole: number): number {
  return price > 0 ? price / used : -used / whole;
}

/** Bar by bar round the first waiting piece: of all stock, the bar with the least price for what can be used of it. */
export function fullestBars(job: FillJob): Filling {
  const available = [...job.available];
  const bars: FilledBar[] = [];
  const left: Piece[] = [];
  const waiting = [...job.pieces];
  while (waiting.length > 0) {
    const first = waiting.shift();
    if (first === undefined) break;
    const choice = bestBarFor(first, waiting, job, available);
    if (choice === undefined) {
      left.push(first);
      continue;
    }
    available[choice.type.stock] = (available[choice.type.stock] ?? 0) - 1;
    bars.push(fillBar(first, choice, waiting, job.unit));
  }
  return { bars, left };
}

/** What the waiting pieces that a bar may take can fill. */
interface Offer {
  readonly sums: SubsetSums;
  readonly members: readonly (readonly Piece[])[];
}

function offerOf(waiting: readonly Piece[], type: BarType, room: number, unit: number): Offer {
  const { groups, members } = groupsOf(waiting, type);
  return { members, sums: subsetSums(groups, room, unit) };
}

function bestBarFor(first: Piece, waiting: readonly Piece[], job: FillJob, available: readonly number[]) {
  const fitting = job.types.filter((type) => canTake(first, type, available));
  const longest = fitting.reduce((most, type) => Math.max(most, ...type.runs), 0);
  const offers = new Map<ReadonlySet<number>, Offer>();
  let best: { type: BarType; offer: Offer } | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const type of fitting) {
    const offer = offers.get(type.serves) ?? offerOf(waiting, type, longest, job.unit);
    offers.set(type.serves, offer);
    const home = shortestRunFor(first.length, type.runs);
    let used = first.length;
    for (let run = 0; run < type.runs.length; run++) {
      used += offer.sums.best((type.runs[run] ?? 0) - (run === home ? first.length : 0));
    }
    const rate = rateOf(job.price(type), used, total(type.runs));
    if (rate < least) {
      least = rate;
      best = { type, offer };
    }
  }
  return best;
}

/** Fills one bar, the first piece's run first, then the others from the longest; takes the pieces out of `waiting`. */
function fillBar(
  first: Piece,
  choice: { type: BarType; offer: Offer },
  waiting: Piece[],
  unit: number,
): FilledBar {
  const { type } = choice;
  const pieces: Piece[][] = type.runs.map(() => []);
  const home = shortestRunFor(first.length, type.runs);
  const fill = (run: number, room: number, offer: Offer) => {
    const taken = new Set<Piece>();
    for (const [group, count] of offer.sums.take(room)) {
      for (const piece of (offer.members[group] ?? []).slice(0, count)) taken.add(piece);
    }
    pieces[run]?.push(...taken);
    const kept = waiting.filter((piece) => !taken.has(piece));
    waiting.splice(0, waiting.length, ...kept);
  };
  pieces[home]?.push(first);
  fill(home, (type.runs[home] ?? 0) - first.length, choice.offer);
  const others = type.runs.map((_, run) => run).filter((run) => run !== home);
  others.sort((a, b) => (type.runs[b] ?? 0) - (type.runs[a] ?? 0));
  for (const run of others) {
    if (waiting.length === 0) break;
    const room = type.runs[run] ?? 0;
    fill(run, room, offerOf(waiting, type, room, unit));
  }
  return { type, pieces };
}

function groupsOf(waiting: readonly Piece[], type: BarType): { groups: PieceGroup[]; members: Piece[][] } {
  const byLength = new Map<number, Piece[]>();
  for (const piece of waiting) {
    if (!type.serves.has(piece.kind)) continue;
    const same = byLength.get(piece.length);
    if (same === undefined) byLength.set(piece.length, [piece]);
    else same.push(piece);
  }
  const members = [...byLength.values()];
  return {
    members,
    groups: members.map((same) => ({ length: same[0]?.length ?? 0, count: same.length })),
  };
}

function shortestRunFor(length: number, runs: readonly number[]): number {
  let best = -1;
  runs.forEach((run, index) => {
    if (run >= length && (best < 0 || run < (runs[best] ?? 0))) best = index;
  });
  return best;
}

function total(runs: readonly number[]): number {
  return runs.reduce((sum, run) => sum + run, 0);
}
