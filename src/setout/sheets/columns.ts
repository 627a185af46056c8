/**
 * The upright joint lines of a sheet zone. Candidates are the jambs of its openings, the joint lying on the opening's
 * side so that the sheet beside it ends on the clearance; between chosen jambs a stretch is divided equally. The cheapest
 * set is found exactly, as a shortest path over the candidates.
 */
import type { Interval } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";
import { type ColumnCost, columnCost } from "./cost.ts";
import { divide } from "./divide.ts";
import type { SheetZone } from "./zone.ts";

export interface ColumnPlan {
  /** Clear widths of the sheets, left to right. */
  readonly columns: readonly Interval[];
  /** Joint strips between them. */
  readonly joints: readonly { readonly x: Interval; readonly line?: string }[];
  readonly cost: ColumnCost;
  /** Cost of the best plan that leaves out at least one jamb or takes another division. */
  readonly candidates: number;
}

interface Candidate {
  readonly joint: Interval;
  readonly line?: string;
}

interface Step {
  readonly total: number;
  readonly back: number;
  readonly columns: readonly Interval[];
  readonly cost: ColumnCost;
}

const MOST_EXTRA_COLUMNS = 1;

export function planColumns(zone: SheetZone): ColumnPlan {
  const [left, right] = zone.ground.bounds.x;
  const joint = zone.cladding.joint;
  const inner = candidatesOf(zone).filter(({ joint: [a, b] }) => a - left > joint && right - b > joint);
  const nodes: Candidate[] = [{ joint: [left, left] }, ...inner, { joint: [right, right] }];
  const best: (Step | undefined)[] = [{ total: 0, back: -1, columns: [], cost: NOTHING }];
  for (let j = 1; j < nodes.length; j++) {
    for (let i = 0; i < j; i++) {
      const start = best[i];
      if (!start) continue;
      const stretch: Interval = [(nodes[i] as Candidate).joint[1], (nodes[j] as Candidate).joint[0]];
      if (stretch[1] <= stretch[0]) continue;
      const found = bestDivision(zone, stretch);
      const total = start.total + found.cost.total;
      if (total < (best[j]?.total ?? Number.POSITIVE_INFINITY) - 1e-9) best[j] = { total, back: i, ...found };
    }
  }
  return unwind(zone, nodes, best);
}

const NOTHING: ColumnCost = { total: 0, notches: 0, slivers: 0, sheets: 0, oversize: 0 };

function unwind(
  _zone: SheetZone,
  nodes: readonly Candidate[],
  best: readonly (Step | undefined)[],
): ColumnPlan {
  const columns: Interval[] = [];
  const joints: { x: Interval; line?: string }[] = [];
  let cost = NOTHING;
  for (let j = nodes.length - 1; j > 0; ) {
    const step = best[j] as Step;
    const within = step.columns.slice(1).map((column, i) => ({
      x: [(step.columns[i] as Interval)[1], column[0]] as const,
    }));
    columns.unshift(...step.columns);
    const node = nodes[step.back] as Candidate;
    joints.unshift(
      ...(step.back > 0 ? [{ x: node.joint, ...(node.line && { line: node.line }) }] : []),
      ...within,
    );
    cost = sum(cost, step.cost);
    j = step.back;
  }
  return { columns, joints: joints.sort((a, b) => a.x[0] - b.x[0]), cost, candidates: nodes.length - 2 };
}

function sum(a: ColumnCost, b: ColumnCost): ColumnCost {
  return {
    total: a.total + b.total,
    notches: a.notches + b.notches,
    slivers: a.slivers + b.slivers,
    sheets: a.sheets + b.sheets,
    oversize: a.oversize + b.oversize,
  };
}

function candidatesOf({ ground, cladding }: SheetZone): Candidate[] {
  const { joint } = cladding;
  const all = ground.keepOuts.flatMap(({ of, rect }): Candidate[] => [
    { joint: [rect.x[0], snap(rect.x[0] + joint)], line: `${ground.face.id} jamb left ${of}` },
    { joint: [snap(rect.x[1] - joint), rect.x[1]], line: `${ground.face.id} jamb right ${of}` },
  ]);
  all.sort((a, b) => a.joint[0] - b.joint[0]);
  return all.filter(({ joint: [from] }, i) => i === 0 || from !== all[i - 1]?.joint[0]);
}

/** The stretch in equal parts: as few as fit the stock, or one more, whichever costs less. */
function bestDivision(zone: SheetZone, stretch: Interval): { columns: Interval[]; cost: ColumnCost } {
  const { joint } = zone.cladding;
  const length = stretch[1] - stretch[0];
  const widest = widestSheet(zone);
  const fewest = Math.max(1, Math.ceil((length + joint) / (widest + joint) - 1e-9));
  let best: { columns: Interval[]; cost: ColumnCost } | undefined;
  for (let parts = fewest; parts <= fewest + MOST_EXTRA_COLUMNS; parts++) {
    const columns = divide(stretch, parts, joint);
    const cost = columns.map((x) => columnCost(zone, x)).reduce(sum);
    if (!best || cost.total < best.cost.total - 1e-9) best = { columns, cost };
  }
  return best as { columns: Interval[]; cost: ColumnCost };
}

/** The widest column that the stock covers with a sheet standing upright. */
function widestSheet({ stock, trim }: SheetZone): number {
  return Math.max(...stock.map(({ width, height }) => Math.min(width, height) - 2 * trim));
}
