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

/**
 * @param findings what is to be settled first in front
 * @param before the notes that stand: those that tell of the same findings stay the same objects
 */
export function notesOf(findings: readonly Finding[], reader: Reader, before?: Notes): Notes {
  const toSettle = findings.filter(({ outcome }) => !SETTLED.includes(outcome));
  const holding = findings.filter(({ outcome }) => SETTLED.includes(outcome));
  return {
    toSettle: grouped(toSettle, reader, before?.toSettle),
    holding: grouped(holding, reader, before?.holding),
    toSettleCount: toSettle.length,
    holdingCount: holding.length,
    provisionalCount: holding.filter(({ provisional }) => provisional).length,
  };
}

function grouped(
  findings: readonly Finding[],
  reader: Reader,
  before: readonly NoteGroup[] = [],
): NoteGroup[] {
  const groups = new Map<string, { symbol: SymbolName; findings: [Finding, ...Finding[]] }>();
  for (const finding of findings) {
    const key = keyOf(finding, reader);
    const group = groups.get(key);
    if (group) group.findings.push(finding);
    else groups.set(key, { symbol: symbolAt(finding), findings: [finding] });
  }
  const standing = new Map(before.map((group) => [group.key, group]));
  return [...groups].map(([key, group]) => {
    const same = standing.get(key);
    return same && isOf(same, group.findings) ? same : { key, ...group };
  });
}

/** What does not apply holds: there is nothing to be broken. */
const symbolAt = (finding: Finding): SymbolName => symbolOf(finding) ?? "pass";

/** By the words that a finding says to a reader; most findings outlive many edits. */
const keys = new WeakMap<Finding, { readonly reader: Reader; readonly key: string }>();

function keyOf(finding: Finding, reader: Reader): string {
  const held = keys.get(finding);
  if (held?.reader === reader) return held.key;
  const key = `${finding.code} ${symbolAt(finding)} ${say(finding.says, reader)}`;
  keys.set(finding, { reader, key });
  return key;
}

const isOf = (group: NoteGroup, findings: readonly Finding[]): boolean =>
  group.findings.length === findings.length && group.findings.every((one, i) => one === findings[i]);
