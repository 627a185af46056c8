/**
 * The same instances given to general-purpose packers of the registry and to a general solver of mixed integer programmes, so that
 * one run shows what a solver of our own is worth.
 *
 * Programmes: bars by flows of arcs (Valério de Carvalho, Annals of Operations Research 86 (1999) 629-659); sheets in levels (Lodi,
 * Martello & Vigo, Journal of Combinatorial Optimization 8 (2004) 363-379), which are cut in two turns of the saw and a third to trim.
 */
import { createRequire } from "node:module";
import loadHighs from "highs";

// Node does not see the exports of the one by name, and takes the other's main file for what it is not.
const load = createRequire(import.meta.url);
const { packer: guillotinePacker } = load("guillotine-packer") as typeof import("guillotine-packer");
const rectangles: string = "maxrects-packer/dist/maxrects-packer.mjs";
const { MaxRectsPacker, PACKING_LOGIC }: typeof import("maxrects-packer") = await import(rectangles);

export type Row = readonly number[];

/** One size of sheet, pieces as rows [width, height, quantity]. */
export interface SheetInstance {
  readonly sheets: readonly Row[];
  readonly items: readonly Row[];
}

/** One length of bar, pieces as rows [length, quantity]. */
export interface BarInstance {
  readonly stock: readonly Row[];
  readonly items: readonly Row[];
}

function each({ items }: SheetInstance): { width: number; height: number }[] {
  return items.flatMap(([width = 0, height = 0, quantity = 1]) =>
    Array.from({ length: quantity }, () => ({ width, height })),
  );
}

type Placed = { x: number; y: number; width: number; height: number };

/** Sheets by the better of both rules of maximal rectangles; its patterns need not be cut right through. */
export function byMaximalRectangles(instance: SheetInstance, turn: boolean): number {
  const [width = 0, height = 0] = instance.sheets[0] ?? [];
  const counts = [PACKING_LOGIC.MAX_AREA, PACKING_LOGIC.MAX_EDGE].map((logic) => {
    const trial = new MaxRectsPacker<Placed>(width, height, 0, {
      smart: false,
      pot: false,
      square: false,
      allowRotation: turn,
      logic,
    });
    trial.addArray(each(instance).map((piece) => ({ ...piece, x: 0, y: 0 })));
    return trial.bins.length;
  });
  return Math.min(...counts);
}

/** Sheets by the best of all rules of a packer of guillotine patterns. */
export function byGuillotineRules(instance: SheetInstance, turn: boolean): number {
  const [binWidth = 0, binHeight = 0] = instance.sheets[0] ?? [];
  const packed = guillotinePacker(
    { binWidth, binHeight, items: each(instance) },
    { kerfSize: 0, allowRotation: turn },
  );
  return packed?.length ?? Number.NaN;
}

export interface Solved {
  /** Undefined where the time did not do for any plan. */
  readonly value: number | undefined;
  readonly proven: boolean;
}

type Solver = Awaited<ReturnType<typeof loadHighs>>;
let solver: Solver | undefined;

async function solve(programme: string, seconds: number): Promise<Solved> {
  solver ??= await loadHighs();
  const { Status, ObjectiveValue } = solver.solve(programme, { time_limit: seconds, output_flag: false });
  const value =
    Number.isFinite(ObjectiveValue) && ObjectiveValue > 0 ? Math.round(ObjectiveValue) : undefined;
  return { value, proven: Status === "Optimal" };
}

/** Arcs run from a length used to a longer one: a piece, or one unit of waste. */
export function barsByProgramme({ stock, items }: BarInstance, seconds: number): Promise<Solved> {
  const [capacity = 0] = stock[0] ?? [];
  const sizes = [...items].sort(([a = 0], [b = 0]) => b - a);
  const reached = new Set([0]);
  const arcs: { from: number; to: number; item: number }[] = [];
  // Longer pieces first: a plan loses nothing by it, and far fewer lengths can come about.
  sizes.forEach(([length = 0, quantity = 1], item) => {
    for (const start of [...reached]) {
      for (let count = 0, at = start; count < quantity && at + length <= capacity; count++, at += length) {
        arcs.push({ from: at, to: at + length, item });
        reached.add(at + length);
      }
    }
  });
  const nodes = [...reached].sort((a, b) => a - b);
  const unique = [...new Map(arcs.map((arc) => [`${arc.from}_${arc.item}`, arc])).values()];
  const waste = nodes.slice(1).map((to, index) => ({ from: nodes[index] ?? 0, to, item: -1 }));
  const last = nodes.at(-1) ?? 0;
  const all = [...unique, ...waste].map((arc, index) => ({ ...arc, name: `a${index}` }));
  const out = new Map<number, string[]>();
  const into = new Map<number, string[]>();
  const add = (to: Map<number, string[]>, key: number, name: string): void => {
    to.set(key, [...(to.get(key) ?? []), name]);
  };
  for (const { from, to, name } of all) {
    add(out, from, name);
    add(into, to, name);
  }
  const rows = nodes.map((node) => {
    const plus = [...(into.get(node) ?? []), ...(node === 0 ? ["z"] : [])];
    const minus = [...(out.get(node) ?? []), ...(node === last ? ["z"] : [])];
    return `n${node}: ${[...plus.map((name) => `+ ${name}`), ...minus.map((name) => `- ${name}`)].join(" ")} = 0`;
  });
  const demands = sizes.map(([, quantity = 1], item) => {
    const names = all.filter((arc) => arc.item === item).map(({ name }) => `+ ${name}`);
    return `d${item}: ${names.join(" ")} >= ${quantity}`;
  });
  return solve(
    `Minimize\nobj: z\nSubject To\n${[...rows, ...demands].join("\n")}\nGenerals\nz ${all.map(({ name }) => name).join(" ")}\nEnd\n`,
    seconds,
  );
}

/** Pieces as they lie, in levels. */
export function levelsByProgramme(instance: SheetInstance, seconds: number): Promise<Solved> {
  const [wide = 0, high = 0] = instance.sheets[0] ?? [];
  const pieces = each(instance).sort((a, b) => b.height - a.height || b.width - a.width);
  const later = (at: number) => pieces.map((_, other) => other).filter((other) => other > at);
  const earlier = (at: number) => pieces.map((_, other) => other).filter((other) => other < at);
  const sum = (terms: readonly string[]): string => terms.join(" + ") || "0 q0";
  const rows = pieces.flatMap(({ width, height }, i) => [
    sum([`y${i}`, ...earlier(i).map((k) => `x${k}_${i}`)]).concat(" = 1"),
    sum(later(i).map((j) => `${pieces[j]?.width} x${i}_${j}`)).concat(` - ${wide - width} y${i} <= 0`),
    `${sum([`q${i}`, ...earlier(i).map((k) => `z${k}_${i}`)])} - y${i} = 0`,
    sum(later(i).map((j) => `${pieces[j]?.height} z${i}_${j}`)).concat(` - ${high - height} q${i} <= 0`),
  ]);
  const names = pieces.flatMap((_, i) => [
    `y${i}`,
    `q${i}`,
    ...later(i).flatMap((j) => [`x${i}_${j}`, `z${i}_${j}`]),
  ]);
  return solve(
    `Minimize\nobj: ${sum(pieces.map((_, i) => `q${i}`))}\nSubject To\n${rows.join("\n")}\nBinaries\n${names.join(" ")}\nEnd\n`,
    seconds,
  );
}
