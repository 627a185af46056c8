/**
 * The whole cutting of the example buildings: how long it takes, and how far each part is above what none can cost less than. The
 * target: proven best, or within one sheet or board of it, in 2 s, and a first good plan in 50 ms. Times are of one process after a first run.
 * Then the same beside a second thread, as the page's worker has one: pairs of runs in turn, and how much of one's time two take.
 */
import { readFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { isMainThread, parentPort, Worker } from "node:worker_threads";
import { demandsOf } from "../src/codes/demands.ts";
import { cutFacade } from "../src/cutting/facade/cut-facade.ts";
import { facadePlans } from "../src/cutting/facade/facade-plans.ts";
import type { CutPlan } from "../src/cutting/facade/plan.ts";
import { readProject } from "../src/project/read.ts";
import type { Project } from "../src/project/schema/project.ts";
import type { Facade } from "../src/setout/facade.ts";
import { setOut } from "../src/setout/set-out.ts";
import { createSecond, type Second } from "../src/web/work/second.ts";
import { secondThread } from "../src/web/work/second-thread.ts";
import { firstPlan } from "../test/helpers/first-plan.ts";

const RUNS = 3;
const PAIRS = 15;
const NAMES = ["atelier-bouleau", "two-storey", "l-plan", "imperial", "porch"];

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

function building(name: string): { project: Project; facade: Facade } {
  const text = readFileSync(new URL(`../examples/${name}.outerleaf.json`, import.meta.url), "utf8");
  const read = readProject(text, name);
  if (!read.ok) throw new Error(`${name} cannot be read`);
  const { project } = read;
  return { project, facade: setOut(project, demandsOf(project)) };
}

function measureAlone(name: string) {
  const { project, facade } = building(name);
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
}

/** Looks at what the second thread says as often as the page's worker does. */
async function planBeside(second: Second | undefined, { project, facade }: ReturnType<typeof building>) {
  const plans = facadePlans(project, facade, undefined, second);
  let due = performance.now() + 40;
  for (let next = plans.next(); ; next = plans.next()) {
    if (next.done) return next.value;
    if (second?.waits()) await second.heard();
    else if (performance.now() < due) continue;
    else await new Promise((heard) => setTimeout(heard));
    due = performance.now() + 40;
  }
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

/** One thread, two threads, one, two …: what else the machine does falls on both. */
async function measureBeside(name: string, second: Second) {
  const built = building(name);
  const timed = async (by: Second | undefined) => {
    const start = performance.now();
    const outcome = await planBeside(by, built);
    return { ms: performance.now() - start, said: JSON.stringify(outcome) };
  };
  await timed(undefined);
  await timed(second);
  const pairs: { one: number; two: number }[] = [];
  for (let pair = 0; pair < PAIRS; pair++) {
    const one = await timed(undefined);
    const two = await timed(second);
    if (one.said !== two.said) throw new Error(`${name}: two threads come to another plan than one`);
    pairs.push({ one: one.ms, two: two.ms });
  }
  return {
    building: name,
    "one thread ms": Math.round(median(pairs.map(({ one }) => one))),
    "two threads ms": Math.round(median(pairs.map(({ two }) => two))),
    "two / one": median(pairs.map(({ one, two }) => two / one)).toFixed(2),
  };
}

if (isMainThread) {
  console.table(NAMES.map(measureAlone));
  const worker = new Worker(new URL(import.meta.url));
  const second = createSecond((hear, fail) => {
    worker.on("message", hear).on("error", fail);
    return { ask: (ask) => worker.postMessage(ask) };
  });
  const rows: Awaited<ReturnType<typeof measureBeside>>[] = [];
  for (const name of NAMES) rows.push(await measureBeside(name, second));
  console.log(`${availableParallelism()} cores, medians of ${PAIRS} pairs`);
  console.table(rows);
  await worker.terminate();
} else {
  parentPort?.on(
    "message",
    secondThread((said) => parentPort?.postMessage(said)),
  );
}
