/**
 * How long the built page takes from the address to a drawn facade, in a fresh browser profile each time, and beside it
 * a page of the same server with nothing on it. `npm run build` first.
 */
import type { Browser } from "playwright-core";
import { servedPage } from "./served-page.ts";

const LOADS = 11;

/** A new window is a program's start by itself: it comes to rest before an address is given to it, milliseconds. */
const WINDOW = 1500;

/** Runs in the browser: notes the time of the first frame after something of the project is drawn. */
function noteDrawn(): void {
  const seen = new MutationObserver(() => {
    if (!document.querySelector(".drawing-host [data-of]")) return;
    seen.disconnect();
    requestAnimationFrame(() => requestAnimationFrame(() => performance.mark("drawn")));
  });
  seen.observe(document, { childList: true, subtree: true });
}

async function drawnAfter(browser: Browser, url: string): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1680, height: 1050 } });
  const page = await context.newPage();
  await page.addInitScript(noteDrawn);
  await page.waitForTimeout(WINDOW);
  await page.goto(url);
  await page.waitForFunction(() => performance.getEntriesByName("drawn").length > 0);
  const ms = await page.evaluate(() => performance.getEntriesByName("drawn")[0]?.startTime ?? 0);
  await context.close();
  return ms;
}

async function loadedAfter(browser: Browser, url: string): Promise<number> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.waitForTimeout(WINDOW);
  await page.goto(url);
  const ms = await page.evaluate(
    () => (performance.getEntriesByType("navigation")[0] as PerformanceNavigationTiming).loadEventEnd,
  );
  await context.close();
  return ms;
}

function summed(times: readonly number[]): { medianMs: number; leastMs: number } {
  const sorted = [...times].sort((a, b) => a - b);
  return { medianMs: Math.round(sorted[sorted.length >> 1] ?? 0), leastMs: Math.round(sorted[0] ?? 0) };
}

const { serving, browser } = await servedPage();
const [drawn, empty]: [number[], number[]] = [[], []];
for (let i = 0; i < LOADS; i++) {
  drawn.push(await drawnAfter(browser, serving.url));
  empty.push(await loadedAfter(browser, `${serving.url}icon.svg`));
}
console.table({ "facade drawn": summed(drawn), "empty page": summed(empty) });
await browser.close();
await serving.close();
