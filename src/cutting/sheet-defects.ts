/**
 * Sheets with defects: straight cuts right through take each defect out first, and what is left round it is cut from like so many
 * sheets. A sheet that anything is cut from is paid for whole.
 */
import { boundSheets, compare } from "./bounds.ts";
import { sheetCost, sheetPlanCost } from "./cost.ts";
import type {
  CutNode,
  CutResult,
  CutSheet,
  Rectangle,
  SheetPlan,
  SheetRequest,
  SheetStock,
} from "./model.ts";
import { usualOffcut } from "./sheet-tree.ts";

/** Large parts are worth more than small ones of the same area together. */
const PART_POWER = 1.5;
/** Both orders of cutting are looked into for so many defects together; of more, cuts go across the longer side. */
const MOST_TRIED = 2;

/** A part is named by its sheet and its own place among the sheet's clear parts. */
interface Split {
  readonly stock: SheetStock;
  readonly tree: CutNode;
  readonly parts: ReadonlyMap<string, Rectangle>;
}

export interface AroundDefects {
  /** The same request of clear sheets. */
  readonly request: SheetRequest;
  /** A plan for it on the sheets as they are, with its cost, and a bound that passes over defects. */
  readonly whole: (result: CutResult<SheetPlan>) => CutResult<SheetPlan>;
}

export function aroundDefects(request: SheetRequest): AroundDefects {
  const splits = request.stock.map((stock) =>
    (stock.defects ?? []).length > 0 ? splitOf(stock, request.kerf) : undefined,
  );
  const stock = request.stock.flatMap((one, at) => {
    const split = splits[at];
    return split ? partStock(split) : [one];
  });
  return {
    request: { ...request, stock },
    whole: (result) => wholeOf(request, splits, result),
  };
}

function splitOf(stock: SheetStock, kerf: number): Split {
  const trim = stock.trim ?? 0;
  const usable = { x: trim, y: trim, width: stock.width - 2 * trim, height: stock.height - 2 * trim };
  const { tree } = cutAround(usable, stock.defects ?? [], kerf);
  const parts = new Map<string, Rectangle>();
  const name = (node: CutNode): CutNode => {
    if (node.children) return { ...node, children: node.children.map(name) };
    if (!isClear(node)) return bare(node);
    const id = `${stock.id}/${parts.size + 1}`;
    parts.set(id, boxOf(node));
    return { ...bare(node), piece: id };
  };
  return { stock, tree: name(tree), parts };
}

/** Clear leaves are marked as offcuts while the sheet is split; what holds a defect is not. */
function isClear(node: CutNode): boolean {
  return node.offcut === true;
}

function boxOf({ x, y, width, height }: Rectangle): Rectangle {
  return { x, y, width, height };
}

function bare(node: CutNode): CutNode {
  return boxOf(node);
}

interface Around {
  readonly tree: CutNode;
  readonly worth: number;
}

/** The cuts that take the defects out of a box, and what the clear parts are worth. */
function cutAround(box: Rectangle, defects: readonly Rectangle[], kerf: number): Around {
  const within = defects.filter((one) => overlap(one, box));
  const [defect] = within;
  if (defect === undefined) {
    return { tree: { ...box, offcut: true }, worth: (box.width * box.height) ** PART_POWER };
  }
  const ways = (["x", "y"] as const).map((axis) => () => partedBy(box, defect, { axis, within, kerf }));
  const tried = within.length <= MOST_TRIED ? ways : ways.slice(box.width >= box.height ? 0 : 1).slice(0, 1);
  return tried.map((way) => way()).reduce((best, one) => (one.worth > best.worth ? one : best));
}

interface Parting {
  readonly axis: "x" | "y";
  readonly within: readonly Rectangle[];
  readonly kerf: number;
}

/** The next cut beside the defect, along the given axis while there is one; a box that the defect fills is waste. */
function partedBy(box: Rectangle, defect: Rectangle, { axis, within, kerf }: Parting): Around {
  for (const along of [axis, axis === "x" ? "y" : "x"] as const) {
    const [start, end] = spanOf(box, along);
    const [from, to] = spanOf(defect, along);
    // Behind the defect the blade goes into it where it is wide enough.
    const behind = to - kerf > start ? to - kerf : to;
    const at = from > start ? from : to < end ? behind : undefined;
    if (at !== undefined) return cutAt(box, { axis: along, at, within, kerf });
  }
  return { tree: boxOf(box), worth: 0 };
}

function cutAt(box: Rectangle, { axis, at, within, kerf }: Parting & { readonly at: number }): Around {
  const [, end] = spanOf(box, axis);
  const first = cutAround(between(box, axis, spanOf(box, axis)[0], at), within, kerf);
  const rest = at + kerf < end ? cutAround(between(box, axis, at + kerf, end), within, kerf) : undefined;
  return {
    tree: {
      ...boxOf(box),
      cut: { along: axis === "x" ? "y" : "x", at },
      children: [first.tree, ...(rest ? [rest.tree] : [])],
    },
    worth: first.worth + (rest?.worth ?? 0),
  };
}

function spanOf(box: Rectangle, axis: "x" | "y"): [number, number] {
  return axis === "x" ? [box.x, box.x + box.width] : [box.y, box.y + box.height];
}

function between(box: Rectangle, axis: "x" | "y", from: number, to: number): Rectangle {
  return axis === "x" ? { ...box, x: from, width: to - from } : { ...box, y: from, height: to - from };
}

function overlap(a: Rectangle, b: Rectangle): boolean {
  return (["x", "y"] as const).every((axis) => {
    const [from, to] = spanOf(a, axis);
    const [start, end] = spanOf(b, axis);
    return from < end && to > start;
  });
}

/** Parts share the cost of their sheet by area. */
function partStock({ stock, parts }: Split): SheetStock[] {
  const { trim: _, defects: __, ...same } = stock;
  const area = [...parts.values()].reduce((sum, { width, height }) => sum + width * height, 0);
  return [...parts].map(([id, { width, height }]) => ({
    ...same,
    id,
    width,
    height,
    count: Math.min(1, stock.count ?? 1),
    cost: (sheetCost(stock) * width * height) / area,
  }));
}

function wholeOf(
  request: SheetRequest,
  splits: readonly (Split | undefined)[],
  result: CutResult<SheetPlan>,
): CutResult<SheetPlan> {
  const { sheets, unplaced } = result.plan;
  const joined = request.stock.flatMap((stock, at): CutSheet[] => {
    const split = splits[at];
    if (split === undefined) return sheets.filter(({ stockId }) => stockId === stock.id);
    const used = sheets.filter(({ stockId }) => split.parts.has(stockId));
    return used.length === 0 ? [] : [joinedSheet(split, used, request.keepOffcutFrom ?? usualOffcut)];
  });
  const plan = { sheets: joined, unplaced };
  const cost = sheetPlanCost(plan, request.stock);
  const out = new Set(unplaced.map(({ demandId }) => demandId));
  const placed = new Set(request.demands.flatMap(({ id }, at) => (out.has(id) ? [] : [at])));
  return { ...result, plan, cost, bound: compare({ unplaced, cost }, boundSheets(request, placed)) };
}

/** The cuts of the parts follow those that took the defects out. */
function joinedSheet({ stock, tree, parts }: Split, used: readonly CutSheet[], keepFrom: number): CutSheet {
  const shifted = new Map(
    used.map((sheet) => {
      const { x = 0, y = 0 } = parts.get(sheet.stockId) ?? {};
      return [sheet.stockId, moved(sheet, x, y)];
    }),
  );
  const offcuts: Rectangle[] = [];
  const join = (node: CutNode): CutNode => {
    if (node.children) return { ...node, children: node.children.map(join) };
    if (node.piece === undefined) return node;
    const sheet = shifted.get(node.piece);
    if (sheet) return sheet.tree;
    // A clear part that nothing is cut from is kept where it is large enough.
    if (Math.min(node.width, node.height) < keepFrom) return boxOf(node);
    offcuts.push(boxOf(node));
    return { ...boxOf(node), offcut: true };
  };
  const whole = join(tree);
  return {
    stockId: stock.id,
    index: 0,
    tree: whole,
    placements: [...shifted.values()].flatMap(({ placements }) => placements),
    offcuts: [...offcuts, ...[...shifted.values()].flatMap((sheet) => sheet.offcuts)],
  };
}

function moved(sheet: CutSheet, x: number, y: number): CutSheet {
  const box = <Box extends Rectangle>(one: Box): Box => ({ ...one, x: one.x + x, y: one.y + y });
  const node = (one: CutNode): CutNode => ({
    ...box(one),
    ...(one.cut && { cut: { ...one.cut, at: one.cut.at + (one.cut.along === "y" ? x : y) } }),
    ...(one.children && { children: one.children.map(node) }),
  });
  return {
    ...sheet,
    tree: node(sheet.tree),
    placements: sheet.placements.map(box),
    offcuts: sheet.offcuts.map(box),
  };
}
