/**
 * Ruin and recreate on sheets: some regions become leftovers again, and the pieces that came loose are laid anew. Goal,
 * ruin, order of laying and acceptance are those of Gardeyn & Wauters, European Journal of Operational Research (2022),
 * "A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing problem with guillotine constraints";
 * acceptance is late (Burke & Bykov, European Journal of Operational Research 258 (2017) 70-78). Our own: the worth of a
 * leftover is the square of its area, and every other ruin keeps to a few sheets.
 */
import { pick } from "./random.ts";
import type { Layout, Panel, PieceType, Region, SheetJob } from "./sheet-nodes.ts";
import { areaOn, clear, costOf, filledRegions, fitsAlone, lay, onPanel, Sheet } from "./sheet-nodes.ts";
import { OpenPlaces, type Place } from "./sheet-places.ts";
import { highest, isWorse, type Pursuit, type Standing, standingOf } from "./sheet-pursuit.ts";

/** A step clears this many regions on average. */
const MEAN_RUIN = 8;
/** So often all of them lie on a few sheets, at least two and at most so many. */
const NEAR = 1 / 2;
const MOST_NEAR = 6;
/** Steps from one breath to the next. */
const BREATH = 64;
/** A place is passed over this often, so that the best one does not always win. */
const BLINK = 0.03;

/** Which of the panels, by place, to open for a piece. */
export type Opening = (type: PieceType, panels: readonly number[]) => number | undefined;

export class LayoutSearch {
  private readonly job: SheetJob;
  private readonly random: () => number;
  private sheets: Sheet[];
  private waiting: number[];
  private step: number;
  /** Panels by what they cost for their size. */
  private readonly ranking: readonly number[];
  private readonly places: OpenPlaces;
  private readonly cheapest: number;
  /** Room for lists of regions. */
  private readonly regions: Region[] = [];

  constructor(job: SheetJob, random: () => number, start?: Layout) {
    this.job = job;
    this.random = random;
    this.sheets = [...(start?.sheets ?? [])];
    // Above all owners, so that no sheet of the start is taken for the search's own.
    this.step = this.sheets.reduce((most, { owner }) => Math.max(most, owner), 0) + 1;
    this.waiting = [...(start?.waiting ?? job.types.map(({ demands }) => demands.length))];
    this.places = new OpenPlaces(job);
    this.cheapest = job.panels.reduce((least, { cost }) => Math.min(least, cost), Number.POSITIVE_INFINITY);
    const area = ({ width, height }: Panel) => width * height;
    this.ranking = job.panels
      .map((panel, place) => ({ panel, place }))
      .sort(
        (a, b) =>
          a.panel.cost / area(a.panel) - b.panel.cost / area(b.panel) || area(b.panel) - area(a.panel),
      )
      .map(({ place }) => place);
  }

  layout(): Layout {
    return { sheets: [...this.sheets], waiting: [...this.waiting] };
  }

  /**
   * Lays what waits, opening sheets as long as all cost no more than `limit`: the piece with fewest places first, or, where
   * ranks are given, types by their rank and without chance. Ends as soon as more area than `most` is left waiting, with what is
   * laid by then; false where it does.
   */
  recreate(
    limit: number,
    open: Opening,
    { rank, most = Number.POSITIVE_INFINITY }: { rank?: readonly number[] | undefined; most?: number } = {},
  ): boolean {
    let left = 0;
    const blink = rank === undefined ? BLINK : 0;
    const { types } = this.job;
    let cost = costOf(this.sheets);
    const waiting = types.map((_, index) => index).filter((index) => (this.waiting[index] ?? 0) > 0);
    this.places.find(waiting, this.sheets);
    while (waiting.length > 0) {
      const at = rank === undefined ? this.places.hardest(waiting) : highest(waiting, rank);
      const index = waiting[at] ?? 0;
      const type = types[index];
      if (type === undefined) break;
      let found = this.places.best(this.random, index, this.sheets, { blink });
      if (found === undefined) {
        let panels = this.affordable(type, limit - cost);
        if (panels.length === 0 && this.job.panels.length > 1 && this.downsize()) {
          cost = costOf(this.sheets);
          panels = this.affordable(type, limit - cost);
          this.places.find(waiting, this.sheets);
        }
        const chosen = open(type, panels);
        const panel = chosen === undefined ? undefined : this.job.panels[chosen];
        if (panel === undefined) {
          left += type.width * type.height * (this.waiting[index] ?? 0);
          if (left > most) return false;
          waiting.splice(at, 1);
          continue;
        }
        const sheet = new Sheet(panel, this.step);
        this.sheets.push(sheet);
        cost += panel.cost;
        this.places.add(waiting, this.sheets.length - 1, sheet, sheet.root);
        found = this.places.best(this.random, index, this.sheets, { blink: 0, onlyNewest: true });
        if (found === undefined) break;
      }
      this.layAt(found, waiting);
      this.waiting[index] = (this.waiting[index] ?? 0) - 1;
      if (this.waiting[index] === 0) waiting.splice(waiting.indexOf(index), 1);
    }
    return true;
  }

  /**
   * Looks for a layout of all pieces at no more than `limit`; if it is reached, it is the search's own. Stops for breath now and
   * then, giving the steps made so far.
   */
  *pursue(goal: Pursuit): Generator<number, { reached: boolean; steps: number }> {
    this.discard(goal.limit);
    this.recreate(goal.limit, this.anyPanel);
    let now = standingOf(this.sheets, this.waiting, this.job.types);
    let best = now;
    let bestLayout = this.layout();
    let history: Standing[] = Array.from({ length: goal.history }, () => now);
    let at = 0;
    let patience = goal.stagnation;
    let idle = 0;
    let steps = 0;
    while (now.waiting > 0 && steps < goal.steps) {
      if (idle >= patience) {
        if (!goal.patient) break;
        history = Array.from({ length: history.length * 2 }, () => now);
        at = 0;
        patience *= 1.6;
        idle = 0;
      }
      if (steps % BREATH === BREATH - 1) yield steps;
      steps += 1;
      this.step += 1;
      const before = { sheets: this.sheets.slice(), waiting: this.waiting.slice() };
      this.ruin(goal.limit);
      const late = history[at] ?? now;
      const most = Math.max(late.waiting, now.waiting);
      const then = this.recreate(goal.limit, this.anyPanel, { most })
        ? standingOf(this.sheets, this.waiting, this.job.types)
        : undefined;
      idle += 1;
      if (then === undefined || (isWorse(then, late) && isWorse(then, now))) {
        this.sheets = before.sheets;
        this.waiting = before.waiting;
        continue;
      }
      now = then;
      history[at] = then;
      at = (at + 1) % history.length;
      if (isWorse(best, now)) {
        best = now;
        bestLayout = this.layout();
        idle = 0;
      }
    }
    const reached = now.waiting === 0;
    if (reached) this.downsize();
    else {
      this.sheets = [...bestLayout.sheets];
      this.waiting = [...bestLayout.waiting];
    }
    return { reached, steps };
  }

  /** Changes sheets for cheaper ones where only leftover falls away. True where it changed any. */
  downsize(): boolean {
    const used = this.used();
    let changed = false;
    this.sheets.forEach((sheet, index) => {
      const own = this.job.panels.indexOf(sheet.panel);
      let best: Sheet | undefined;
      this.job.panels.forEach((panel, place) => {
        if (
          panel.cost >= (best ?? sheet).panel.cost ||
          (used[place] ?? 0) >= (this.job.available[place] ?? 0)
        )
          return;
        if (sheet.panel.turnable !== panel.turnable) return;
        best = onPanel(sheet, panel, this.step) ?? best;
      });
      if (best === undefined) return;
      const place = this.job.panels.indexOf(best.panel);
      used[own] = (used[own] ?? 0) - 1;
      used[place] = (used[place] ?? 0) + 1;
      this.sheets[index] = best;
      changed = true;
    });
    return changed;
  }

  /** Every other time any panel, else the cheapest for its size, the largest of equals. */
  private readonly anyPanel = (_: PieceType, panels: readonly number[]): number | undefined =>
    this.random() < 0.5
      ? panels[pick(this.random, panels.length)]
      : this.ranking.find((place) => panels.includes(place));

  /** Puts aside the sheets that cost most for what lies on them until the rest costs no more than `limit`. */
  private discard(limit: number): void {
    let cost = costOf(this.sheets);
    const fill = new Map(
      this.sheets.map((sheet) => [sheet, areaOn(sheet) / Math.max(1e-9, sheet.panel.cost)]),
    );
    const byFill = [...this.sheets].sort((a, b) => (fill.get(a) ?? 0) - (fill.get(b) ?? 0));
    for (const sheet of byFill) {
      if (cost <= limit) break;
      cost -= sheet.panel.cost;
      this.clearRegion(this.sheets.indexOf(sheet), false);
    }
  }

  /** Clears regions anywhere, or all on a few sheets, so that room comes together; then anywhere, until the rest costs no more than `limit`. */
  private ruin(limit: number): void {
    const wanted = 1 + pick(this.random, 2 * MEAN_RUIN - 1);
    const few = this.random() < NEAR ? this.someSheets(2 + pick(this.random, MOST_NEAR - 1)) : undefined;
    for (let count = 0; count < wanted; count++) {
      const from = few ?? this.sheets;
      if (from.length === 0) break;
      const at = pick(this.random, from.length);
      const index = few === undefined ? at : this.sheets.indexOf(few[at] as Sheet);
      const cleared = this.clearRegion(index, true);
      if (few === undefined) continue;
      if (cleared.root.isLeftover) few.splice(at, 1);
      else few[at] = cleared;
    }
    while (this.sheets.length > 0 && costOf(this.sheets) > limit) {
      this.clearRegion(pick(this.random, this.sheets.length), true);
    }
  }

  /** So many of the sheets, or fewer where one is met twice. */
  private someSheets(count: number): Sheet[] {
    const some = new Set<Sheet>();
    for (let one = 0; one < count && this.sheets.length > 0; one++) {
      some.add(this.sheets[pick(this.random, this.sheets.length)] as Sheet);
    }
    return [...some];
  }

  /** Clears a filled region of a sheet, any one of them, or the whole sheet; an empty sheet is put back. Gives it as it is then. */
  private clearRegion(index: number, onlyOne: boolean): Sheet {
    const sheet = this.own(index);
    let region = sheet.root;
    if (onlyOne) {
      this.regions.length = 0;
      const { length } = filledRegions(sheet.root, this.regions);
      if (length > 0) region = this.regions[pick(this.random, length)] as Region;
    }
    sheet.worth = -1;
    clear(sheet, region, (piece) => {
      this.waiting[piece] = (this.waiting[piece] ?? 0) + 1;
    });
    if (sheet.root.isLeftover) this.sheets.splice(index, 1);
    return sheet;
  }

  /** The sheet, copied where it may still be needed as it was. */
  private own(index: number): Sheet {
    const sheet = this.sheets[index];
    if (sheet === undefined) throw new RangeError("no such sheet");
    if (sheet.owner === this.step) return sheet;
    const copy = new Sheet(sheet.panel, this.step, sheet);
    this.sheets[index] = copy;
    return copy;
  }

  private layAt({ at, way }: Place, waiting: readonly number[]): void {
    const place = this.places.sheetOf(at);
    const before = this.sheets[place];
    const own = this.own(place);
    own.worth = -1;
    const region = this.places.take(waiting, at, { own, isCopy: own !== before });
    const first = own.leftovers.length - 1;
    lay(own, own.leftovers.indexOf(region), way);
    for (let rest = first; rest < own.leftovers.length; rest++) {
      this.places.add(waiting, place, own, own.leftovers[rest] as Region);
    }
  }

  /** Sheets taken of each panel, by the panel's place. */
  private used(): number[] {
    const used = this.job.panels.map(() => 0);
    for (const { panel } of this.sheets) {
      const place = this.job.panels.indexOf(panel);
      used[place] = (used[place] ?? 0) + 1;
    }
    return used;
  }

  private affordable(type: PieceType, money: number): number[] {
    if (this.cheapest > money + 1e-9) return [];
    const used = this.used();
    return this.job.panels.flatMap((panel, index) =>
      panel.cost <= money + 1e-9 &&
      (used[index] ?? 0) < (this.job.available[index] ?? 0) &&
      fitsAlone(type, panel, this.job)
        ? [index]
        : [],
    );
  }
}
