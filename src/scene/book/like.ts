/**
 * Places of a rule that hold by the same working: the governing one is worked in full, the others follow it with what differs. The
 * book on paper and the one for a browser are put together alike.
 */
import type { Finding, WorkingInput } from "../../findings/finding.ts";
import { type Message, message } from "../../text/message.ts";
import type { BookEntry } from "./model.ts";

/** Entries in their order, those that hold alike together behind the first of them. */
export function likeEntries(entries: readonly BookEntry[]): BookEntry[][] {
  const groups = new Map<string, BookEntry[]>();
  for (const entry of entries) {
    const key = likeness(entry) ?? entry.number;
    const group = groups.get(key);
    if (group) group.push(entry);
    else groups.set(key, [entry]);
  }
  return [...groups.values()];
}

/** All but the place, the values and the sentence that tells them; undefined of what is told by itself. */
function likeness({ finding, unsettled, sideBySide, waiver }: BookEntry): string | undefined {
  const { outcome, provisional, says, hint, working, source, unit } = finding;
  if (waiver || !HELD.includes(outcome)) return undefined;
  const inputs = working?.inputs.map(({ symbol, meaning, unit: own, basis }) => [
    symbol,
    meaning,
    own,
    basis,
  ]);
  return JSON.stringify([
    [outcome, provisional, says.key, hint, unit, source.kind, source.document, source.clause],
    [working?.formula, inputs],
    [unsettled, sideBySide],
  ]);
}

const HELD: readonly string[] = ["pass", "not applicable"];

export interface LikeRow {
  readonly entry: BookEntry;
  /** What its working takes in place of the governing one's; empty where nothing differs and its sentence tells it. */
  readonly inputs: readonly WorkingInput[];
}

/** The places behind the first of a group, under a heading; undefined where it stands alone. */
export function likeRows(
  group: readonly BookEntry[],
): { readonly heading: Message; readonly rows: readonly LikeRow[] } | undefined {
  const rows = group.slice(1).map((entry) => ({ entry, inputs: differing(entry.finding, group) }));
  if (rows.length === 0) return undefined;
  const said = rows.some(({ inputs }) => inputs.length === 0);
  return { heading: message(said ? "book.like-places" : "book.like-workings"), rows };
}

/** Inputs that are not the same at every place of the group. */
function differing({ working }: Finding, group: readonly BookEntry[]): WorkingInput[] {
  return (working?.inputs ?? []).filter(({ value }, i) =>
    group.some(({ finding }) => finding.working?.inputs[i]?.value !== value),
  );
}
