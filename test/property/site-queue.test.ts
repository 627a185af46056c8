/** The phone's queue against a network that drops, repeats and goes away: nothing lost, nothing doubled, the order kept. */
import fc from "fast-check";
import { expect, it } from "vitest";
import type { Entry } from "../../src/site/journal/entry.ts";
import { pause } from "../../src/web/site/queue/keep-sending.ts";
import type { Answer, EntryAnswer, Line, QueueStore, Waiting } from "../../src/web/site/queue/model.ts";
import { photosOf } from "../../src/web/site/queue/model.ts";
import { sendWaiting } from "../../src/web/site/queue/send-waiting.ts";
import { PHOTO, told } from "../helpers/journal.ts";

const whys = { other: "another has this number", unusable: (field: string) => `cannot read ${field}` };

interface Phone extends QueueStore {
  readonly queue: Waiting[];
  readonly arrivedNumbers: Map<string, number>;
  readonly unsentPhotos: Set<string>;
  renamed: number;
}

function phone(entries: readonly Entry[], projects: readonly string[] = ["a"]): Phone {
  const queue = entries.map(
    (entry, place): Waiting => ({ place, project: projects[place % projects.length] as string, entry }),
  );
  const at = ({ place }: Waiting): number => queue.findIndex((one) => one.place === place);
  return {
    queue,
    arrivedNumbers: new Map(),
    unsentPhotos: new Set(entries.flatMap(photosOf)),
    renamed: 0,
    waiting: async () => [...queue],
    async arrived(waiting, number) {
      queue.splice(at(waiting), 1);
      this.arrivedNumbers.set(waiting.entry.id, number);
    },
    async refused(waiting, why) {
      queue[at(waiting)] = { ...waiting, refused: why };
    },
    async renameDevice() {
      this.renamed += 1;
    },
    async photoToSend(sha256) {
      return this.unsentPhotos.has(sha256) ? new Blob([sha256]) : undefined;
    },
    async photoArrived(sha256) {
      this.unsentPhotos.delete(sha256);
    },
  };
}

type Fate = "ok" | "unreached" | "answer lost";

interface Server extends Line {
  readonly kept: { project: string; entry: Entry }[];
  readonly pictures: string[];
}

/** @param bad ids that it will never take: a request that holds one is refused whole, as ours does */
function server(fates: readonly Fate[], bad: ReadonlySet<string> = new Set()): Server {
  let nth = 0;
  const through = <Done>(work: () => Answer<Done>): Answer<Done> => {
    const fate = fates[nth] ?? "ok";
    nth += 1;
    if (fate === "unreached") return { kind: "away" };
    const answer = work();
    return fate === "answer lost" ? { kind: "away" } : answer;
  };
  const kept: Server["kept"] = [];
  const pictures: string[] = [];
  return {
    kept,
    pictures,
    send: async (project, entries) =>
      through<readonly EntryAnswer[]>(() => {
        if (entries.some(({ id }) => bad.has(id))) return { kind: "refused", why: "unusable" };
        const done = entries.map((entry): EntryAnswer => {
          const at = kept.findIndex((one) => one.entry.id === entry.id);
          if (at >= 0) return { number: at + 1, kind: "kept" };
          kept.push({ project, entry });
          return { number: kept.length, kind: "fresh" };
        });
        return { kind: "done", done };
      }),
    sendPhoto: async (sha256) =>
      through<true>(() => {
        pictures.push(sha256);
        return { kind: "done", done: true };
      }),
  };
}

const fates = fc.array(fc.constantFrom<Fate>("ok", "unreached", "answer lost"), { maxLength: 30 });

it("every entry is at the server once, in the order told, however often the network fails", async () => {
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 0, max: 130 }), fates, async (count, fate) => {
      const entries = Array.from({ length: count }, (_, i) => told(i + 1));
      const store = phone(entries, ["a", "b"].slice(0, 1 + (count % 2)));
      const line = server(fate);
      let rest = await sendWaiting(store, line, { whys });
      for (let tries = 0; rest !== "empty" && tries <= fate.length; tries++) {
        rest = await sendWaiting(store, line, { whys });
      }
      expect(rest).toBe("empty");
      expect(line.kept.map(({ entry }) => entry.id)).toEqual(entries.map(({ id }) => id));
      expect(store.queue).toEqual([]);
      expect([...store.arrivedNumbers.values()]).toEqual(entries.map((_, i) => i + 1));
    }),
    { numRuns: 60 },
  );
});

it("an entry that is refused is kept with why, and holds up no other", async () => {
  await fc.assert(
    fc.asyncProperty(fc.uniqueArray(fc.integer({ min: 1, max: 70 })), fates, async (wrong, fate) => {
      const entries = Array.from({ length: 70 }, (_, i) => told(i + 1));
      const bad = new Set(wrong.map((nth) => entries[nth - 1]!.id));
      const store = phone(entries);
      const line = server(fate, bad);
      for (let tries = 0; tries <= fate.length; tries++) await sendWaiting(store, line, { whys });
      expect(line.kept.map(({ entry }) => entry.id)).toEqual(
        entries.map(({ id }) => id).filter((id) => !bad.has(id)),
      );
      expect(store.queue.map(({ entry, refused }) => [entry.id, refused])).toEqual(
        entries.filter(({ id }) => bad.has(id)).map(({ id }) => [id, "unusable"]),
      );
    }),
    { numRuns: 40 },
  );
});

const photo = told(2, { kind: "photo", place: { face: "front" }, body: { photo: PHOTO } });

it("a picture goes before the entry that shows it, once, and waits where the network ends between them", async () => {
  const store = phone([told(1), photo]);
  const line = server(["ok", "unreached"]);
  expect(await sendWaiting(store, line, { whys })).toBe("away");
  expect(line).toMatchObject({ pictures: [PHOTO], kept: [] });
  expect(await sendWaiting(store, line, { whys })).toBe("empty");
  expect(line.pictures).toEqual([PHOTO]);
  expect(line.kept).toHaveLength(2);
});

it("a picture that is refused leaves its entry in the queue with why", async () => {
  const store = phone([photo, told(3)]);
  const line: Line = { ...server([]), sendPhoto: async () => ({ kind: "refused", why: "too large" }) };
  await sendWaiting(store, line, { whys });
  expect(store.queue).toEqual([{ place: 0, project: "a", entry: photo, refused: "too large" }]);
});

it("an entry whose number another has is kept, told so, and the phone takes a new name", async () => {
  const store = phone([told(1), told(2)]);
  const line: Line = {
    ...server([]),
    send: async (_, entries) => ({
      kind: "done",
      done: entries.map((_, i) => (i === 0 ? { kind: "other" } : { kind: "fresh", number: i + 1 })),
    }),
  };
  expect(await sendWaiting(store, line, { whys })).toBe("empty");
  expect(store.queue).toMatchObject([{ place: 0, refused: whys.other }]);
  expect(store.renamed).toBe(1);
});

it("an entry that the server cannot read is kept with the field it names, and those sent with it arrive", async () => {
  const store = phone([told(1), told(2), told(3)]);
  const line: Line = {
    ...server([]),
    send: async (_, entries) => ({
      kind: "done",
      done: entries.map((_, i) =>
        i === 1 ? { kind: "refused", field: "/body/stage" } : { kind: "fresh", number: i + 1 },
      ),
    }),
  };
  expect(await sendWaiting(store, line, { whys })).toBe("empty");
  expect(store.queue).toMatchObject([{ entry: told(2), refused: "cannot read /body/stage" }]);
});

it("signed out, nothing is refused and nothing leaves", async () => {
  const store = phone([told(1)]);
  const line: Line = { ...server([]), send: async () => ({ kind: "signed-out" }) };
  expect(await sendWaiting(store, line, { whys })).toBe("signed-out");
  expect(store.queue).toMatchObject([{ entry: told(1) }]);
  expect(store.queue[0]).not.toHaveProperty("refused");
});

it("a server that answers for none of what was sent is left alone until the next try", async () => {
  const store = phone([told(1)]);
  const line: Line = { ...server([]), send: async () => ({ kind: "done", done: [] }) };
  expect(await sendWaiting(store, line, { whys })).toBe("away");
  expect(store.queue).toHaveLength(1);
});

it("the pause doubles up to a minute, spread by half", () => {
  expect([1, 2, 3].map((nth) => pause(nth, 1))).toEqual([1000, 2000, 4000]);
  expect(pause(3, 0)).toBe(2000);
  expect(pause(40, 1)).toBe(60_000);
});
