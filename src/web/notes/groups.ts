/** Findings as notes: what says the same words stands once, with all its places. */
import type { Finding, Outcome } from "../../findings/finding.ts";
import { type SymbolName, symbolOf } from "../../scene/model.ts";
import { type Reader, say } from "../../text/say.ts";

export interface NoteGroup {
  readonly key: string;
  readonly symbol: SymbolName;
  readonly findings: readonly [Finding, ...Finding[]];
}

export interface Notes {
  readonly toSettle: readonly NoteGroup[];
  readonly holding: readonly NoteGroup[];
  readonly toSettleCount: number;
  readonly holdingCount: number;
  /** Of those that hold, how many rest on a typical value or one from memory. */
  readonly provisionalCount: number;
}

const SETTLED: readonly Outcome[] = ["pass", "not applicable"];

/** @param findings what is to be settled first in front */
export function notesOf(findings: readonly Finding[], reader: Reader): Notes {
  const toSettle = findings.filter(({ outcome }) => !SETTLED.includes(outcome));
  const holding = findings.filter(({ outcome }) => SETTLED.includes(outcome));
  return {
    toSettle: grouped(toSettle, reader),
    holding: grouped(holding, reader),
    toSettleCount: toSettle.length,
    holdingCount: holding.length,
    provisionalCount: holding.filter(({ provisional }) => provisional).length,
  };
}

function grouped(findings: readonly Finding[], reader: Reader): NoteGroup[] {
  const groups = new Map<string, { symbol: SymbolName; findings: [Finding, ...Finding[]] }>();
  for (const finding of findings) {
    // What does not apply holds: there is nothing to be broken.
    const symbol = symbolOf(finding) ?? "pass";
    const key = `${finding.code} ${symbol} ${say(finding.says, reader)}`;
    const group = groups.get(key);
    if (group) group.findings.push(finding);
    else groups.set(key, { symbol, findings: [finding] });
  }
  return [...groups].map(([key, group]) => ({ key, ...group }));
}
