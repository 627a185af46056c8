/**
 * Boards of a pile ripped and cut to length in one search, ruin and recreate: some boards become whole again, and the pieces
 * that came loose are cut anew, the longest first, each where it spoils least. Late acceptance is that of Burke & Bykov,
 * European Journal of Operational Research 258 (2017) 70-78; what a rest is worth is our own. Lengths in grid steps; pieces,
 * strips, runs and boards are grown by the kerf.
 */
import type { PileBoardSize, PilePieceSize, PileSizes } from "./pile-columns.ts";
import { type CutStrip, divePile } from "./pile-dive.ts";
import { pick, seeded } from "./random.ts";

/** How far back a cutting is compared. */
const HISTORY = 50;
/** Most boards that a step makes whole. */
const MOST_RUINED = 5;
/** Steps from one breath to the next. */
const BREATH = 100;
/** A place is passed over this often, so that the best one does not always win. */
const BLINK = 0.03;
/** A long rest is worth more than two short ones of the same length together, and so is a wide one. */
const LENGTH_POWER = 1.5;
const WIDTH_POWER = 1.3;
const MOST_LOOKS = 1000;
/** What leaving a board whole is worth, as a share of its area. */
const WHOLE = 0.05;
/** What it is worth not to bring another lot or look to a face, in boards of the mean size. */
const ONE_LOT = 1;
/** Boards are used up before pieces are bought: an area of pieces left out weighs this many times that of boards ripped. */
const LEFT_OUT = 1000;

export interface SearchBoard extends PileBoardSize {
  /** Boards of one lot that look alike have one number, counted from 0. */
  readonly look: number;
}

export interface SearchPiece extends PilePieceSize {
  /** Pieces seen together, which look best from one lot and alike; counted from 0, or `NO_GROUP`. */
  readonly group: number;
}

/** Of pieces that may come from boards of any look. */
export const NO_GROUP = -1;

export interface PileJob extends PileSizes {
  readonly boards: readonly SearchBoard[];
  readonly pieces: readonly SearchPiece[];
  /** Steps, stretch by stretch, each going on from the best of those before. */
  readonly stretches: readonly number[];
  /** Sums that the first cutting may take; nought: it goes piece by piece. */
  readonly work: number;
  readonly seed: number;
}

/** The best cutting so far. */
export interface PileCutting {
  /** By board; undefined where it stays whole. */
  readonly boards: readonly (readonly CutStrip[] | undefined)[];
  readonly left: readonly number[];
  readonly iterations: number;
  /** Stretches that have ended. */
  readonly stretch: number;
}

interface Strip extends CutStrip {
  readonly rooms: readonly number[];
}

/** A board that is ripped; never changed, but replaced by another. */
interface Ripped {
  readonly free: number;
  readonly strips: readonly Strip[];
}

interface State {
  readonly boards: (Ripped | undefined)[];
  left: number[];
  /** How many pieces of each group come from boards of each look, by a number for both. */
  readonly mixed: Map<number, number>;
}

interface Place {
  readonly board: number;
  /** None: a new strip. */
  readonly strip: number | undefined;
  readonly run: number;
}

/** Gives what it has now and then, at first as soon as all pieces were tried once; may be left at any time. */
export function* searchPile(job: PileJob): Generator<PileCutting, PileCutting> {
  const random = seeded(job.seed);
  const worth = worths(job);
  let best = plainOf(job, worth);
  let iterations = 0;
  let stretch = 0;
  const found = (): PileCutting => ({
    boards: best.boards.map((board) => board?.strips),
    left: best.left,
    iterations,
    stretch,
  });
  yield found();
  if (job.work > 0) {
    const diven = divenOf(job, worth);
    if (costOf(job, diven) < costOf(job, best)) best = diven;
    yield found();
  }
  for (const budget of job.stretches) {
    const run = searched(job, worth, { start: best, budget, random });
    const from = iterations;
    for (let next = run.next(); ; next = run.next()) {
      best = next.value.best;
      iterations = from + next.value.steps;
      if (next.done) break;
      yield found();
    }
    stretch += 1;
    yield found();
  }
  return found();
}

interface Searched {
  readonly best: State;
  readonly steps: number;
}

function* searched(
  job: PileJob,
  worth: Worths,
  {
    start,
    budget,
    random,
  }: { readonly start: State; readonly budget: number; readonly random: () => number },
): Generator<Searched, Searched> {
  let now = start;
  let best = start;
  let cost = costOf(job, start);
  let least = cost;
  const history = Array.from({ length: HISTORY }, () => cost);
  let steps = 0;
  for (; steps < budget && now.boards.some((board) => board !== undefined); steps++) {
    const trial: State = { boards: [...now.boards], left: [...now.left], mixed: new Map(now.mixed) };
    ruin(job, trial, random);
    recreate(job, worth, trial, random);
    const found = costOf(job, trial);
    const at = steps % HISTORY;
    if (found <= cost || found <= (history[at] ?? 0)) {
      now = trial;
      cost = found;
    }
    history[at] = Math.min(history[at] ?? cost, cost);
    if (cost < least) {
      best = now;
      least = cost;
    }
    if (steps % BREATH === BREATH - 1) yield { best, steps: steps + 1 };
  }
  return { best, steps };
}

/** Cut piece by piece. */
function plainOf(job: PileJob, worth: Worths): State {
  const plain = begunWith(job, []);
  recreate(job, worth, plain, steady);
  return plain;
}

/** Cut board by board, as a linear programme weighs them. */
function divenOf(job: PileJob, worth: Worths): State {
  const diven = begunWith(job, divePile(job, { leftOut: LEFT_OUT, work: job.work }));
  recreate(job, worth, diven, steady);
  return diven;
}

/** Boards cut into some strips, all other pieces left out. */
function begunWith(job: PileJob, strips: readonly (readonly CutStrip[] | undefined)[]): State {
  const cut = new Set<number>();
  const mixed = new Map<number, number>();
  const boards = job.boards.map(({ room, runs, look }, board): Ripped | undefined => {
    const own = strips[board];
    for (const piece of own?.flatMap(({ pieces }) => pieces.flat()) ?? []) {
      cut.add(piece);
      const { group = NO_GROUP } = job.pieces[piece] ?? {};
      if (group === NO_GROUP) continue;
      const key = mixKey(group, look);
      mixed.set(key, (mixed.get(key) ?? 0) + 1);
    }
    return (
      own && {
        free: own.reduce((left, { width }) => left - (job.widths[width] ?? 0), room),
        strips: own.map((strip) => ({ ...strip, rooms: roomsLeft(job, runs, strip) })),
      }
    );
  });
  return { boards, left: job.pieces.flatMap((_, at) => (cut.has(at) ? [] : [at])), mixed };
}

function roomsLeft({ pieces }: PileJob, runs: readonly number[], strip: CutStrip): number[] {
  return runs.map((run, at) =>
    (strip.pieces[at] ?? []).reduce((left, piece) => left - (pieces[piece]?.length ?? 0), run),
  );
}

/** For the first cutting: the longest first, each in its best place. */
function steady(): number {
  return 0.25;
}

function costOf({ boards, pieces }: PileJob, state: State): number {
  const left = state.left.reduce((sum, at) => sum + (pieces[at]?.area ?? 0), 0);
  const used = state.boards.reduce(
    (sum, board, at) => sum + (board === undefined ? 0 : (boards[at]?.area ?? 0)),
    0,
  );
  return left * LEFT_OUT + used + state.mixed.size * ONE_LOT * meanArea(boards);
}

function meanArea(boards: readonly SearchBoard[]): number {
  return boards.reduce((sum, { area }) => sum + area, 0) / Math.max(1, boards.length);
}

/** One number for a group of pieces and a look. */
function mixKey(group: number, look: number): number {
  return group * MOST_LOOKS + look;
}

function ruin(job: PileJob, state: State, random: () => number): void {
  const used = state.boards.flatMap((board, at) => (board === undefined ? [] : [at]));
  const count = 1 + pick(random, Math.min(MOST_RUINED, used.length));
  for (let i = 0; i < count; i++) {
    const [at = 0] = used.splice(pick(random, used.length), 1);
    const loose = state.boards[at]?.strips.flatMap(({ pieces }) => pieces.flat()) ?? [];
    state.left.push(...loose);
    for (const piece of loose) {
      if (job.pieces[piece]?.group === NO_GROUP) continue;
      const key = mixKey(job.pieces[piece]?.group ?? 0, job.boards[at]?.look ?? 0);
      const count = (state.mixed.get(key) ?? 0) - 1;
      if (count > 0) state.mixed.set(key, count);
      else state.mixed.delete(key);
    }
    state.boards[at] = undefined;
  }
}

/** Cuts what is left out, the longest first, each size until it has no place. */
function recreate(job: PileJob, worth: Worths, state: State, random: () => number): void {
  const { pieces } = job;
  // Now and then by area, and now and then in disorder: what fills a run to its end, and what is left out, are then others.
  const byArea = random() < 0.2;
  const disorder = random() < 0.5 ? 0 : random();
  const order = state.left
    .map((at) => {
      const { width = 0, length = 0 } = pieces[at] ?? {};
      return { at, rank: (byArea ? length * (job.widths[width] ?? 0) : length) * (1 - disorder * random()) };
    })
    .sort((a, b) => b.rank - a.rank || a.at - b.at);
  const without = new Set<string>();
  const left: number[] = [];
  for (const { at } of order) {
    const piece = pieces[at];
    if (piece === undefined) continue;
    const key = `${piece.width} ${piece.length}`;
    const place = without.has(key) ? undefined : bestPlace(job, worth, state, { piece, random });
    if (place === undefined) {
      without.add(key);
      left.push(at);
    } else cutAt(job, state, place, at);
  }
  state.left = left;
}

function bestPlace(
  { boards, widths }: PileJob,
  worth: Worths,
  state: State,
  { piece, random }: { readonly piece: SearchPiece; readonly random: () => number },
): Place | undefined {
  const { width, length, group } = piece;
  const wide = widths[width] ?? 0;
  let best: Place | undefined;
  let least = Number.POSITIVE_INFINITY;
  const consider = (place: Place, loss: number): void => {
    if (loss < least && random() >= BLINK) {
      best = place;
      least = loss;
    }
  };
  state.boards.forEach((ripped, board) => {
    const of = boards[board];
    if (of?.suits[width] !== true) return;
    const isStrange = group !== NO_GROUP && !state.mixed.has(mixKey(group, of.look));
    const strange = isStrange ? worth.look : 0;
    ripped?.strips.forEach((strip, at) => {
      if (strip.width !== width) return;
      strip.rooms.forEach((room, run) => {
        if (room >= length) {
          const spoilt = wide * (worth.run(room) - worth.run(room - length));
          consider({ board, strip: at, run }, spoilt + strange);
        }
      });
    });
    const free = ripped?.free ?? of.room;
    if (free < wide) return;
    const run = tightest(of.runs, length);
    if (run === undefined) return;
    const room = of.runs[run] ?? 0;
    const kept = wide * (worth.runs(board) - worth.run(room) + worth.run(room - length));
    const spoilt = worth.across(board, free) - worth.across(board, free - wide) - kept;
    consider(
      { board, strip: undefined, run },
      spoilt + strange + (ripped === undefined ? worth.whole(board) : 0),
    );
  });
  return best;
}

function tightest(runs: readonly number[], length: number): number | undefined {
  let best: number | undefined;
  runs.forEach((room, run) => {
    if (room >= length && room < (best === undefined ? Number.POSITIVE_INFINITY : (runs[best] ?? 0)))
      best = run;
  });
  return best;
}

function cutAt(job: PileJob, state: State, { board, strip, run }: Place, piece: number): void {
  const { width = 0, length = 0, group = 0 } = job.pieces[piece] ?? {};
  const { room = 0, runs = [], look = 0 } = job.boards[board] ?? {};
  if (group !== NO_GROUP) {
    const key = mixKey(group, look);
    state.mixed.set(key, (state.mixed.get(key) ?? 0) + 1);
  }
  const ripped = state.boards[board] ?? { free: room, strips: [] };
  const into = strip === undefined ? undefined : ripped.strips[strip];
  const { rooms, pieces } = into ?? { rooms: runs, pieces: runs.map((): number[] => []) };
  const cut: Strip = {
    width,
    rooms: rooms.map((one, at) => (at === run ? one - length : one)),
    pieces: pieces.map((list, at) => (at === run ? [...list, piece] : list)),
  };
  state.boards[board] = {
    free: into === undefined ? ripped.free - (job.widths[width] ?? 0) : ripped.free,
    strips:
      into === undefined ? [...ripped.strips, cut] : ripped.strips.map((one) => (one === into ? cut : one)),
  };
}

interface Worths {
  readonly run: (room: number) => number;
  /** Of all runs of a board. */
  readonly runs: (board: number) => number;
  /** Of a board's width that is not ripped yet. */
  readonly across: (board: number, free: number) => number;
  readonly whole: (board: number) => number;
  /** Of not bringing another look to a face. */
  readonly look: number;
}

/** Rests that no piece or strip fits are worth nothing. */
function worths({ boards, pieces, widths }: PileJob): Worths {
  const shortest = pieces.reduce((least, { length }) => Math.min(least, length), Number.POSITIVE_INFINITY);
  const run = (room: number): number => (room < shortest ? 0 : room ** LENGTH_POWER);
  const ofRuns = boards.map(({ runs }) => runs.reduce((sum, room) => sum + run(room), 0));
  const narrowest = boards.map(({ suits }) =>
    widths.reduce(
      (least, width, at) => (suits[at] ? Math.min(least, width) : least),
      Number.POSITIVE_INFINITY,
    ),
  );
  return {
    run,
    runs: (board) => ofRuns[board] ?? 0,
    across: (board, free) => {
      const least = narrowest[board] ?? 0;
      return free < least ? 0 : free * (free / least) ** (WIDTH_POWER - 1) * (ofRuns[board] ?? 0);
    },
    whole: (board) => WHOLE * (boards[board]?.room ?? 0) * (ofRuns[board] ?? 0),
    look:
      (WHOLE * boards.reduce((sum, { room }, at) => sum + room * (ofRuns[at] ?? 0), 0)) /
      Math.max(1, boards.length),
  };
}
