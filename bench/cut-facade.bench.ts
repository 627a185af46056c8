/**
 * The whole cutting of the example buildings: how long it takes, and how far each part is above what none can cost less than. The
 * target: proven best, or within one sheet or board of it, in 2 s, and a first good plan in 50 ms. Times are of one process after a first run.
 */
import { readFileSync } from "node:fs";
import { demandsOf } from "../src/codes/demands.ts";
import { cutFacade } from "../src/cutting/facade/cut-facade.ts";
import type { CutPlan } from "../src/cutting/facade/plan.ts";
import { readProject } from "../src/project/read.ts";
import { setOut } from "../src/setout/set-out.ts";
import { firstPlan } from "../test/helpers/first-plan.ts";

const RUNS = 3;

interface Near {
  readonly part: string;
  readonly cost: number;
  readonly bound: number;
  readonly proven: boolean;
  /** Of the dearest sheet, length or board that the part is cut from. */
  readonly above: number;
}

/** What the dearest stock of a part costs. */
function dearest(stock: readonly { readonly cost?: number }[]): number {
  return Math.max(0, ...stock.map(({ cost = 0 }) => cost));
}

type Pile = NonNullable<CutPlan["rips"]>;

function largestBoard({ request }: Pile): number {
  return Math.max(0, ...request.boards.map(({ length, width }) => (length * width) / 1e6));
}

/** The pieces that the pile does not give, beside the least that any plan leaves out. */
function leftOut(rips: Pile): Near {
  const { area, least } = rips.result.leftOut;
  const proven = area <= least;
  return {
    part: "pile, left out",
    cost: area,
    bound: least,
    proven,
    above: (area - least) / largestBoard(rips),
  };
}

function partsOf({ sheets, lengths, boards, rips }: CutPlan): Near[] {
  const near = (
    part: string,
    result: CutPlan["sheets"][number]["result"] | CutPlan["lengths"][number]["result"],
    one: number,
  ): Near => {
    const { cost, bound } = result;
    const proven = bound.bound >= cost;
    const above = proven || one === 0 ? 0 : (cost - bound.bound) / one;
    return { part, cost, bound: bound.bound, proven, above };
  };
  return [
    ...sheets.map(({ thickness, request, result }) =>
      near(`sheets ${thickness}`, result, dearest(request.stock)),
    ),
    ...[...lengths, ...boards.bought].map(({ use, thickness, width, request, result }) =>
      near(`${use} ${thickness} x ${width}`, result, dearest(request.stock)),
    ),
    ...(rips ? [near("pile", rips.result.lengths, largestBoard(rips)), leftOut(rips)] : []),
  ];
}

const rows = ["atelier-bouleau", "two-storey", "l-plan", "imperial", "porch"].map((name) => {
  const text = readFileSync(new URL(`../examples/${name}.outerleaf.json`, import.meta.url), "utf8");
  const read = readProject(text, name);
  if (!read.ok) throw new Error(`${name} cannot be read`);
  const { project } = read;
  const facade = setOut(project, demandsOf(project));
  let plan: CutPlan | undefined;
  const times = Array.from({ length: RUNS + 1 }, () => {
    const start = performance.now();
    ({ plan } = cutFacade(project, facade));
    return performance.now() - start;
  });
  const firstPlans = Array.from({ length: RUNS + 1 }, () => {
    const start = performance.now();
    firstPlan(project, facade);
    return performance.now() - start;
  });
  if (!plan) throw new Error(`${name}: the verifiers refuse the plan`);
  const [first = 0, ...later] = times;
  const parts = partsOf(plan).filter(({ cost }) => cost > 0);
  const open = parts.filter(({ proven }) => !proven);
  console.table(
    open.map(({ part, cost, bound, above }) => ({
      building: name,
      part,
      cost,
      bound,
      "sheets or boards above": above.toFixed(2),
    })),
  );
  return {
    building: name,
    parts: parts.length,
    "proven best": parts.length - open.length,
    "within one of it": open.filter(({ above }) => above <= 1).length,
    further: open.filter(({ above }) => above > 1).length,
    firstMs: Math.round(first),
    mostMs: Math.round(Math.max(...later)),
    "first plan mostMs": Math.round(Math.max(...firstPlans.slice(1))),
  };
});
console.table(rows);
