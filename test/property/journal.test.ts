/** The fold of a journal: whatever a network does to the entries on their way, they come to the same state. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Entry } from "../../src/site/journal/entry.ts";
import { createFold, foldJournal, type SiteState } from "../../src/site/journal/fold.ts";
import { journal, mistreated, plain } from "../helpers/journal.ts";

const SEED = 20261129;
const RUNS = process.env.OUTERLEAF_SOAK ? 20_000 : 400;
const often = { seed: SEED, numRuns: RUNS };

describe("the state of a journal", () => {
  it("is the same in whatever order its entries come, and however often", () => {
    fc.assert(
      fc.property(
        journal.chain((entries) => fc.tuple(fc.constant(entries), mistreated(entries))),
        ([entries, came]) => {
          expect(plain(foldJournal(came))).toEqual(plain(foldJournal(entries)));
        },
      ),
      often,
    );
  });

  it("is the same whether it is reckoned at once or goes on with every entry", () => {
    fc.assert(
      fc.property(
        journal.chain((entries) => fc.tuple(fc.constant(entries), mistreated(entries))),
        ([entries, came]) => {
          const fold = createFold();
          for (const entry of came) {
            fold.add([entry]);
            fold.state();
          }
          expect(plain(fold.state())).toEqual(plain(foldJournal(entries)));
        },
      ),
      { ...often, numRuns: RUNS / 4 },
    );
  });

  it("is the same where it goes on from plain values that were put by anywhere on its way", () => {
    fc.assert(
      fc.property(
        journal.chain((entries) => fc.tuple(fc.constant(entries), mistreated(entries), fc.nat(80))),
        ([entries, came, cut]) => {
          const first = createFold();
          first.add(came.slice(0, cut));
          const putBy = JSON.parse(JSON.stringify(first.folded()));
          const later = createFold(putBy);
          // Some of what is put by comes again: a phone's queue does not know what the server has folded.
          later.add(came.slice(cut >> 1));
          expect(plain(later.state())).toEqual(plain(foldJournal(entries)));
          first.add(came.slice(cut));
          expect(later.folded()).toEqual(first.folded());
        },
      ),
      often,
    );
  });

  it("leaves a state that was given out as it was", () => {
    fc.assert(
      fc.property(journal, fc.nat(40), (entries, cut) => {
        const fold = createFold();
        fold.add(entries.slice(0, cut));
        const before = fold.state();
        const copy = structuredClone(plain(before));
        fold.add(entries.slice(cut));
        fold.state();
        expect(plain(before)).toEqual(copy);
      }),
      { ...often, numRuns: RUNS / 4 },
    );
  });

  it("is whole once what was dropped has come after all, wherever the first part was cut off", () => {
    fc.assert(
      fc.property(journal, fc.nat(40), (entries, cut) => {
        const late = [...entries.slice(cut), ...entries.slice(0, cut)];
        expect(plain(foldJournal(late))).toEqual(plain(foldJournal(entries)));
      }),
      often,
    );
  });

  it("holds exactly the entries that nobody named, by a second reckoning from the definition", () => {
    fc.assert(
      fc.property(journal, (entries) => {
        const state = foldJournal(entries);
        expect(shown(state).sort()).toEqual(byDefinition(entries).sort());
      }),
      often,
    );
  });

  it("loses nothing by an entry more but what that entry names", () => {
    fc.assert(
      fc.property(journal, (entries) => {
        const last = entries.at(-1);
        const before = new Set(shown(foldJournal(entries.slice(0, -1))));
        const after = new Set(shown(foldJournal(entries)));
        const lost = [...before].filter((id) => !after.has(id));
        expect(lost.filter((id) => !last?.corrects?.includes(id))).toEqual([]);
      }),
      often,
    );
  });
});

/** Every id that a state shows. */
function shown(state: SiteState): string[] {
  const { pieces, ...lists } = state;
  return [
    ...pieces
      .marks()
      .flatMap((mark) => Object.values(pieces.of(mark)?.ticks ?? {}))
      .flatMap((list) => list.map(({ id }) => id)),
    ...Object.values(lists).flatMap((list) => list.map(({ id }) => id)),
  ];
}

/** Decision 20, read sentence by sentence and with no thought of speed. */
function byDefinition(entries: readonly Entry[]): string[] {
  return entries
    .filter(({ kind }) => kind !== "undone" && kind !== "settled")
    .filter(
      ({ id, kind }) =>
        !entries.some(
          (other) => other.corrects?.includes(id) && (other.kind === kind || other.kind === "undone"),
        ),
    )
    .map(({ id }) => id);
}
