/**
 * Sheet layouts by plain enumeration: every set of candidate joints, every set of level lines, nothing dropped but what
 * already costs more than the two best found. Written from the rules in words, apart from the program's own search; the
 * weights alone are shared.
 */
import { WEIGHTS } from "../../src/setout/sheets/score.ts";
import type { SheetZone } from "../../src/setout/sheets/zone.ts";
import { snap } from "../../src/units/length.ts";

type Span = readonly [number, number];

interface Candidate {
  readonly from: number;
  readonly hard: boolean;
  readonly off: boolean;
  readonly pin: boolean;
}

interface Rows {
  readonly rows: readonly Span[];
  readonly cost: number;
}

const NOISE = 1e-9;
const touches = (a: Span, b: Span): boolean => a[0] < b[1] && b[0] < a[1];

export class BruteForce {
  readonly zone: SheetZone;
  readonly joint: number;
  readonly shapes: readonly { readonly width: number; readonly height: number }[];
  readonly widest: number;
  readonly module: number;
  readonly x: Span;
  readonly y: Span;
  readonly forbidden: { readonly x: readonly Span[]; readonly y: readonly Span[] };
  readonly pinned: { readonly x: readonly number[]; readonly y: readonly number[] };
  lines: readonly { readonly at: number; readonly cost: number; readonly forced: boolean }[];
  readonly #columns = new Map<string, readonly Rows[]>();

  constructor(zone: SheetZone) {
    this.zone = zone;
    this.joint = zone.cladding.joint;
    const lay = zone.cladding.lay ?? "upright";
    this.shapes = zone.stock.flatMap(({ width, height }) => {
      const sides = [width - 2 * zone.trim, height - 2 * zone.trim].sort((a, b) => a - b) as [number, number];
      const upright = { width: sides[0], height: sides[1] };
      const lying = { width: sides[1], height: sides[0] };
      return lay === "upright" ? [upright] : lay === "lying" ? [lying] : [upright, lying];
    });
    this.widest = Math.max(...this.shapes.map(({ width }) => width));
    this.module = Math.max(...zone.stock.map(({ width, height }) => Math.min(width, height)));
    this.x = zone.ground.bounds.x;
    this.y = zone.ground.bounds.y;
    const { joints } = zone.ground.zone;
    this.forbidden = { x: joints?.forbidden?.x ?? [], y: joints?.forbidden?.y ?? [] };
    this.pinned = { x: joints?.pinned?.x ?? [], y: joints?.pinned?.y ?? [] };
    this.lines = this.#levelLines();
  }

  #levelLines() {
    const { keepOuts } = this.zone.ground;
    const least = this.zone.sliver.floor * this.module;
    const steps = this.shapes.flatMap(({ height }) => {
      const all: number[] = [];
      const count = Math.ceil((this.y[1] - this.y[0]) / height) + 1;
      const starts = this.zone.ground.zone.pattern === "offset" ? [1, 1 / 2, 1 / 3, 2 / 3] : [1];
      for (const start of starts) {
        for (let k = 0; k < count; k++) {
          const reach = start * height + k * (height + this.joint);
          all.push(snap(this.y[0] + reach), snap(this.y[1] - reach - this.joint));
        }
      }
      return all.filter((at) => at - this.y[0] >= least && this.y[1] - at - this.joint >= least);
    });
    const asked = [
      ...this.pinned.y.map((at) => ({ at, cost: 0, forced: true })),
      ...keepOuts.map(({ headLine }) => ({ at: headLine, cost: 0, forced: false })),
      ...keepOuts.map(({ sillLine = -1e9 }) => ({ at: sillLine, cost: WEIGHTS.sill, forced: false })),
      ...this.zone.lines.map((at) => ({ at, cost: WEIGHTS.otherLine, forced: false })),
      ...this.forbidden.y.flatMap(([from, to]) =>
        [snap(from - this.joint), to].map((at) => ({ at, cost: WEIGHTS.offLine, forced: false })),
      ),
      ...steps.map((at) => ({ at, cost: WEIGHTS.offLine, forced: false })),
    ];
    return asked
      .filter(({ at }) => at > this.y[0] && at + this.joint < this.y[1])
      .filter(
        ({ at, forced }) => forced || !this.forbidden.y.some((band) => touches(band, [at, at + this.joint])),
      )
      .filter(({ at }, i, all) => all.findIndex((other) => other.at === at) === i)
      .sort((a, b) => a.at - b.at);
  }

  candidates(): Candidate[] {
    const { zone, joint, x } = this;
    const keepOuts = zone.ground.keepOuts.map(({ rect }) => rect.x);
    const list: Candidate[] = [
      ...this.pinned.x.map((at) => ({ from: snap(at - joint / 2), hard: true, off: false, pin: true })),
      ...keepOuts.flatMap(([left, right]) =>
        [left, snap(right - joint), snap((left + right - joint) / 2)].map((from) => ({
          from,
          hard: true,
          off: false,
          pin: false,
        })),
      ),
      ...this.forbidden.x.flatMap(([from, to]) =>
        [snap(from - joint), to].map((at) => ({ from: at, hard: true, off: true, pin: false })),
      ),
      ...zone.studs.flatMap((centre) =>
        [centre + zone.battenWidth / 2, centre - zone.battenWidth / 2 - joint].map((at) => ({
          from: snap(at),
          hard: false,
          off: true,
          pin: false,
        })),
      ),
      ...this.shapes.flatMap(({ width }) =>
        Array.from({ length: 12 }, (_, k) => k).flatMap((k) =>
          [x[0] + width + k * (width + joint), x[1] - width - joint - k * (width + joint)].map((at) => ({
            from: snap(at),
            hard: false,
            off: true,
            pin: false,
          })),
        ),
      ),
    ];
    return list
      .filter(({ from, pin }) => pin || (from - x[0] > joint && x[1] - from - joint > joint))
      .filter(({ from, pin }) => pin || !this.forbidden.x.some((band) => touches(band, [from, from + joint])))
      .filter(({ from }, i, all) => all.findIndex((other) => other.from === from) === i)
      .sort((a, b) => a.from - b.from);
  }

  /** Two blocks where both battens of a joint miss the uprights (38 mm at the least), none where both stand on one. */
  backing(from: number): number {
    const { zone } = this;
    const middles = [
      ...zone.studs,
      ...zone.ground.keepOuts.flatMap(({ opening: { x } }) => [x[0] - 19, x[1] + 19]),
    ];
    const misses = (left: number): number => {
      const [low, high] = [left + 12, left + zone.battenWidth - 12];
      return middles.some((middle) => middle + 11 > low && middle - 11 < high) ? 0 : 1;
    };
    return misses(from - zone.battenWidth) + misses(from + this.joint);
  }

  jointCost(from: number, off: boolean): number {
    return this.backing(from) * WEIGHTS.backing + (off ? WEIGHTS.offLine : 0);
  }

  pieceCost(x: Span, y: Span): number {
    const [width, height] = [x[1] - x[0], y[1] - y[0]];
    const notches = this.zone.ground.keepOuts.filter(
      ({ rect }) => touches(rect.x, x) && touches(rect.y, y),
    ).length;
    const fits = this.shapes.some((one) => one.width >= width - NOISE && one.height >= height - NOISE);
    const share = Math.min(width, height) / this.module;
    const { floor, wish } = this.zone.sliver;
    let cost = WEIGHTS.sheet + WEIGHTS.notch * notches + (fits ? 0 : WEIGHTS.oversize);
    if (share < floor) cost += WEIGHTS.sliver * (1 + (floor - share) / floor);
    else if (share < wish) cost += (WEIGHTS.narrow * (wish - share)) / wish;
    return cost + WEIGHTS.even * ((width / this.module) ** 2 + (height / this.module) ** 2);
  }

  /** Every way to stack a column, by all subsets of the level lines and by equal divisions between pinned ones. */
  columnRows(x: Span): readonly Rows[] {
    const key = `${x[0]} ${x[1]}`;
    const known = this.#columns.get(key);
    if (known) return known;
    let ways: Rows[] = [{ rows: [], cost: 0 }];
    for (const part of this.parts(x)) {
      for (const { span, cost } of this.segments(part)) {
        const next = this.segmentRows(x, span);
        ways = ways.flatMap((way) =>
          next.map((more) => ({ rows: [...way.rows, ...more.rows], cost: way.cost + cost + more.cost })),
        );
      }
    }
    this.#columns.set(key, ways);
    return ways;
  }

  /** What openings over the column's whole width leave; over a head a joint goes off. */
  parts(x: Span): Span[] {
    let parts: Span[] = [this.y];
    for (const { rect } of this.zone.ground.keepOuts) {
      if (rect.x[0] > x[0] || rect.x[1] < x[1]) continue;
      parts = parts.flatMap(([low, high]): Span[] => {
        if (!touches([low, high], rect.y)) return [[low, high]];
        return [
          [low, Math.min(high, rect.y[0])],
          [snap(rect.y[1] + this.joint), high],
        ];
      });
    }
    return parts.filter(([low, high]) => high > low);
  }

  segments([low, high]: Span): { span: Span; cost: number }[] {
    const forced = this.lines.filter(({ at, forced: must }) => must && at > low && at + this.joint < high);
    const starts = [low, ...forced.map(({ at }) => snap(at + this.joint))];
    return starts.map((from, i) => ({
      span: [from, forced[i]?.at ?? high] as const,
      cost: i === 0 ? 0 : (forced[i - 1]?.cost ?? 0),
    }));
  }

  segmentRows(x: Span, [low, high]: Span): Rows[] {
    const lines = this.lines.filter(({ at }) => at > low && at + this.joint < high);
    const ways: Rows[] = [];
    for (let set = 0; set < 1 << lines.length; set++) {
      const chosen = lines.filter((_, i) => set & (1 << i));
      const rows = this.cutAt(
        [low, high],
        chosen.map(({ at }) => at),
      );
      if (rows.some(([from, to]) => to <= from)) continue;
      ways.push({ rows, cost: this.cost(x, rows) + chosen.reduce((sum, { cost }) => sum + cost, 0) });
    }
    const wide = this.shapes.filter(({ width }) => width >= x[1] - x[0] - NOISE);
    const tallest = Math.max(...(wide.length > 0 ? wide : this.shapes).map(({ height }) => height));
    const fewest = Math.max(1, Math.ceil((high - low + this.joint) / (tallest + this.joint) - NOISE));
    for (const count of [fewest, fewest + 1]) {
      const pitch = (high - low + this.joint) / count;
      const cuts = Array.from({ length: count - 1 }, (_, i) =>
        snap(snap(low + (i + 1) * pitch) - this.joint),
      );
      if (cuts.some((at) => this.forbidden.y.some((band) => touches(band, [at, at + this.joint])))) continue;
      const rows = this.cutAt([low, high], cuts);
      ways.push({ rows, cost: this.cost(x, rows) + cuts.length * WEIGHTS.offLine });
    }
    return ways;
  }

  cutAt([low, high]: Span, cuts: readonly number[]): Span[] {
    const starts = [low, ...cuts.map((at) => snap(at + this.joint))];
    return starts.map((from, i) => [from, cuts[i] ?? high]);
  }

  cost(x: Span, rows: readonly Span[]): number {
    return rows.reduce((sum, y) => sum + this.pieceCost(x, y), 0);
  }

  /** Columns between two joints: one, or equal ones between joints that show. */
  divisions(span: Span, hard: boolean): Span[][] {
    const length = span[1] - span[0];
    if (length <= 0) return [];
    const fewest = Math.max(1, Math.ceil((length + this.joint) / (this.widest + this.joint) - NOISE));
    const counts = new Set(hard ? [fewest, fewest + 1] : []);
    if (fewest === 1 || this.forbidden.x.length > 0) counts.add(1);
    return [...counts].flatMap((count): Span[][] => {
      const pitch = (length + this.joint) / count;
      const cuts = Array.from({ length: count - 1 }, (_, i) =>
        snap(snap(span[0] + (i + 1) * pitch) - this.joint),
      );
      if (cuts.some((at) => this.forbidden.x.some((band) => touches(band, [at, at + this.joint])))) return [];
      const columns = this.cutAt(span, cuts);
      return columns.some(([from, to]) => to <= from) ? [] : [columns];
    });
  }

  /** The costs of the two cheapest layouts, each column stacked as cheaply as it can be. */
  twoBest(): readonly number[] {
    const found: { total: number; layout: string }[] = [];
    this.walk(
      (x) => Math.min(...this.columnRows(x).map(({ cost }) => cost)),
      (from, off) => this.jointCost(from, off),
      (total, columns) => {
        const layout = columns.join(" ");
        const same = found.find((one) => one.layout === layout);
        if (same) same.total = Math.min(same.total, total);
        else found.push({ total, layout });
        found.sort((a, b) => a.total - b.total).splice(2);
        return found[1]?.total ?? Number.POSITIVE_INFINITY;
      },
    );
    return found.map(({ total }) => total);
  }

  /** The least cost of any layout, `limit` where none costs less. */
  least(limit: number): number {
    let best = limit;
    this.walk(
      (x) => Math.min(...this.columnRows(x).map(({ cost }) => cost)),
      (from, off) => this.jointCost(from, off),
      (total) => {
        best = Math.min(best, total);
        return best;
      },
      limit,
    );
    return best;
  }

  /** The fewest sheets of any layout that fits the stock; `notches` tells whether sheets may be cut round openings. */
  fewestSheets(notches: boolean): number {
    let fewest = Number.POSITIVE_INFINITY;
    const isFine = (x: Span, y: Span): boolean => {
      const cost = this.pieceCost(x, y);
      return cost < WEIGHTS.oversize && (notches || cost < WEIGHTS.notch);
    };
    this.walk(
      (x) => {
        const fine = this.columnRows(x).filter(({ rows }) => rows.every((y) => isFine(x, y)));
        return Math.min(Number.POSITIVE_INFINITY, ...fine.map(({ rows }) => rows.length));
      },
      () => 0,
      (total) => {
        fewest = Math.min(fewest, total);
        return fewest;
      },
    );
    return fewest;
  }

  walk(
    columnCost: (x: Span) => number,
    jointCost: (from: number, off: boolean) => number,
    ended: (total: number, columns: readonly Span[]) => number,
    least = Number.POSITIVE_INFINITY,
  ): void {
    const known = new Map<string, number>();
    const costOf = (x: Span): number => {
      const key = `${x[0]} ${x[1]}`;
      const cost = known.get(key) ?? columnCost(x);
      known.set(key, cost);
      return cost;
    };
    const all = this.candidates();
    let limit = least;
    const go = (from: number, hard: boolean, next: number, total: number, columns: readonly Span[]): void => {
      for (let k = next; k <= all.length; k++) {
        const end = all[k];
        for (const division of this.divisions([from, end?.from ?? this.x[1]], hard && (end?.hard ?? true))) {
          let sum = total;
          for (const [i, x] of division.entries()) {
            sum += costOf(x) + (i > 0 ? jointCost(snap(x[0] - this.joint), false) : 0);
          }
          if (end) sum += jointCost(end.from, end.off);
          // The same layout may be met twice, cheaper the second time, so equal costs are looked at too.
          if (sum > limit + NOISE) continue;
          if (end) go(snap(end.from + this.joint), end.hard, k + 1, sum, [...columns, ...division]);
          else limit = ended(sum, [...columns, ...division]);
        }
        if (end?.pin) return;
      }
    };
    go(this.x[0], true, 0, 0, []);
  }
}

/** The same enumeration where every level joint runs through the zone: one set of lines parts every column. */
export class GridBruteForce extends BruteForce {
  constructor(zone: SheetZone, lines?: BruteForce["lines"]) {
    super(zone);
    if (lines) this.lines = lines;
  }

  override segmentRows(x: Span, span: Span): Rows[] {
    return [{ rows: [span], cost: this.cost(x, [span]) }];
  }

  /** The least cost over all sets of lines whose bands fit the stock, with as few bands as fit or one more. */
  best(): number {
    const tallest = Math.max(...this.shapes.map(({ height }) => height));
    const [low, high] = this.y;
    const fewest = Math.max(1, Math.ceil((high - low + this.joint) / (tallest + this.joint) - NOISE));
    const equal = [fewest, fewest + 1].flatMap((count) => {
      const pitch = (high - low + this.joint) / count;
      return Array.from({ length: count - 1 }, (_, i) => snap(snap(low + (i + 1) * pitch) - this.joint));
    });
    const all = [
      ...this.lines,
      ...equal
        .filter((at) => !this.forbidden.y.some((band) => touches(band, [at, at + this.joint])))
        .filter((at) => !this.lines.some((line) => line.at === at))
        .map((at) => ({ at, cost: WEIGHTS.offLine, forced: false })),
    ].sort((a, b) => a.at - b.at);
    const pinned = all.filter(({ forced }) => forced).length;
    let best = Number.POSITIVE_INFINITY;
    const go = (from: number, next: number, chosen: BruteForce["lines"]): void => {
      if (high > from && high - from <= tallest && !all.slice(next).some(({ forced }) => forced)) {
        const lines = chosen.map((line) => ({ ...line, forced: true }));
        best = new GridBruteForce(this.zone, lines).least(best);
      }
      if (chosen.length === fewest + pinned) return;
      for (const [i, line] of all.entries()) {
        if (i < next) continue;
        if (line.at - from > tallest) return;
        if (line.at > from) go(snap(line.at + this.joint), i + 1, [...chosen, line]);
        if (line.forced) return;
      }
    };
    go(low, 0, []);
    return best;
  }
}
