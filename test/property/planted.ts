/** What the tests that plant faults in plans share. */
import fc from "fast-check";
import type { CutResult } from "../../src/cutting/index.ts";

export type Loose<T> = T extends readonly (infer One)[]
  ? Loose<One>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Loose<T[Key]> }
    : T;

export const RUNS = { numRuns: 60 };

/** A place in a list that is not empty. */
export function at<One>(list: readonly One[], share: number): One {
  const one = list[Math.min(list.length - 1, Math.floor(share * list.length))];
  if (one === undefined) throw new Error("nothing to choose from");
  return one;
}

export const share = fc.double({ min: 0, max: 1, noNaN: true });
export const size = (least: number, most: number) => fc.integer({ min: least, max: most });

export interface Claim {
  cost: number;
  bound: { bound: number; proven: boolean };
}

/** Plants a fault, or says by `false` that this plan has no place for it; then the code must be among those reported. */
export type Plant<Job> = (job: Job, share: number) => boolean | undefined;

/** A copy to spoil. */
export function spoilable<Job>(
  request: unknown,
  { plan, cost, bound }: Pick<CutResult<unknown>, "plan" | "cost" | "bound">,
): Job {
  return structuredClone({ request, plan, claim: { cost, bound } }) as Job;
}
