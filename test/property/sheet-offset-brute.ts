/**
 * The offset pattern by plain enumeration: every set of upright joints, every way to stack each column, every pair of
 * neighbours' level joints counted that stand too close. Dropped is only what another beats whatever stands beside it.
 */
import { WEIGHTS } from "../../src/setout/sheets/score.ts";
import type { SheetZone } from "../../src/setout/sheets/zone.ts";
import { snap } from "../../src/units/length.ts";
import { BruteForce } from "./sheet-layout-brute.ts";

type Span = readonly [number, number];

interface Stack {
  readonly cuts: readonly number[];
  readonly cost: number;
}

const NOISE = 1e-9;

export class OffsetBruteForce extends BruteForce {
  readonly #apart: number;
  readonly #limit: number;
  readonly #stacks = new Map<string, readonly Stack[]>();

  /** @param claim what a layout is said to cost: costs only grow, so no part of a cheaper layout costs more */
  constructor(zone: SheetZone, claim: number) {
    super(zone);
    this.#limit = claim + 1e-6;
    this.#apart = Math.max(...this.shapes.map(({ height }) => height)) / 3;
  }

  /** The least cost of any layout, Infinity where none comes to the claim: column by column from the left, every joint after every earlier one. */
  best(): number {
    const joints = this.candidates();
    const reached: Stack[][] = joints.map(() => []);
    const last: Stack[] = [];
    const from = (left: number, hard: boolean, next: number, ends: readonly Stack[]): void => {
      for (let k = next; k <= joints.length; k++) {
        const end = joints[k];
        const right = end?.from ?? this.x[1];
        for (const columns of this.divisions([left, right], hard && (end?.hard ?? true))) {
          const all = this.#matched(ends, columns, end ? this.jointCost(end.from, end.off) : 0);
          (reached[k] ?? last).push(...all);
        }
        if (end?.pin) return;
      }
    };
    from(this.x[0], true, 0, [{ cuts: [], cost: 0 }]);
    joints.forEach((joint, i) => {
      const ends = this.#undominated(reached[i] ?? []);
      if (ends.length > 0) from(snap(joint.from + this.joint), joint.hard, i + 1, ends);
    });
    return Math.min(...last.map(({ cost }) => cost));
  }

  /** Every way to stack equal columns after what stands on their left, each with its cheapest left; crowded pairs counted. */
  #matched(before: readonly Stack[], columns: readonly Span[], joint: number): Stack[] {
    return columns.reduce<readonly Stack[]>((ends, x, i) => {
      const inner = i > 0 ? this.jointCost(snap(x[0] - this.joint), false) : 0;
      const beside = inner + (i === columns.length - 1 ? joint : 0);
      const cheapestFirst = Array.from(ends).sort((a, b) => a.cost - b.cost);
      return this.stacks(x).map(({ cuts, cost }) => ({
        cuts,
        cost: cost + beside + this.#leastBeside(cuts, cheapestFirst),
      }));
    }, before) as Stack[];
  }

  #leastBeside(cuts: readonly number[], cheapestFirst: readonly Stack[]): number {
    let least = Number.POSITIVE_INFINITY;
    for (const end of cheapestFirst) {
      if (end.cost >= least) break;
      least = Math.min(least, end.cost + WEIGHTS.crowded * this.#crowded(end.cuts, cuts));
    }
    return least;
  }

  #crowded(theirs: readonly number[], cuts: readonly number[]): number {
    return cuts.flatMap((cut) => theirs.filter((other) => Math.abs(cut - other) < this.#apart - NOISE))
      .length;
  }

  stacks(x: Span): readonly Stack[] {
    const key = `${x[0]} ${x[1]}`;
    const known = this.#stacks.get(key);
    if (known) return known;
    let stacks: Stack[] = [{ cuts: [], cost: 0 }];
    for (const part of this.parts(x)) {
      const own = this.#inPart(x, part);
      stacks = this.#undominated(
        stacks.flatMap((stack) =>
          own.map(({ cuts, cost }) => ({ cuts: [...stack.cuts, ...cuts], cost: stack.cost + cost })),
        ),
      );
    }
    this.#stacks.set(key, stacks);
    return stacks;
  }

  #inPart(x: Span, part: Span): Stack[] {
    let stacks: Stack[] = [{ cuts: [], cost: 0 }];
    this.segments(part).forEach(({ span, cost }, i) => {
      const line = i === 0 ? [] : [snap(span[0] - this.joint)];
      const own = this.#inSegment(x, span);
      stacks = this.#undominated(
        stacks.flatMap((stack) =>
          own.map((one) => ({
            cuts: [...stack.cuts, ...line, ...one.cuts],
            cost: stack.cost + cost + one.cost,
          })),
        ),
      );
    });
    return stacks;
  }

  #inSegment(x: Span, [low, high]: Span): readonly Stack[] {
    const lines = this.lines.filter(({ at }) => at > low && at + this.joint < high);
    const whole: Stack = { cuts: [], cost: this.pieceCost(x, [low, high]) };
    let found: readonly Stack[] = this.#undominated([whole, ...this.#equal(x, [low, high])]);
    // Fewest joints first, so that what they can do stops what only adds to them: costs and joints grow from part to part.
    let parts: (Stack & { readonly from: number; readonly next: number })[] = [
      { cuts: [], cost: 0, from: low, next: 0 },
    ];
    while (parts.length > 0) {
      const longer = parts.flatMap(({ cuts, cost, from, next }) =>
        lines.slice(next).flatMap((line, k) => {
          if (line.at <= from) return [];
          const row = this.pieceCost(x, [from, line.at]);
          const start = snap(line.at + this.joint);
          return [
            { cuts: [...cuts, line.at], cost: cost + row + line.cost, from: start, next: next + k + 1 },
          ];
        }),
      );
      parts = longer.filter(
        ({ cuts, cost, from }) =>
          // So many more sheets at the least lie over it.
          cost + WEIGHTS.sheet * Math.ceil((high - from) / (3 * this.#apart + this.joint) - NOISE) <=
            this.#limit &&
          !found.some((one) => one.cost <= cost && one.cuts.every((at) => cuts.includes(at))),
      );
      const whole = parts.map(({ cuts, cost, from }) => ({
        cuts,
        cost: cost + this.pieceCost(x, [from, high]),
      }));
      found = this.#undominated([...found, ...whole]);
    }
    return found;
  }

  #equal(x: Span, [low, high]: Span): Stack[] {
    const wide = this.shapes.filter(({ width }) => width >= x[1] - x[0] - NOISE);
    const tallest = Math.max(...(wide.length > 0 ? wide : this.shapes).map(({ height }) => height));
    const fewest = Math.max(1, Math.ceil((high - low + this.joint) / (tallest + this.joint) - NOISE));
    return [fewest, fewest + 1].flatMap((count): Stack[] => {
      const pitch = (high - low + this.joint) / count;
      const cuts = Array.from({ length: count - 1 }, (_, i) =>
        snap(snap(low + (i + 1) * pitch) - this.joint),
      );
      const isBarred = cuts.some((at) =>
        this.forbidden.y.some(([from, to]) => at < to && at + this.joint > from),
      );
      if (isBarred) return [];
      const rows = this.cutAt([low, high], cuts);
      return [{ cuts, cost: this.cost(x, rows) + cuts.length * WEIGHTS.offLine }];
    });
  }

  /** A stack is beaten wherever it stands by one that costs no more and has no joint of its own. */
  #undominated(stacks: readonly Stack[]): Stack[] {
    const kept: Stack[] = [];
    for (const stack of [...stacks].sort((a, b) => a.cost - b.cost || a.cuts.length - b.cuts.length)) {
      if (stack.cost > this.#limit) break;
      const beaten = kept.some(({ cuts }) => cuts.every((cut) => stack.cuts.includes(cut)));
      if (!beaten) kept.push(stack);
    }
    return kept;
  }
}
