/** What was done to a project, step by step, so that each step can be taken back and done again. */
import type { Message } from "../../text/message.ts";

export interface Step {
  readonly document: unknown;
  /** What was done to come here. */
  readonly says: Message;
  /** Steps with one key, such as those of one drag, are one step. */
  readonly merge?: string;
}

export interface History {
  readonly steps: readonly Step[];
  /** The step at hand. */
  readonly at: number;
}

export function begin(step: Step): History {
  return { steps: [step], at: 0 };
}

/** Does a step: what was taken back before is gone. */
export function done({ steps, at }: History, step: Step): History {
  const last = steps[at];
  const merges = at > 0 && step.merge !== undefined && last?.merge === step.merge;
  const kept = steps.slice(0, merges ? at : at + 1);
  return { steps: [...kept, step], at: kept.length };
}

export function moved(history: History, to: number): History {
  return { ...history, at: Math.min(Math.max(to, 0), history.steps.length - 1) };
}

export function present({ steps, at }: History): Step {
  const step = steps[at];
  if (!step) throw new Error("a history has a step at hand");
  return step;
}

/** What taking one step back, or doing one again, would undo or redo. */
export function besides({ steps, at }: History): {
  readonly back: Step | undefined;
  readonly forth: Step | undefined;
} {
  return { back: at > 0 ? steps[at] : undefined, forth: steps[at + 1] };
}
