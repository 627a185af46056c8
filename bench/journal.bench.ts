/**
 * How long the journal of a site takes to open once it has grown: a thousand entries beside a hundred thousand, as a year on a
 * large building comes to; what the server answers, and how soon pages show it in a browser. The server answers in this process,
 * so no network is counted. Pages need `npm run build` first.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext } from "playwright-core";
import { createApp } from "../src/server/app.ts";
import { diskFiles } from "../src/server/files.ts";
import { siteFolds } from "../src/server/site/folds.ts";
import type { Entry } from "../src/site/journal/entry.ts";
import { foldJournal } from "../src/site/journal/fold.ts";
import { openStore } from "../src/store/open.ts";
import type { Store } from "../src/store/store.ts";
import { servedPage } from "./served-page.ts";

const PROJECT = "0123456789abcdef01234567";
const SIZES = [1000, 100_000] as const;
const ROUNDS = 7;
const BATCH = 1000;

/** Milliseconds until what a page should show counts as absent. */
const PATIENCE = 180_000;

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

/** Milliseconds: the median, and the least in brackets, which other programs' work hardly reaches. */
function summed(times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  return `${(sorted[times.length >> 1] ?? 0).toFixed(1)} (${(sorted[0] ?? 0).toFixed(1)})`;
}

async function timed(work: (round: number) => unknown, rounds = ROUNDS): Promise<string> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    await work(round);
    times.push(performance.now() - start);
  }
  return summed(times);
}

async function filled(folder: string, size: number, project = PROJECT): Promise<Store> {
  const opened = await openStore(folder);
  if (!opened.ok) throw new Error(opened.says.key);
  const by = { who: "Ada", time: "2026-05-04T07:30:00.000Z" };
  for (let from = 0; from < size; from += BATCH) {
    const batch = Array.from({ length: Math.min(BATCH, size - from) }, (_, at) => entry(from + at));
    await opened.store.journal.append(project, batch, by);
    await siteFolds(opened.store).came(project, from + batch.length);
  }
  return opened.store;
}

const appOf = (store: Store) =>
  createApp({ files: diskFiles, projectFile: "", documentsDir: "", webDir: "", store });

const rows: Record<string, Record<string, string>> = {};
const row = (what: string, size: number, ms: string): void => {
  rows[what] = { ...rows[what], [`${size} entries`]: ms };
};

async function ofServer(folder: string, size: number): Promise<void> {
  const store = await filled(folder, size);
  const all = Array.from({ length: size }, (_, n) => entry(n));
  row("the fold of all", size, await timed(() => foldJournal(all)));
  const base = `http://127.0.0.1/api/projects/${PROJECT}`;
  const get = async (app: ReturnType<typeof appOf>, path: string): Promise<void> => {
    const answer = await app.request(`${base}${path}`);
    if (answer.status !== 200) throw new Error(`${path} answers ${answer.status}`);
    await answer.arrayBuffer();
  };
  for (const [what, path] of [
    ["as a page opens it", "/site/opening"],
    ["what it comes to", "/site"],
  ] as const) {
    const cold = async (): Promise<void> => {
      // What was reckoned goes with the store; what was put by stays.
      const fresh = await filled(folder, 0);
      await get(appOf(fresh), path);
      fresh.close();
    };
    row(`${what}, first ask of a server`, size, await timed(cold));
    const app = appOf(store);
    await get(app, path);
    row(`${what}, asked again`, size, await timed(() => get(app, path)));
  }
  const app = appOf(store);
  const one = async (round: number): Promise<void> => {
    await store.journal.append(PROJECT, [entry(size + round)], {
      who: "Ben",
      time: "2026-05-05T07:30:00.000Z",
    });
    await get(app, "/site/opening");
  };
  row("as a page opens it, one entry more", size, await timed(one));
  row("its last page of 200", size, await timed(() => get(app, "/journal?limit=200")));
  row(
    "what a phone missed, 200",
    size,
    await timed(() => get(app, `/journal?after=${size - 200}&limit=200`)),
  );
  store.close();
}

/** Runs in the browser: milliseconds from a press, or from the navigation where none is named, until the second frame after something is there. */
function shownAfter([press, shown]: readonly [string | undefined, string]): Promise<number> {
  return new Promise((resolve) => {
    const start = press === undefined ? 0 : performance.now();
    const look = (): boolean => {
      if (!document.querySelector(shown)) return false;
      requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now() - start)));
      return true;
    };
    if (press !== undefined) document.querySelector<HTMLElement>(press)?.click();
    if (look()) return;
    const seen = new MutationObserver(() => look() && seen.disconnect());
    seen.observe(document, { childList: true, subtree: true, characterData: true });
  });
}

/** The day page tells of marks that no piece bears: the journal has come to it. */
const JOURNAL_THERE = ".site-main > p.warn";

async function dayOf(context: BrowserContext, url: string): Promise<number> {
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  await page.goto(`${url}site.html#day`, { waitUntil: "commit" });
  const ms = await page.evaluate(shownAfter, [undefined, JOURNAL_THERE] as const);
  // What others told is put by before the page goes.
  await page.locator(".site-head a", { hasText: "all sent" }).waitFor();
  await page.close();
  return ms;
}

async function turned(context: BrowserContext, url: string): Promise<string> {
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  await page.goto(`${url}site.html#day`);
  await page.locator(JOURNAL_THERE).waitFor();
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    await page.evaluate(() => location.assign("#holds"));
    await page.locator(JOURNAL_THERE).waitFor({ state: "detached" });
    times.push(await page.evaluate(shownAfter, ["a[href='#day']", JOURNAL_THERE] as const));
  }
  await page.close();
  return summed(times);
}

/** From the press on a part of the workbench until it shows what the journal came to. */
async function deskPart(browser: Browser, url: string, part: string, shown: string): Promise<number> {
  const page = await browser.newPage({ viewport: { width: 1680, height: 1050 } });
  page.setDefaultTimeout(PATIENCE);
  await page.goto(url);
  await page.locator(".drawing-host [data-of]").first().waitFor({ state: "attached" });
  await page.waitForTimeout(1500);
  const place = page.locator(".part", { hasText: part });
  // A hand comes from somewhere before it presses.
  await page.mouse.move(400, 300);
  await place.hover();
  const press = await place.evaluate((one) => {
    one.id = "bench-part";
    return "#bench-part";
  });
  const ms = await page.evaluate(shownAfter, [press, shown] as const);
  await page.close();
  return ms;
}

async function ofPages(folder: string, size: number): Promise<void> {
  const opened = await openStore(folder);
  if (!opened.ok) throw new Error(opened.says.key);
  const { serving, browser } = await servedPage(undefined, opened.store);
  const answer = await fetch(`${serving.url}api/design`, { method: "HEAD" });
  (await filled(folder, size, answer.headers.get("Outerleaf-Kept-As") ?? "")).close();
  const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
  const first = async (): Promise<number> => {
    const context = await browser.newContext(phone);
    const ms = await dayOf(context, serving.url);
    await context.close();
    return ms;
  };
  const measured = async (work: () => Promise<number>): Promise<string> => {
    const times: number[] = [];
    for (let round = 0; round < ROUNDS; round++) times.push(await work());
    return summed(times);
  };
  row("phone, the day: a phone's first visit, from the address", size, await measured(first));
  const context = await browser.newContext(phone);
  await dayOf(context, serving.url);
  row(
    "phone, the day: opened again, from the address",
    size,
    await measured(() => dayOf(context, serving.url)),
  );
  row("phone, the day: from another page", size, await turned(context, serving.url));
  await context.close();
  for (const [part, shown] of [
    ["Site", ".progress-journal li"],
    ["Survey", ".survey-map svg"],
    ["Upkeep", ".upkeep-told table"],
  ] as const) {
    const press = () => deskPart(browser, serving.url, part, shown);
    row(`desk, ${part}: from the press`, size, await measured(press));
  }
  await browser.close();
  await serving.close();
  opened.store.close();
}

for (const size of SIZES) {
  for (const work of [ofServer, ofPages]) {
    const folder = mkdtempSync(join(tmpdir(), "outerleaf-bench-"));
    await work(folder, size);
    rmSync(folder, { recursive: true, force: true });
  }
}
console.table(rows);
