/**
 * One packing pass for sheets: pieces in a given order, each into the leftover region that a rule likes best, each
 * region split in two by straight cuts right through it. Pieces come grown by the kerf and sheets by the kerf less
 * both trims, so that the blade needs no thought here.
 */

/** A sheet size to pack into, in steps, grown. */
export interface Panel {
  readonly stock: number;
  readonly width: number;
  readonly height: number;
  readonly cost: number;
  readonly turnable: boolean;
}

/** A piece to pack, in steps, grown. */
export interface Item {
  readonly demand: number;
  readonly width: number;
  readonly height: number;
  readonly turnable: boolean;
}

/** A region of a sheet: cut in two, or holding a piece, or left over. `cut` is the direction the saw runs in. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  cut?: "x" | "y";
  children?: readonly Region[];
  item?: Item;
  turned?: boolean;
}

export interface PackedSheet {
  readonly panel: Panel;
  readonly root: Region;
  readonly items: Item[];
}

export type Fit = "area" | "short side" | "long side";
export type Split = "short rest" | "long rest" | "small area" | "large area" | "x" | "y";
export type Opening = "cheap by area" | "cheap" | "large";

export interface Rules {
  readonly fit: Fit;
  readonly split: Split;
  readonly opening: Opening;
}

export interface PackJob {
  readonly items: readonly Item[];
  readonly panels: readonly Panel[];
  /** Sheets left of each stock, by stock number. */
  readonly available: readonly number[];
  readonly rules: Rules;
  /** The saw turns at most this often. */
  readonly stages: number;
}

export interface Packing {
  readonly sheets: PackedSheet[];
  readonly left: Item[];
}

interface Leftover {
  readonly region: Region;
  readonly sheet: PackedSheet;
  readonly direction: "x" | "y" | undefined;
  readonly turns: number;
}

interface Way {
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
}

interface Choice {
  readonly index: number;
  readonly way: Way;
  readonly first: "x" | "y";
  readonly score: number;
}

/** Packs the items in their order; what finds no place is `left`. */
export function pack(job: PackJob): Packing {
  const smallest = Math.min(...job.items.map((item) => Math.min(item.width, item.height)));
  const available = [...job.available];
  const sheets: PackedSheet[] = [];
  const leftovers: Leftover[] = [];
  const left: Item[] = [];
  for (const item of job.items) {
    let choice = bestPlace(item, leftovers, job);
    if (choice === undefined) {
      const opened = openSheet(item, available, job);
      if (opened === undefined) {
        left.push(item);
        continue;
      }
      sheets.push(opened.sheet);
      leftovers.push(opened);
      choice = bestPlace(item, [opened], job);
      if (choice === undefined) continue;
      choice = { ...choice, index: leftovers.length - 1 };
    }
    const target = leftovers[choice.index];
    if (target === undefined) continue;
    const rests = cutOut(item, choice, target).filter(
      (rest) => rest.region.width >= smallest && rest.region.height >= smallest,
    );
    leftovers.splice(choice.index, 1, ...rests);
    target.sheet.items.push(item);
  }
  return { sheets, left };
}

/** The ways an item can lie on a panel. */
function ways(item: Item, panel: Panel): Way[] {
  const straight = { turned: false, width: item.width, height: item.height };
  if (!(item.turnable && panel.turnable) || item.width === item.height) return [straight];
  return [straight, { turned: true, width: item.height, height: item.width }];
}

function bestPlace(item: Item, leftovers: readonly Leftover[], job: PackJob): Choice | undefined {
  let best: Choice | undefined;
  for (let index = 0; index < leftovers.length; index++) {
    const leftover = leftovers[index];
    if (leftover === undefined) continue;
    for (const way of ways(item, leftover.sheet.panel)) {
      const spareX = leftover.region.width - way.width;
      const spareY = leftover.region.height - way.height;
      if (spareX < 0 || spareY < 0) continue;
      const score = scoreOf({ leftover, way, spareX, spareY, fit: job.rules.fit });
      if (best !== undefined && score >= best.score) continue;
      const first = firstCut(leftover, way, job);
      if (first !== undefined) best = { index, way, first, score };
    }
  }
  return best;
}

function scoreOf(at: { leftover: Leftover; way: Way; spareX: number; spareY: number; fit: Fit }): number {
  if (at.fit === "short side") return Math.min(at.spareX, at.spareY);
  if (at.fit === "long side") return Math.max(at.spareX, at.spareY);
  return at.leftover.region.width * at.leftover.region.height - at.way.width * at.way.height;
}

/** Turns of the saw once a cut in `direction` is made in a region. */
function turnsAfter(at: { turns: number; direction: "x" | "y" | undefined }, direction: "x" | "y"): number {
  return at.turns + (at.direction === direction ? 0 : 1);
}

/** Which cut frees the piece first: the rule's own, the other where only that keeps within the turns allowed. */
function firstCut(leftover: Leftover, way: Way, job: PackJob): "x" | "y" | undefined {
  const wished = wishedCut(leftover.region, way, job.rules.split);
  const other = wished === "x" ? "y" : "x";
  for (const first of [wished, other] as const) {
    if (turnsToFree(leftover, way, first) <= job.stages) return first;
  }
  return undefined;
}

function turnsToFree(leftover: Leftover, way: Way, first: "x" | "y"): number {
  let at = { turns: leftover.turns, direction: leftover.direction };
  for (const direction of [first, first === "x" ? "y" : "x"] as const) {
    const needed =
      direction === "y" ? leftover.region.width > way.width : leftover.region.height > way.height;
    if (needed) at = { turns: turnsAfter(at, direction), direction };
  }
  return at.turns;
}

function wishedCut(region: Region, way: Way, split: Split): "x" | "y" {
  if (split === "x" || split === "y") return split;
  const spareX = region.width - way.width;
  const spareY = region.height - way.height;
  if (split === "short rest") return spareX <= spareY ? "x" : "y";
  if (split === "long rest") return spareX <= spareY ? "y" : "x";
  // A first cut along y leaves the whole rest beside the piece as one region, along x the whole rest above it.
  const beside = spareX * region.height;
  const above = spareY * region.width;
  if (split === "large area") return beside >= above ? "y" : "x";
  return beside >= above ? "x" : "y";
}

function cutOut(item: Item, choice: Choice, target: Leftover): Leftover[] {
  const rests: Leftover[] = [];
  let region = target.region;
  let at = { turns: target.turns, direction: target.direction };
  for (const direction of [choice.first, choice.first === "x" ? "y" : "x"] as const) {
    const parts =
      direction === "y" ? partAlongY(region, choice.way.width) : partAlongX(region, choice.way.height);
    if (parts === undefined) continue;
    at = { turns: turnsAfter(at, direction), direction };
    region.cut = direction;
    region.children = parts;
    rests.push({ region: parts[1], sheet: target.sheet, direction: at.direction, turns: at.turns });
    region = parts[0];
  }
  region.item = item;
  region.turned = choice.way.turned;
  return rests;
}

function partAlongY(region: Region, width: number): [Region, Region] | undefined {
  if (region.width === width) return undefined;
  const { x, y, height } = region;
  return [
    { x, y, width, height },
    { x: x + width, y, width: region.width - width, height },
  ];
}

function partAlongX(region: Region, height: number): [Region, Region] | undefined {
  if (region.height === height) return undefined;
  const { x, y, width } = region;
  return [
    { x, y, width, height },
    { x, y: y + height, width, height: region.height - height },
  ];
}

function openSheet(item: Item, available: number[], job: PackJob): Leftover | undefined {
  let best: Panel | undefined;
  for (const panel of job.panels) {
    if ((available[panel.stock] ?? 0) <= 0 || !fitsAlone(item, panel, job.stages)) continue;
    if (best === undefined || openingKey(panel, job.rules.opening) < openingKey(best, job.rules.opening)) {
      best = panel;
    }
  }
  if (best === undefined) return undefined;
  available[best.stock] = (available[best.stock] ?? 0) - 1;
  return wholeSheet(best);
}

function wholeSheet(panel: Panel): Leftover {
  const root: Region = { x: 0, y: 0, width: panel.width, height: panel.height };
  return { region: root, sheet: { panel, root, items: [] }, direction: undefined, turns: 0 };
}

function openingKey(panel: Panel, opening: Opening): number {
  const area = panel.width * panel.height;
  if (opening === "large") return -area;
  return opening === "cheap" ? panel.cost : panel.cost / area;
}

/** Can the item be cut from the panel when nothing else is? */
export function fitsAlone(item: Item, panel: Panel, stages: number): boolean {
  const whole = wholeSheet(panel);
  return ways(item, panel).some(
    (way) =>
      way.width <= panel.width &&
      way.height <= panel.height &&
      Math.min(turnsToFree(whole, way, "x"), turnsToFree(whole, way, "y")) <= stages,
  );
}
