/** What a phone knows of a journal, in a browser's database in memory: the same as all entries come to, whatever was put by and however it was told. */
import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import type { Entry } from "../../src/site/journal/entry.ts";
import { createFold, FOLD_VERSION, foldJournal } from "../../src/site/journal/fold.ts";
import { foldedAt, type Opening } from "../../src/site/journal/opening.ts";
import { DEVICES, plain, told } from "../helpers/journal.ts";
import { ID } from "../helpers/store.ts";

type Queue = typeof import("../../src/web/site/queue/kept-queue.ts");
type Known = typeof import("../../src/web/site/queue/known-site.ts");

const entries: readonly Entry[] = Array.from({ length: 3500 }, (_, n) => {
  const [device, count] = [n % 3, Math.floor(n / 3) + 1];
  const back = { kind: "undone", place: {}, body: {}, corrects: [`${DEVICES[device]}-${count - 2}`] };
  return told(count, n % 10 === 9 ? back : { place: { piece: `F-S${n % 400}` } }, device);
});

/** A server that has so many entries; it has folded all but the last of them. */
let length = 0;
let version = FOLD_VERSION;
let asked: string[] = [];

function answer(address: string): unknown {
  asked.push(address.replace(/.*projects\/[0-9a-f]+\//, ""));
  const numbered = entries
    .slice(0, length)
    .map((entry, at) => ({ number: at + 1, who: "", time: "", entry }));
  if (address.endsWith("/opening")) {
    const fold = createFold();
    fold.add(entries.slice(0, length - 1));
    const folded = { ...foldedAt(length - 1, fold), version };
    return { folded, entries: numbered.slice(-1), latest: length } satisfies Opening;
  }
  const after = Number(new URL(address, "http://127.0.0.1").searchParams.get("after"));
  return { entries: numbered.slice(after, after + 1000), latest: length };
}

/** The page's programs as a browser loads them anew: nothing is remembered but what is in its database. */
async function opened(): Promise<{ queue: Queue; known: ReturnType<Known["knownSite"]> }> {
  vi.resetModules();
  const queue = await import("../../src/web/site/queue/kept-queue.ts");
  const { knownSite } = await import("../../src/web/site/queue/known-site.ts");
  return { queue, known: knownSite(ID) };
}

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
  vi.stubGlobal("fetch", async (address: string) => Response.json(answer(address)));
  [length, version, asked] = [0, FOLD_VERSION, []];
});
afterEach(() => vi.unstubAllGlobals());

const tick = { kind: "piece", place: { face: "front", piece: "F-S7" }, body: { stage: "fixed" } } as const;

it("comes far behind to what was folded for it, and then goes on entry by entry", async () => {
  const { known } = await opened();
  length = 2500;
  expect(await known.news()).toBe("empty");
  expect(plain((await known.look()).state)).toEqual(plain(foldJournal(entries.slice(0, 2500))));
  expect(asked).toEqual(["journal?after=0&limit=1000", "site/opening", "journal?after=2500&limit=1000"]);
  const before = (await known.look()).state;
  expect((await known.look()).state).toBe(before);
  length = 2600;
  await known.news();
  expect(plain((await known.look()).state)).toEqual(plain(foldJournal(entries.slice(0, 2600))));
  expect(asked.slice(3)).toEqual(["journal?after=2500&limit=1000"]);
});

it("is the same in a page that is opened again, in one that stayed open, and in one that other windows fetched for", async () => {
  const stayed = await opened();
  for (const next of [300, 700, 1300, 1900, 2500, 3500]) {
    length = next;
    const other = await opened();
    await other.known.news();
    const all = plain(foldJournal(entries.slice(0, next)));
    expect(plain((await other.known.look()).state)).toEqual(all);
    expect(plain((await stayed.known.look()).state)).toEqual(all);
    expect(plain((await (await opened()).known.look()).state)).toEqual(all);
  }
  // Every thousand entries are folded and go; what is left is read in one breath.
  const { answerOf, transact } = await import("../../src/web/site/queue/database.ts");
  const left = await transact(["journal"], "readonly", (within) =>
    answerOf(within.objectStore("journal").count()),
  );
  expect(left).toBeLessThan(1000);
});

it("counts what waits from the moment it is told, once, also when it has arrived among others' entries", async () => {
  const { queue, known } = await opened();
  length = 400;
  await known.news();
  await queue.tell(ID, tick);
  const { state, waiting } = await known.look();
  const own = waiting[0]!;
  expect(plain(state)).toEqual(plain(foldJournal([...entries.slice(0, 400), own.entry])));
  // The server has it as the 900th; between lie entries that are not known here yet.
  await queue.keptQueue.arrived(own, 900);
  expect(plain((await known.look()).state)).toEqual(plain(state));
  length = 700;
  await known.news();
  expect(plain((await known.look()).state)).toEqual(
    plain(foldJournal([...entries.slice(0, 700), own.entry])),
  );
  expect(plain((await (await opened()).known.look()).state)).toEqual(plain((await known.look()).state));
});

it("counts no longer what the server refused, and what waits is never folded away with the rest", async () => {
  const { queue, known } = await opened();
  await queue.tell(ID, tick);
  const [own] = (await known.look()).waiting;
  length = 1000;
  await known.news();
  length = 2000;
  await known.news();
  expect(plain((await known.look()).state)).toEqual(
    plain(foldJournal([...entries.slice(0, 2000), own!.entry])),
  );
  await queue.keptQueue.refused(own!, "another has this number");
  expect(await known.look()).toMatchObject({ waiting: [{ refused: "another has this number" }] });
  expect(plain((await known.look()).state)).toEqual(plain(foldJournal(entries.slice(0, 2000))));
});

it("reads all entries where the server's fold is of another version than its own", async () => {
  const { known } = await opened();
  [length, version] = [2500, FOLD_VERSION + 1];
  await known.news();
  expect(plain((await known.look()).state)).toEqual(plain(foldJournal(entries.slice(0, 2500))));
  expect(asked.filter((one) => one === "site/opening")).toHaveLength(1);
});
