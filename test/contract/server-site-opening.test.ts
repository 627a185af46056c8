/** A journal as pages open it: what was put by with the entries since comes to what all entries come to, and losing it loses nothing. */
import { join } from "node:path";
import Sqlite from "better-sqlite3";
import { afterEach, beforeEach, expect, it } from "vitest";
import { siteFolds } from "../../src/server/site/folds.ts";
import type { Entry } from "../../src/site/journal/entry.ts";
import { FOLD_VERSION, foldJournal, type SiteState } from "../../src/site/journal/fold.ts";
import { foldOf, type Opening } from "../../src/site/journal/opening.ts";
import type { Store } from "../../src/store/store.ts";
import { DEVICES, plain, told } from "../helpers/journal.ts";
import { describeWithStore, ID, type StoreFolder, storeFolder } from "../helpers/store.ts";

let place: StoreFolder;
beforeEach(() => {
  place = storeFolder();
});
afterEach(() => place.clear());

const by = { who: "Ben", time: "2026-05-04T06:00:00.000Z" };

/** Ticks of three phones, of which every tenth takes another back. */
const entries: readonly Entry[] = Array.from({ length: 2600 }, (_, n) => {
  const [device, count] = [n % 3, Math.floor(n / 3) + 1];
  const back = { kind: "undone", place: {}, body: {}, corrects: [`${DEVICES[device]}-${count - 2}`] };
  return told(count, n % 10 === 9 ? back : { place: { piece: `F-S${n % 400}` } }, device);
});

async function append(store: Store, from: number, to: number): Promise<void> {
  await store.journal.append(ID, entries.slice(from, to), by);
  await siteFolds(store).came(ID, to);
}

const text = ({ bytes }: { bytes: Uint8Array }): unknown => JSON.parse(new TextDecoder().decode(bytes));
const opening = async (store: Store) => text(await siteFolds(store).opening(ID)) as Opening;
const stateOf = async (store: Store) => text(await siteFolds(store).state(ID)) as { state: unknown };

const stated = (found: Opening) => {
  const state = foldOf(found)?.state();
  return state && plain(state);
};

/** As the server tells it: of a piece its stage. */
function said(state: SiteState) {
  const { stages, ...others } = plain(state);
  const pieces = Object.entries(stages).map(([mark, stage]) => [mark, { stage }]);
  return { ...others, pieces: Object.fromEntries(pieces) };
}

describeWithStore("a journal that is opened", () => {
  it("gives what it came to and the entries since, never more than a page of them", async () => {
    const store = await place.open();
    for (let n = 0; n < entries.length; n += 200) {
      await append(store, n, n + 200);
      const found = await opening(store);
      const all = entries.slice(0, n + 200);
      expect(found.latest).toBe(all.length);
      expect(found.entries.length).toBeLessThanOrEqual(1000);
      expect((found.folded?.latest ?? 0) + found.entries.length).toBe(all.length);
      expect(stated(found)).toEqual(plain(foldJournal(all)));
    }
    expect((await opening(store)).folded?.latest).toBeGreaterThan(2000);
  });

  it("is opened by a server that has just begun from what another put by, and reckoned on", async () => {
    const store = await place.open();
    await append(store, 0, 2000);
    store.close();
    const again = await place.open();
    expect(await again.journal.fold(ID, FOLD_VERSION)).toMatchObject({ number: 2000 });
    await append(again, 2000, 2600);
    expect(await stateOf(again)).toEqual({ latest: 2600, state: said(foldJournal(entries)) });
  });

  it("is the same where nothing was put by, what was is lost, or is another version's", async () => {
    const store = await place.open();
    await store.journal.append(ID, entries, by);
    expect(stated(await opening(store))).toEqual(plain(foldJournal(entries)));
    store.close();
    const database = new Sqlite(join(place.folder, "outerleaf.sqlite"));
    expect(database.prepare("SELECT count(*) FROM folds").pluck().get()).toBe(1);
    for (const mistreat of [
      "DELETE FROM folds",
      "UPDATE folds SET version = version + 1",
      // What was put by of another journal: its last entry is none of this one.
      "UPDATE folds SET count = count + 1",
    ]) {
      database.exec(mistreat);
      const again = await place.open();
      expect(await again.journal.fold(ID, FOLD_VERSION)).toBeUndefined();
      expect(stated(await opening(again))).toEqual(plain(foldJournal(entries)));
      expect((await stateOf(again)).state).toEqual(said(foldJournal(entries)));
      expect(await again.journal.fold(ID, FOLD_VERSION)).toMatchObject({ number: 2600 });
      again.close();
    }
    database.close();
  });

  it("of another version is not taken up by a page", () => {
    const folded = { version: FOLD_VERSION + 1, latest: 0 } as Opening["folded"];
    expect(foldOf({ folded, entries: [], latest: 0 })).toBeUndefined();
  });
});
