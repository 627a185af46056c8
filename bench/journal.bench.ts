/**
 * How long the journal of a site takes to open once it has grown: a thousand entries beside a hundred thousand, as a year on a
 * large building comes to. The server answers in this process, so no network is counted; times are medians.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createApp } from "../src/server/app.ts";
import { diskFiles } from "../src/server/files.ts";
import type { Entry } from "../src/site/journal/entry.ts";
import { foldJournal } from "../src/site/journal/fold.ts";
import { openStore } from "../src/store/open.ts";
import type { Store } from "../src/store/store.ts";

const PROJECT = "0123456789abcdef01234567";
const SIZES = [1000, 100_000] as const;
const ROUNDS = 7;
const BATCH = 1000;

const STAGES = ["cut", "finished", "fixed"] as const;
const PHONES = Array.from({ length: 20 }, (_, phone) => phone.toString(16).padStart(16, "0"));

/** The nth entry: nine of ten are ticks, as of 30,000 pieces three times each; the rest readings, notes and what takes back. */
function entry(n: number): Entry {
  const id = `${PHONES[n % PHONES.length]}-${Math.floor(n / PHONES.length) + 1}`;
  const common = { id, told: "2026-05-04T07:30:00Z" };
  if (n % 40 === 39) {
    return {
      ...common,
      kind: "undone",
      place: {},
      body: {},
      corrects: [entry(n - 20).id],
    } as unknown as Entry;
  }
  if (n % 20 === 7) {
    const place = { face: "front", x: 610 * (n % 30), y: 800 * (n % 9) };
    return { ...common, kind: "reading", place, body: { outward: (n % 17) - 8 } } as unknown as Entry;
  }
  if (n % 40 === 13) {
    return {
      ...common,
      kind: "note",
      place: { face: "front" },
      body: { says: `lap ${n}` },
    } as unknown as Entry;
  }
  const place = { face: "front", piece: `F-S${n % 30_000}` };
  return {
    ...common,
    kind: "piece",
    place,
    body: { stage: STAGES[Math.floor(n / 30_000) % 3] },
  } as unknown as Entry;
}

function median(times: readonly number[]): number {
  return Number(([...times].sort((a, b) => a - b)[times.length >> 1] ?? 0).toFixed(1));
}

async function timed(work: (round: number) => unknown, rounds = ROUNDS): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    await work(round);
    times.push(performance.now() - start);
  }
  return median(times);
}

async function filled(folder: string, size: number): Promise<Store> {
  const opened = await openStore(folder);
  if (!opened.ok) throw new Error(opened.says.key);
  const by = { who: "Ada", time: "2026-05-04T07:30:00.000Z" };
  for (let from = 0; from < size; from += BATCH) {
    const batch = Array.from({ length: Math.min(BATCH, size - from) }, (_, at) => entry(from + at));
    await opened.store.journal.append(PROJECT, batch, by);
  }
  return opened.store;
}

const serve = (store: Store) =>
  createApp({ files: diskFiles, projectFile: "", documentsDir: "", webDir: "", store });

const rows: Record<string, Record<string, number>> = {};
const row = (what: string, size: number, ms: number): void => {
  rows[what] = { ...rows[what], [`${size} entries`]: ms };
};

for (const size of SIZES) {
  const folder = mkdtempSync(join(tmpdir(), "outerleaf-bench-"));
  const store = await filled(folder, size);
  const all = Array.from({ length: size }, (_, n) => entry(n));
  row("the fold of all", size, await timed(() => foldJournal(all)));
  const base = `http://127.0.0.1/api/projects/${PROJECT}`;
  const get = async (app: ReturnType<typeof serve>, path: string): Promise<void> => {
    const answer = await app.request(`${base}${path}`);
    if (answer.status !== 200) throw new Error(`${path} answers ${answer.status}`);
    await answer.arrayBuffer();
  };
  row(
    "what it comes to, first ask of a server",
    size,
    await timed(async () => {
      // What was reckoned goes with the store: each of these reads the journal through.
      const fresh = await filled(folder, 0);
      await get(serve(fresh), "/site");
      fresh.close();
    }, 3),
  );
  const app = serve(store);
  await get(app, "/site");
  row("what it comes to, asked again", size, await timed(() => get(app, "/site")));
  const one = async (round: number): Promise<void> => {
    await store.journal.append(PROJECT, [entry(size + round)], {
      who: "Ben",
      time: "2026-05-05T07:30:00.000Z",
    });
    await get(app, "/site");
  };
  row("what it comes to, one entry more", size, await timed(one));
  row("its last page of 200", size, await timed(() => get(app, "/journal?limit=200")));
  row(
    "what a phone missed, 200",
    size,
    await timed(() => get(app, `/journal?after=${size - 200}&limit=200`)),
  );
  store.close();
  rmSync(folder, { recursive: true, force: true });
}
console.table(rows);
