/** Has the worker prove what the page has set out itself: when the hand rests, and now and then while it moves. */
import type { FileLaid, ProjectFile } from "../../design.ts";
import type { DesignAnswer, Overtaken } from "./messages.ts";

type Whole = Extract<FileLaid, { kind: "laid" }>;
type Answer = DesignAnswer | Overtaken;

export interface Prover {
  /** A newer facade is shown: what is asked for an older one is overtaken from now on. Gives the facade's turn. */
  newer(): number;
  /** The proof of a newer facade, which was set out here. */
  prove(file: ProjectFile, laid: Whole): Promise<Answer>;
  /** An answer as it is good for the page now: of an older turn its findings alone. */
  asOf(turn: number, answer: Answer): Answer;
  /** What was set out here of the file of a question to the worker. */
  laidOf(id: number): Whole | undefined;
}

interface ToProve {
  readonly turn: number;
  readonly file: ProjectFile;
  readonly laid: Whole;
  readonly resolve: (answer: Answer) => void;
}

/** Milliseconds: a hand that rests so long has its facade proven; one that goes on, at least so often. */
const REST = 60;
const AT_LEAST_EVERY = 1000;

/** @param ask puts a file to the worker, which sends its findings alone */
export function createProver(
  ask: (file: ProjectFile) => { readonly id: number; readonly answer: Promise<Answer> },
): Prover {
  let turn = 0;
  let waiting: ToProve | undefined;
  let asked: { readonly id: number; readonly laid: Whole } | undefined;
  let lastProven = Number.NEGATIVE_INFINITY;
  /** When the facade that waits is to be proven, and whether a timer runs that will see to it. */
  let due = 0;
  let rings = false;
  const asOf = (of: number, answer: Answer): Answer => {
    if (of === turn || answer.kind !== "designed") return answer;
    return { kind: "overtaken", findings: [...answer.readFindings, ...answer.design.findings] };
  };
  const start = async (): Promise<void> => {
    if (!waiting || asked) return;
    const { turn: of, file, laid, resolve } = waiting;
    waiting = undefined;
    const { id, answer } = ask(file);
    asked = { id, laid };
    const proven = await answer;
    asked = undefined;
    lastProven = performance.now();
    resolve(asOf(of, proven));
    plan();
  };
  const ringIn = (ms: number): void => {
    rings = true;
    setTimeout(() => {
      rings = false;
      const left = due - performance.now();
      if (left > 1) ringIn(left);
      else void start();
    }, ms);
  };
  const plan = (): void => {
    const now = performance.now();
    due = now + (now - lastProven < AT_LEAST_EVERY ? REST : 0);
    // To set a timer back at each move would take longer than to let it ring and look again.
    if (waiting && !asked && !rings) ringIn(due - now);
  };
  const newer = (): number => {
    turn += 1;
    waiting?.resolve({ kind: "overtaken" });
    waiting = undefined;
    return turn;
  };
  return {
    newer,
    prove: (file, laid) =>
      new Promise((resolve) => {
        waiting = { turn: newer(), file, laid, resolve };
        plan();
      }),
    asOf,
    laidOf: (id) => (asked?.id === id ? asked.laid : undefined),
  };
}
