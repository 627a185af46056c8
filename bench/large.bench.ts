/**
 * A building of sixty faces on the page: how long a frame takes while the wheel zooms in and out, and from an edit's press to
 * the facade painted with it; beside both the time between two frames of the same page at rest. `npm run build` first.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { printProject } from "../src/project/print.ts";
import { manyFaces } from "./buildings.ts";
import { servedPage } from "./served-page.ts";

const FACES = 60;
const WHEELS = 60;
/** Milliseconds between two turns of the wheel. */
const BEAT = 16;
const REST = 1500;
const EDITS = 20;

/** Runs in the browser: times between frames until told to stop. */
function noteFrames(): void {
  const own = { times: [] as number[], stop: false };
  (globalThis as unknown as { frames: typeof own }).frames = own;
  let last = performance.now();
  const frame = (): void => {
    const now = performance.now();
    own.times.push(now - last);
    last = now;
    if (!own.stop) requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

async function framesWhile(page: Page, work: () => Promise<void>): Promise<number[]> {
  await page.evaluate(noteFrames);
  await work();
  return page.evaluate(() => {
    const own = (globalThis as unknown as { frames: { times: number[]; stop: boolean } }).frames;
    own.stop = true;
    return own.times.slice(1);
  });
}

/** Runs in the browser: presses undo or redo, and waits for the frame in which the drawing is new. */
function pressed(key: string): Promise<number> {
  const host = document.querySelector(".drawing-host");
  if (!host) throw new Error("nothing is drawn");
  return new Promise((resolve) => {
    const began = performance.now();
    const channel = new MessageChannel();
    // A message sent from a frame's callback arrives when the frame has been painted.
    channel.port1.onmessage = () => resolve(performance.now() - began);
    const seen = new MutationObserver(() => {
      seen.disconnect();
      requestAnimationFrame(() => channel.port2.postMessage(0));
    });
    seen.observe(host, { childList: true, subtree: true });
    window.dispatchEvent(new KeyboardEvent("keydown", { key, ctrlKey: true }));
  });
}

function summed(times: readonly number[]) {
  const sorted = [...times].sort((a, b) => a - b);
  const share = (part: number): number =>
    Number((sorted[Math.floor(part * (sorted.length - 1))] ?? 0).toFixed(1));
  return { count: times.length, medianMs: share(0.5), p95Ms: share(0.95), mostMs: share(1) };
}

const folder = mkdtempSync(join(tmpdir(), "outerleaf-bench-"));
const projectFile = join(folder, "sixty.outerleaf.json");
writeFileSync(projectFile, printProject(manyFaces(FACES)));
const { serving, browser } = await servedPage(projectFile);
const page = await (await browser.newContext({ viewport: { width: 1680, height: 1050 } })).newPage();
await page.goto(serving.url);
const host = page.locator(".drawing-host");
const drawn = page.locator('.drawing-host [data-of="w2"]').first();
await drawn.waitFor({ state: "attached" });
await page.waitForTimeout(REST);
const rest = await framesWhile(page, () => page.waitForTimeout(REST));
const box = await host.boundingBox();
if (!box) throw new Error("nothing is drawn");
const middle = [box.x + box.width / 2, box.y + box.height / 2] as const;
const zoom = await framesWhile(page, async () => {
  await page.mouse.move(...middle);
  for (let i = 0; i < WHEELS; i++) {
    await page.mouse.wheel(0, i < WHEELS / 2 ? -60 : 60);
    await page.waitForTimeout(BEAT);
  }
});
await page.waitForTimeout(REST);
const window1 = await drawn.boundingBox();
if (!window1) throw new Error("the window is not drawn");
await page.mouse.click(window1.x + window1.width / 2, window1.y + window1.height / 2);
const left = page.locator(".place-fields input").first();
await left.fill("1240");
await left.press("Enter");
await page.waitForTimeout(REST);
const edits: number[] = [];
for (let i = 0; i < EDITS; i++) {
  edits.push(await page.evaluate(pressed, i % 2 === 0 ? "z" : "y"));
  await page.waitForTimeout(REST / 2);
}
console.table({ "frames at rest": summed(rest), "frames of a zoom": summed(zoom), "an edit": summed(edits) });
await browser.close();
await serving.close();
rmSync(folder, { recursive: true, force: true });
