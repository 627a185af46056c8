import { toGridSteps } from "../units/length.ts";
import type { PileBoard } from "./model.ts";
import { straightWidth, usefulLength } from "./rips.ts";

export interface RipWidthRequest {
  readonly boards: readonly PileBoard[];
  readonly kerf: number;
  /** As in a rip request. */
  readonly straighten?: number;
  /** Widths to choose from, mm. */
  readonly widths: readonly number[];
  /** Sound runs shorter than this are of no use, mm; absent: 0. */
  readonly shortest?: number;
  /** Each width gives at least this share of all strips' area, 0 to 1; absent: 0. */
  readonly leastShare?: number;
}

/** Widths ripped together, each board into those strips that waste least of it. */
export interface WidthChoice {
  /** Rising, mm. */
  readonly widths: readonly number[];
  /** Share of the area of all boards, as they lie in the pile, that becomes sound strip. */
  readonly yield: number;
  /** Share of the strips' area that each width gives. */
  readonly shares: readonly number[];
}

export interface RipWidths {
  /** For each width by itself, in the order asked: a curve to look at. */
  readonly curve: readonly WidthChoice[];
  /** The best of one, two and three widths, each where there is one that keeps to the least share. */
  readonly best: readonly WidthChoice[];
}

/** Boards of one straight width, counted together. */
interface Boards {
  /** Straight width and one kerf, grid steps. */
  readonly room: number;
  /** Sound length, mm. */
  readonly length: number;
}

/**
 * The one, two and three strip widths that make most of a pile, by trying every choice on every board; of equal choices the wider
 * widths. What a choice gives of each width is what its best rips give; where several rips of a board are as good, that with most
 * wide strips counts.
 */
export function ripWidths(request: RipWidthRequest): RipWidths {
  const boards = straightBoards(request);
  const area = request.boards.reduce((sum, { width, length }) => sum + width * length, 0);
  const kerf = toGridSteps(request.kerf);
  const least = request.leastShare ?? 0;
  const steps = [...new Set(request.widths)].filter((width) => width > 0).sort((a, b) => b - a);
  const rate = (widths: readonly number[]): WidthChoice => {
    const areas = areasOf(widths, boards, kerf);
    const total = areas.reduce((sum, one) => sum + one, 0);
    return {
      widths: [...widths].reverse(),
      yield: area > 0 ? total / area : 0,
      shares: areas.map((one) => (total > 0 ? one / total : 0)).reverse(),
    };
  };
  const bestOf = (choices: Iterable<readonly number[]>): WidthChoice[] => {
    let best: WidthChoice | undefined;
    for (const widths of choices) {
      const choice = rate(widths);
      if (choice.yield <= (best?.yield ?? 0) || choice.shares.some((share) => share < least)) continue;
      best = choice;
    }
    return best === undefined ? [] : [best];
  };
  return {
    curve: request.widths.map((width) => rate([width])),
    best: [1, 2, 3].flatMap((count) => bestOf(choicesOf(steps, count))),
  };
}

function straightBoards(request: RipWidthRequest): Boards[] {
  const kerf = toGridSteps(request.kerf);
  const byRoom = new Map<number, number>();
  for (const board of request.boards) {
    const { from, to } = straightWidth(board, request);
    const room = toGridSteps(to) - toGridSteps(from) + kerf;
    const length = usefulLength(board, request.shortest ?? 0);
    byRoom.set(room, (byRoom.get(room) ?? 0) + length);
  }
  return [...byRoom].map(([room, length]) => ({ room, length }));
}

/** All choices of so many widths, widest first. */
function* choicesOf(widths: readonly number[], count: number, from = 0): Generator<readonly number[]> {
  if (count === 0) yield [];
  else {
    for (let at = from; at < widths.length; at++) {
      for (const rest of choicesOf(widths, count - 1, at + 1)) yield [widths[at] ?? 0, ...rest];
    }
  }
}

/** Area of strip that each width gives, mm², each board ripped so that its strips are widest in all. */
function areasOf(widths: readonly number[], boards: readonly Boards[], kerf: number): number[] {
  const [one = 0, two = 0, three = 0] = widths.map(toGridSteps);
  const areas = widths.map(() => 0);
  for (const { room, length } of boards) {
    let most = 0;
    let counts = [0, 0, 0];
    for (let a = Math.floor(room / (one + kerf)); a >= 0; a--) {
      const left = room - a * (one + kerf);
      for (let b = two === 0 ? 0 : Math.floor(left / (two + kerf)); b >= 0; b--) {
        const c = three === 0 ? 0 : Math.floor((left - b * (two + kerf)) / (three + kerf));
        const sum = a * one + b * two + c * three;
        if (sum <= most) continue;
        most = sum;
        counts = [a, b, c];
      }
    }
    widths.forEach((width, at) => {
      areas[at] = (areas[at] ?? 0) + (counts[at] ?? 0) * width * length;
    });
  }
  return areas;
}
