/** A finding: what a rule says of one place, with everything a reader needs to check it by hand. */
import type { Message } from "../text/message.ts";
import type { RuleCode } from "./codes.ts";

export type Outcome = "pass" | "fail" | "attention" | "not applicable" | "cannot evaluate";

/** Where an input comes from; a pass that rests on `typical` or `memory` is provisional. */
export type Basis = "given" | "typical" | "derived" | "memory";

export interface Location {
  /** Path in the project file, JSON Pointer (RFC 6901), when the mend lies there. */
  readonly path?: string;
  readonly face?: string;
  readonly zone?: string;
  readonly opening?: string;
  /** Marks of pieces. */
  readonly marks?: readonly string[];
  /** A point of the face frame (mm) to jump to. */
  readonly at?: readonly [x: number, y: number];
}

/** A working: one line of arithmetic with its numbers put in. */
export interface WorkingInput {
  readonly symbol: string;
  readonly meaning: Message;
  readonly value: number;
  readonly unit: string;
  readonly basis: Basis;
}

export interface Working {
  /** The formula in symbols, e.g. `g = (L − Σw) / k`. */
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  /** The formula with its numbers, e.g. `(950 − 880) / 7 = 10.0`. */
  readonly substituted: string;
}

export interface Source {
  /** `document`: a standard or handbook with its clause; the other kinds speak for themselves. */
  readonly kind: "document" | "common practice" | "your data sheet" | "your project";
  readonly document?: string;
  readonly clause?: string;
  /** Names of the figures of the reference data that were read there. */
  readonly figures?: readonly string[];
}

/** One operation of a JSON Patch (RFC 6902) on the project file. */
export interface PatchOperation {
  readonly op: "add" | "remove" | "replace";
  readonly path: string;
  readonly value?: unknown;
}

/** One of several ways to mend what a finding says. */
export interface Choice {
  readonly says: Message;
  /** Absent where the mend cannot be written into the project file. */
  readonly edit?: readonly PatchOperation[];
}

export interface Finding {
  readonly code: RuleCode;
  readonly outcome: Outcome;
  /** True for a pass that rests on a typical value or one from memory. */
  readonly provisional: boolean;
  readonly where: Location;
  readonly says: Message;
  readonly hint?: Message;
  /** What is asked of the facade, in `unit`. */
  readonly demand?: number;
  /** What the rule allows, in `unit`. */
  readonly limit?: number;
  readonly unit?: string;
  /** Demand over limit, or limit over demand where the limit is a least value: above 1 fails. */
  readonly ratio?: number;
  readonly working?: Working;
  readonly source: Source;
  /** Names of the figures of the reference data that it rests on; a project file can put its own in their place. */
  readonly figures?: readonly string[];
  /** An edit that mends it and breaks nothing known. */
  readonly edit?: readonly PatchOperation[];
  /** Every way to mend it that is known, best first; `hint` and `edit` are the first one's. */
  readonly choices?: readonly Choice[];
}

type FindingFields = Omit<Finding, "provisional" | "source"> & { readonly source?: Source };

/** Makes a finding; a pass is provisional when any input of its working is typical or from memory. */
export function finding(fields: FindingFields): Finding {
  const shaky =
    fields.working?.inputs.some(({ basis }) => basis === "typical" || basis === "memory") ?? false;
  const figures = [...new Set([...(fields.figures ?? []), ...(fields.source?.figures ?? [])])];
  return {
    provisional: fields.outcome === "pass" && shaky,
    ...fields,
    source: fields.source ?? { kind: "your project" },
    ...(figures.length > 0 ? { figures } : {}),
  };
}

/** Whether the command line ends with exit code 1 because of this finding. */
export function blocks(finding: Finding): boolean {
  return finding.outcome === "fail" || finding.outcome === "cannot evaluate";
}

/** Every outcome, what is to be settled first in front. */
export const OUTCOMES: readonly Outcome[] = [
  "fail",
  "cannot evaluate",
  "attention",
  "pass",
  "not applicable",
];

/** What is to be settled first comes first; equal outcomes by ratio, then by code and place. */
export function byWeight(a: Finding, b: Finding): number {
  return (
    OUTCOMES.indexOf(a.outcome) - OUTCOMES.indexOf(b.outcome) ||
    (b.ratio ?? 0) - (a.ratio ?? 0) ||
    compare(a.code, b.code) ||
    comparePlaces(a.where, b.where)
  );
}

/** By code points, which is the same on every machine. */
function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

const PLACES = ["path", "face", "zone", "opening"] as const;

function comparePlaces(a: Location, b: Location): number {
  for (const key of PLACES) {
    const order = compare(a[key] ?? "", b[key] ?? "");
    if (order !== 0) return order;
  }
  return compare(a.marks?.[0] ?? "", b.marks?.[0] ?? "");
}
