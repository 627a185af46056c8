/**
 * What this phone knows of a journal, with what still waits here. It is put by folded, with the entries since, so that pages open
 * as fast after a year on site as on the first day.
 */
import { createFold, FOLD_VERSION, type Fold, type SiteState } from "../../../site/journal/fold.ts";
import { foldedAt, foldOf, type Opening } from "../../../site/journal/opening.ts";
import { answerOf, transact } from "./database.ts";
import { fetchJournal, fetchOpening, PAGE } from "./journal-api.ts";
import type { KnownEntry } from "./kept-queue.ts";
import type { Waiting } from "./model.ts";
import type { Rest } from "./send-waiting.ts";

/** What was put by under another version of the fold is none of ours: it is asked for anew. */
const keysOf = (project: string) => ({
  /** Number up to which all entries are known. */
  whole: `whole ${project} ${FOLD_VERSION}`,
  /** Number up to which they are put by folded. */
  folded: `folded ${project} ${FOLD_VERSION}`,
  fold: `fold ${project} ${FOLD_VERSION}`,
});

/** As text: a browser copies it sooner than what it tells. */
interface PutBy {
  /** Number up to which it is folded. */
  readonly latest: number;
  /** An `Opening`, as JSON. */
  readonly text: string;
}

export interface SiteLook {
  readonly state: SiteState;
  /** Refused ones among them, which do not count in the state. */
  readonly waiting: readonly Waiting[];
}

export interface KnownSite {
  /** As it stands on the phone; the same state again where nothing changed. Rejects where the browser keeps nothing. */
  look(): Promise<SiteLook>;
  /** Fetches what others told. */
  news(): Promise<Rest>;
}

const sites = new Map<string, KnownSite>();

/** One for all that ask: what was read is not read again. */
export function knownSite(project: string): KnownSite {
  const known = sites.get(project) ?? createKnownSite(project);
  sites.set(project, known);
  return known;
}

function createKnownSite(project: string): KnownSite {
  const keys = keysOf(project);
  let fold: Fold | undefined;
  let state: SiteState | undefined;
  /** Number up to which all entries are in the fold. */
  let whole = 0;
  /** Places in the queue of what was folded before the server had it. */
  const early = new Set<number>();

  const lookNow = async (): Promise<SiteLook> => {
    const found = await transact(["queue", "journal", "device", "held"], "readonly", async (within) => {
      const device = within.objectStore("device");
      const journal = within.objectStore("journal");
      const entriesAfter = (number: number) => answerOf(journal.getAll(rangeAfter(project, number)));
      const putBy = () => answerOf(within.objectStore("held").get(keys.fold));
      const isFirst = fold === undefined;
      // All in one breath: a page that is busy beginning would hear each answer late.
      const [waiting, folded, known, entries, first] = await Promise.all([
        answerOf(within.objectStore("queue").getAll()) as Promise<Waiting[]>,
        numberOf(device, keys.folded),
        numberOf(device, keys.whole),
        entriesAfter(isFirst ? 0 : whole) as Promise<KnownEntry[]>,
        (isFirst ? putBy() : undefined) as Promise<PutBy> | undefined,
      ]);
      const found = { waiting, whole: known };
      const isOther = waiting.some(({ place, refused }) => refused !== undefined && early.has(place));
      if (isFirst) return { ...found, isAnew: true, putBy: first, entries };
      if (folded <= whole && !isOther) return { ...found, isAnew: false, putBy: undefined, entries };
      const again = (await putBy()) as PutBy | undefined;
      const since = (await entriesAfter(again?.latest ?? 0)) as KnownEntry[];
      return { ...found, isAnew: true, putBy: again, entries: since };
    });
    const own = found.waiting.filter((one) => one.project === project && one.refused === undefined);
    if (found.isAnew) {
      fold = foldFrom(found.putBy);
      state = undefined;
      early.clear();
    }
    const fresh = own.filter(({ place }) => !early.has(place));
    if (fold && found.entries.length + fresh.length > 0) {
      fold.add([...found.entries, ...fresh].map(({ entry }) => entry));
      state = undefined;
    }
    for (const { place } of fresh) early.add(place);
    whole = found.whole;
    state ??= (fold ?? createFold()).state();
    return { state, waiting: found.waiting };
  };

  const news = async (): Promise<Rest> => {
    for (let mayOpen = true; ; ) {
      const known = await knownNumbers(project);
      const answer = await fetchJournal(project, known.whole);
      if (answer.kind !== "done") return restOf(answer.kind);
      const { entries, latest } = answer.done;
      const last = entries.at(-1)?.number ?? known.whole;
      if (last < latest && mayOpen) {
        // Far behind: what it came to meanwhile is less to fetch than all that led there.
        const opened = await fetchOpening(project);
        if (opened.kind !== "done") return restOf(opened.kind);
        const opening = JSON.parse(opened.done) as Opening;
        mayOpen = opening.folded === null || opening.folded.version === FOLD_VERSION;
        if (mayOpen) {
          await putBy(project, { latest: opening.latest, text: opened.done });
          continue;
        }
      }
      if (entries.length > 0) await keepJournal(project, entries, last);
      if (last - known.folded >= PAGE) await foldOn(project);
      if (entries.length === 0 || last >= latest) return "empty";
    }
  };

  let looking: Promise<unknown> = Promise.resolve();
  return {
    look: () => {
      // One after another, for they go on from what the last one found.
      const next = looking.then(lookNow, lookNow);
      looking = next;
      return next;
    },
    news,
  };
}

function restOf(kind: "away" | "signed-out" | "refused"): Rest {
  return kind === "refused" ? "away" : kind;
}

function foldFrom(putBy: PutBy | undefined): Fold {
  return (putBy && foldOf(JSON.parse(putBy.text) as Opening)) ?? createFold();
}

/** Puts by what the known entries come to, without what waits: that may still be refused. */
async function foldOn(project: string): Promise<void> {
  const keys = keysOf(project);
  const { held, entries, whole } = await transact(
    ["journal", "device", "held"],
    "readonly",
    async (within) => {
      const held = (await answerOf(within.objectStore("held").get(keys.fold))) as PutBy | undefined;
      const range = rangeAfter(project, held?.latest ?? 0);
      const entries = (await answerOf(within.objectStore("journal").getAll(range))) as KnownEntry[];
      return { held, entries, whole: await numberOf(within.objectStore("device"), keys.whole) };
    },
  );
  const fold = foldFrom(held);
  fold.add(entries.map(({ entry }) => entry));
  const opening: Opening = { folded: foldedAt(whole, fold), entries: [], latest: whole };
  await putBy(project, { latest: whole, text: JSON.stringify(opening) });
}

/** In place of the entries that it is made of. */
function putBy(project: string, { latest, text }: PutBy): Promise<void> {
  const keys = keysOf(project);
  return transact(["journal", "device", "held"], "readwrite", async (within) => {
    const device = within.objectStore("device");
    // Another window may be further on.
    if ((await numberOf(device, keys.folded)) >= latest) return;
    const whole = await numberOf(device, keys.whole);
    const held = within.objectStore("held");
    held.delete(IDBKeyRange.bound(`fold ${project}`, `fold ${project}\uffff`));
    held.put({ latest, text } satisfies PutBy, keys.fold);
    within.objectStore("journal").delete(IDBKeyRange.bound([project, 0], [project, latest]));
    device.put(latest, keys.folded);
    device.put(Math.max(whole, latest), keys.whole);
  });
}

function keepJournal(project: string, entries: readonly KnownEntry[], whole: number): Promise<void> {
  return transact(["journal", "device"], "readwrite", async (within) => {
    const journal = within.objectStore("journal");
    for (const one of entries) journal.put(one, [project, one.number]);
    within.objectStore("device").put(whole, keysOf(project).whole);
  });
}

function knownNumbers(project: string): Promise<{ readonly whole: number; readonly folded: number }> {
  const keys = keysOf(project);
  return transact(["device"], "readonly", async (within) => {
    const device = within.objectStore("device");
    return {
      whole: await numberOf(device, keys.whole),
      folded: await numberOf(device, keys.folded),
    };
  });
}

async function numberOf(device: IDBObjectStore, key: string): Promise<number> {
  return ((await answerOf(device.get(key))) as number | undefined) ?? 0;
}

function rangeAfter(project: string, number: number): IDBKeyRange {
  return IDBKeyRange.bound([project, number], [project, Number.MAX_SAFE_INTEGER], true);
}
