/**
 * A plan for one kind of sheet: first the best of a table of packing rules, then a seeded search that empties a few
 * sheets and packs their pieces anew, then each sheet's pieces on the cheapest stock that takes them all.
 */
import type { Fit, Item, Opening, PackedSheet, Packing, Panel, Rules, Split } from "./guillotine.ts";
import { pack } from "./guillotine.ts";
import { pick, seeded } from "./random.ts";

export interface SheetSearch {
  readonly items: readonly Item[];
  readonly panels: readonly Panel[];
  /** By stock number. */
  readonly available: readonly number[];
  readonly stages: number;
  /** Repacking steps after the first plan. */
  readonly budget: number;
  readonly seed: number;
  /** The search stops when the cost has come down to this. */
  readonly bound: number;
}

interface Found extends Packing {
  readonly iterations: number;
}

const fits: readonly Fit[] = ["area", "short side", "long side"];
const splits: readonly Split[] = ["large area", "short rest", "x", "y", "small area", "long rest"];
const openings: readonly Opening[] = ["cheap by area", "large", "cheap"];

const orders: readonly ((item: Item) => number)[] = [
  (item) => item.width * item.height,
  (item) => Math.max(item.width, item.height),
  (item) => item.height,
  (item) => item.width,
  (item) => Math.min(item.width, item.height),
];

/** Twelve passes and more are made however many the pieces; the whole table where they are no more than about this / 16. */
const fewPieces = 5000;

export function searchSheets(search: SheetSearch): Found {
  if (search.items.length === 0) return { sheets: [], left: [], iterations: 0 };
  const first = firstPlan(search);
  const better = repack(search, first);
  return { ...downsize(search, better), iterations: better.iterations };
}

/** The table of rules, cut short for jobs so large that a pass over all pieces takes long. */
function firstPlan(search: SheetSearch): Found {
  const most = Math.max(12, Math.floor(fewPieces ** 2 / search.items.length ** 2));
  const lists = orders.map((order) => sorted(search.items, order));
  let best: Packing = { sheets: [], left: [...search.items] };
  let iterations = 0;
  for (const rules of ruleTable(search.panels.length > 1)) {
    for (const items of lists) {
      const packing = pack({ ...search, items, rules });
      iterations += 1;
      if (isBetter(packing, best)) best = packing;
      if (iterations >= most || isDone(best, search)) return { ...best, iterations };
    }
  }
  return { ...best, iterations };
}

function ruleTable(severalSizes: boolean): Rules[] {
  const usable = severalSizes ? openings : openings.slice(0, 1);
  return fits.flatMap((fit) => splits.flatMap((split) => usable.map((opening) => ({ fit, split, opening }))));
}

function repack(search: SheetSearch, start: Found): Found {
  const random = seeded(search.seed);
  let best: Packing = start;
  let steps = 0;
  while (steps < search.budget && !isDone(best, search) && best.sheets.length + best.left.length > 1) {
    steps += 1;
    const taken = chooseSheets(best, random);
    const kept = best.sheets.filter((_, index) => !taken.has(index));
    const loose = [...best.sheets.filter((_, index) => taken.has(index)).flatMap((sheet) => sheet.items)];
    const again = pack({
      items: shaken([...loose, ...best.left], random),
      panels: search.panels,
      available: stockAfter(search.available, kept),
      rules: anyRules(random),
      stages: search.stages,
    });
    const candidate = { sheets: [...kept, ...again.sheets], left: again.left };
    if (!isBetter(best, candidate)) best = candidate;
  }
  return { ...best, iterations: start.iterations + steps };
}

/** Two to four sheets to empty; the emptiest is among them every other time. */
function chooseSheets(plan: Packing, random: () => number): Set<number> {
  const taken = new Set<number>();
  const wanted = Math.min(plan.sheets.length, 2 + pick(random, 3));
  if (random() < 0.5) taken.add(emptiest(plan.sheets));
  while (taken.size < wanted) taken.add(pick(random, plan.sheets.length));
  return taken;
}

function emptiest(sheets: readonly PackedSheet[]): number {
  let lowest = 0;
  sheets.forEach((sheet, index) => {
    const other = sheets[lowest];
    if (other !== undefined && fill(sheet) < fill(other)) lowest = index;
  });
  return lowest;
}

function anyRules(random: () => number): Rules {
  return {
    fit: fits[pick(random, fits.length)] ?? "area",
    split: splits[pick(random, splits.length)] ?? "large area",
    opening: openings[pick(random, openings.length)] ?? "cheap by area",
  };
}

/** Items by a random order rule, each key shaken by up to a fifth. */
function shaken(items: readonly Item[], random: () => number): Item[] {
  const order = orders[pick(random, orders.length)] ?? itemArea;
  const keys = new Map(items.map((item) => [item, order(item) * (0.9 + 0.2 * random())]));
  return sorted(items, (item) => keys.get(item) ?? 0);
}

/** Largest key first; equal keys by area, then in the order of the request, so that no tie is left to the engine. */
function sorted(items: readonly Item[], key: (item: Item) => number): Item[] {
  return [...items].sort((a, b) => key(b) - key(a) || itemArea(b) - itemArea(a) || a.demand - b.demand);
}

function stockAfter(available: readonly number[], sheets: readonly PackedSheet[]): number[] {
  const left = [...available];
  for (const sheet of sheets) left[sheet.panel.stock] = (left[sheet.panel.stock] ?? 0) - 1;
  return left;
}

/** Moves the pieces of each sheet, dearest first, to the cheapest stock left that takes them all. */
function downsize(search: SheetSearch, plan: Packing): Packing {
  let sheets = [...plan.sheets];
  for (const sheet of [...sheets].sort((a, b) => b.panel.cost - a.panel.cost)) {
    const others = sheets.filter((other) => other !== sheet);
    const available = stockAfter(search.available, others);
    const cheaper = search.panels
      .filter((panel) => panel.cost < sheet.panel.cost && (available[panel.stock] ?? 0) > 0)
      .sort((a, b) => a.cost - b.cost || a.stock - b.stock);
    const moved = cheaper
      .map((panel) => onOneSheet(sheet.items, panel, search))
      .find((one) => one !== undefined);
    if (moved !== undefined) sheets = [...others, moved];
  }
  return { sheets, left: plan.left };
}

function onOneSheet(items: readonly Item[], panel: Panel, search: SheetSearch): PackedSheet | undefined {
  const area = items.reduce((sum, item) => sum + itemArea(item), 0);
  if (area > panel.width * panel.height) return undefined;
  const available = search.available.map((_, stock) => (stock === panel.stock ? 1 : 0));
  for (const order of orders) {
    for (const split of splits) {
      const rules = { fit: "area", split, opening: "cheap" } as const;
      const packing = pack({
        items: sorted(items, order),
        panels: [panel],
        available,
        rules,
        stages: search.stages,
      });
      if (packing.left.length === 0) return packing.sheets[0];
    }
  }
  return undefined;
}

function isDone(plan: Packing, search: SheetSearch): boolean {
  return plan.left.length === 0 && costOf(plan) <= search.bound + 1e-6;
}

/** Less left out, then cheaper, then the same pieces drawn together on fewer sheets, which frees the others. */
function isBetter(a: Packing, b: Packing): boolean {
  const left = areaLeft(a) - areaLeft(b);
  if (left !== 0) return left < 0;
  const cost = costOf(a) - costOf(b);
  if (Math.abs(cost) > 1e-6) return cost < 0;
  return concentration(a) > concentration(b) + 1e-9;
}

function areaLeft(plan: Packing): number {
  return plan.left.reduce((sum, item) => sum + itemArea(item), 0);
}

function costOf(plan: Packing): number {
  return plan.sheets.reduce((sum, sheet) => sum + sheet.panel.cost, 0);
}

function concentration(plan: Packing): number {
  return plan.sheets.reduce((sum, sheet) => sum + fill(sheet) ** 2, 0);
}

function fill(sheet: PackedSheet): number {
  const used = sheet.items.reduce((sum, item) => sum + itemArea(item), 0);
  return used / (sheet.panel.width * sheet.panel.height);
}

function itemArea(item: Item): number {
  return item.width * item.height;
}
