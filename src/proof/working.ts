/** Small things that every rule of proof needs to say what it found. */
import type { Basis, Finding, WorkingInput } from "../findings/finding.ts";
import { message } from "../text/message.ts";

/** An input of a working; its meaning is the message `proof.input.<meaning>`. */
export function input(
  symbol: string,
  fields: { meaning: string; value: number; unit: string; basis: Basis },
): WorkingInput {
  const { meaning, value, unit, basis } = fields;
  return { symbol, meaning: message(`proof.input.${meaning}`), value, unit, basis };
}

/** A number as a working writes it: `decimals` at most, no trailing zeros. */
export function written(value: number, decimals = 1): string {
  const text = value.toFixed(decimals);
  return (text.includes(".") ? text.replace(/\.?0+$/, "") : text).replace(/^-0$/, "0");
}

/** Less than this is arithmetic noise, far below the length grid. */
const NOISE = 1e-6;

interface Compared {
  readonly demand: number;
  readonly limit: number;
  readonly unit: string;
}

type Comparison = Pick<Finding, "demand" | "limit" | "unit" | "ratio">;

/** Whether a value that may be at most the limit, or must be at least the limit, keeps it. */
export function holds(kind: "at most" | "at least", { demand, limit }: Omit<Compared, "unit">): boolean {
  return kind === "at most" ? demand <= limit + NOISE : demand >= limit - NOISE;
}

/** The fields of a finding that compare a value with its limit; above 1 the ratio fails. */
export function compared(kind: "at most" | "at least", { demand, limit, unit }: Compared): Comparison {
  const below = kind === "at most" ? limit : demand;
  // Against nothing at all a ratio says nothing.
  if (below <= 0) return { demand, limit, unit };
  return { demand, limit, unit, ratio: kind === "at most" ? demand / limit : limit / demand };
}

/** The element with the greatest score, the first of equals. */
export function greatest<Thing>(
  things: readonly Thing[],
  score: (thing: Thing) => number,
): Thing | undefined {
  let best: { thing: Thing; score: number } | undefined;
  for (const thing of things) {
    const own = score(thing);
    if (best === undefined || own > best.score) best = { thing, score: own };
  }
  return best?.thing;
}
