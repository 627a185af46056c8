/**
 * What cutting reaches on published and generated instances, set by set, beside the best values known and the targets.
 * Options: `--only part-of-a-set's-name`, `--budget steps` in place of each set's own, `--each` for a line an instance.
 * Times are processor times, so that what else the machine does counts less.
 */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { type SawAnswer, saw } from "../src/cutting/index.ts";

interface Instance {
  readonly id: string;
  readonly fam?: string;
  readonly sheets?: readonly unknown[];
  readonly ref: Readonly<Record<string, number | boolean | null>>;
}

interface Collection {
  readonly instances: readonly Instance[];
}

interface Set {
  readonly name: string;
  readonly file: string;
  readonly turn: boolean;
  /** Names of the best known value and of the best known bound among an instance's references. */
  readonly best: string;
  readonly lower: string;
  readonly takes?: (instance: Instance) => boolean;
  /** Steps that come to a second or two for the harder instances. */
  readonly budget: number;
  readonly must: string;
}

const oneSize = ({ sheets }: Instance) => sheets?.length === 1;
const hard = ({ fam }: Instance) => fam === "hard28";

/**
 * The targets for classes 1 to 10 are stated for all 500 instances; the half of them kept here has its share by the best
 * known totals of three stages: 3519 of 7243 as pieces lie, 3387 of 6980 turned.
 */
const sets: readonly Set[] = [
  {
    name: "sheets: classes 1-10, as they lie",
    file: "2d-bpp-classes",
    turn: false,
    best: "bestOG",
    lower: "lbGO",
    budget: 20000,
    must: "≤ 3528 in 1 s, ≥ 82 % proven in 10 s",
  },
  {
    name: "sheets: classes 1-10, turned",
    file: "2d-bpp-classes",
    turn: true,
    best: "bestRG",
    lower: "lbGR",
    budget: 20000,
    must: "≤ 3415 in 1 s, ≥ 88 % proven in 10 s",
  },
  {
    name: "sheets: trade, one size, as they lie",
    file: "2d-trade-jobs",
    turn: false,
    best: "knownO",
    lower: "lbGO",
    takes: oneSize,
    budget: 20000,
    must: "≥ 95 % proven in 2 s",
  },
  {
    name: "sheets: trade, one size, turned",
    file: "2d-trade-jobs",
    turn: true,
    best: "knownR",
    lower: "lbGR",
    takes: oneSize,
    budget: 20000,
    must: "≥ 95 % proven in 2 s",
  },
  {
    name: "sheets: trade, offcuts, as they lie",
    file: "2d-trade-jobs",
    turn: false,
    best: "knownO",
    lower: "lbGO",
    takes: (one) => !oneSize(one),
    budget: 20000,
    must: "",
  },
  {
    name: "sheets: trade, offcuts, turned",
    file: "2d-trade-jobs",
    turn: true,
    best: "knownR",
    lower: "lbGR",
    takes: (one) => !oneSize(one),
    budget: 20000,
    must: "",
  },
  {
    name: "sheets: large demands (gcut d)",
    file: "2d-csp-3hao-cintra",
    turn: false,
    best: "best",
    lower: "lb",
    budget: 3000,
    must: "",
  },
  {
    name: "sheets: several sizes (Pisinger)",
    file: "2d-vsbpp-pisinger",
    turn: false,
    best: "bestOF",
    lower: "lb",
    budget: 10000,
    must: "≤ +2.5 % in 1 s",
  },
  {
    name: "bars: classic, without Hard28",
    file: "1d-csp-classic",
    turn: false,
    best: "best",
    lower: "lb",
    takes: (one) => !hard(one),
    budget: 1000,
    must: "≥ 95 % proven in 1 s",
  },
  {
    name: "bars: Hard28",
    file: "1d-csp-classic",
    turn: false,
    best: "best",
    lower: "lb",
    takes: hard,
    budget: 1000,
    must: "",
  },
  {
    name: "bars: several lengths",
    file: "1d-vsbpp-generated",
    turn: false,
    best: "best",
    lower: "lb",
    budget: 200,
    must: "",
  },
  {
    name: "bars: reclaimed, with defects",
    file: "1d-reclaimed-defects",
    turn: false,
    best: "best",
    lower: "lb",
    budget: 200,
    must: "gap ≤ 0.5 % in 1 s",
  },
];

/**
 * Sheets that general packers take for the same instances of classes 1 to 10, measured once; the first does not keep to cuts
 * right through. Ours must be 1.5 % fewer than the best of them.
 */
const packers = [
  { packer: "maxrects-packer 2.7.4, the better of both its rules", "as they lie": 3600, turned: 3468 },
  { packer: "guillotine-packer 1.0.2, the best of all its rules", "as they lie": 3600, turned: 3502 },
];

const { values: options } = parseArgs({
  options: { only: { type: "string" }, budget: { type: "string" }, each: { type: "boolean" } },
});

interface Run {
  readonly answer: SawAnswer;
  readonly best: number;
  readonly ms: number;
}

function cut(instance: Instance, collection: Collection, set: Set): Run {
  const budget = Number(options.budget ?? set.budget);
  const document = { ...collection, instances: [instance] };
  const start = process.cpuUsage();
  const { answers, problems } = saw(document, { turn: set.turn, budget });
  const { user, system } = process.cpuUsage(start);
  const [answer] = answers;
  if (!answer) throw new Error(`${instance.id}: ${JSON.stringify(problems[0])}`);
  const lower = instance.ref[set.lower];
  const best = Number(instance.ref[set.best]);
  // A bound above a value that somebody has reached, or a value below a bound that somebody has proven, is a mistake.
  const impossible = answer.bound > best + 1e-6 || (typeof lower === "number" && answer.cost < lower - 1e-6);
  if (impossible && set.best !== "bestOF") {
    console.log(`${instance.id}: cost ${answer.cost}, bound ${answer.bound}, known ${lower} to ${best}`);
  }
  return { answer, best, ms: (user + system) / 1000 };
}

function round(value: number, digits = 1): number {
  return Number(value.toFixed(digits));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

const rows = sets
  .filter(({ name }) => name.includes(options.only ?? ""))
  .map((set) => {
    const collection: Collection = JSON.parse(
      readFileSync(new URL(`../bench/instances/${set.file}.json`, import.meta.url), "utf8"),
    );
    const runs = collection.instances
      .filter(set.takes ?? (() => true))
      .map((instance) => cut(instance, collection, set));
    if (options.each) {
      for (const { answer, best, ms } of runs) {
        const { id, cost, bound, proven, proof, iterations } = answer;
        console.log(id, { cost, bound, best, proven, proof, iterations, ms: round(ms) });
      }
    }
    const total = sum(runs.map(({ answer }) => answer.cost));
    const best = sum(runs.map((run) => run.best));
    const times = runs.map(({ ms }) => ms).sort((a, b) => a - b);
    const proven = runs.filter(({ answer }) => answer.proven).length;
    return {
      set: set.name,
      n: runs.length,
      total: round(total, 2),
      bestKnown: round(best, 2),
      "over %": round((total / best - 1) * 100, 2),
      "proven %": round((proven / runs.length) * 100),
      "gap %": round((sum(runs.map(({ answer }) => answer.gap)) / runs.length) * 100, 2),
      meanMs: Math.round(sum(times) / times.length),
      mostMs: Math.round(times.at(-1) ?? 0),
      faulty: runs.filter(({ answer }) => answer.problems.length + answer.unplaced.length > 0).length,
      must: set.must,
    };
  });
console.table(rows);
console.table(packers);
