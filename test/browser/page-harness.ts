/** The built page, served by our own server, in a browser that reports every word of complaint. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { expect } from "vitest";
import { diskFiles } from "../../src/server/files.ts";
import { type Serving, serve } from "../../src/server/serve.ts";
import type { Store } from "../../src/store/store.ts";

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** Serves one of the examples with the documents of a folder. */
export async function serveExample(
  example: string,
  {
    documentsDir = at("examples"),
    ...more
  }: { documentsDir?: string; store?: Store; port?: number; projectFile?: string; outside?: string } = {},
): Promise<Serving> {
  const serving = await serve({
    files: diskFiles,
    projectFile: at(`examples/${example}.outerleaf.json`),
    documentsDir,
    webDir: at("dist/web"),
    port: 0,
    ...more,
  });
  if (!serving) throw new Error("no port is free");
  return serving;
}

export const exampleFile = (example: string): string => at(`examples/${example}.outerleaf.json`);

export interface OpenPage {
  readonly page: Page;
  /** Errors and warnings of the page, and refusals of its policy. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

/** Milliseconds until something that is waited for counts as absent. */
const PATIENCE = 60_000;

const VIEWPORT = { width: 1680, height: 1050 };

/** Pages that earlier tests closed, and that hold nothing of them. */
const emptied = new WeakMap<Browser, Page[]>();

/**
 * The served page once all of it is there: the elevation, and what is loaded after it.
 * A page that an earlier test closed is used again, since a browser takes thrice as long to set up a new one; a viewport
 * and inks can be given it anew, and all else asks for a page of its own.
 */
export async function openPage(
  browser: Browser,
  { url }: Serving,
  options: BrowserContextOptions = {},
): Promise<OpenPage> {
  const { viewport = VIEWPORT, colorScheme, reducedMotion, ...own } = options;
  const isPlain = Object.keys(own).length === 0;
  const page =
    (isPlain && emptied.get(browser)?.pop()) ||
    (await (await browser.newContext({ viewport, ...own })).newPage());
  page.setDefaultTimeout(PATIENCE);
  if (viewport) await page.setViewportSize(viewport);
  await page.emulateMedia({
    media: null,
    colorScheme: colorScheme ?? "light",
    reducedMotion: reducedMotion ?? "no-preference",
  });
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.goto(url);
  await whole(page);
  return { page, complaints, close: () => (isPlain ? empty(browser, page) : page.context().close()) };
}

/** Takes from a page all that its test kept in it. */
async function empty(browser: Browser, page: Page): Promise<void> {
  for (const event of ["console", "pageerror", "request"]) page.removeAllListeners(event);
  const { origin } = new URL(page.url());
  await page.mouse.move(0, 0);
  await page.goto("about:blank");
  const session = await page.context().newCDPSession(page);
  await session.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
  await session.detach();
  emptied.set(browser, [...(emptied.get(browser) ?? []), page]);
}

/** Something of the project on the drawing: the sheet can be used. */
export const DRAWN = ".drawing-host [data-of]";

/** Waits for the elevation, the notes, and the section and fields that are loaded after them. */
export async function whole(page: Page): Promise<void> {
  for (const part of [DRAWN, ".count", ".section svg", ".facts h2"])
    await page.locator(part).first().waitFor();
}

/** Asks again until the answer is as expected: the page draws when it can, not within a test's next line. */
export const soon = <Value>(ask: () => Value): ReturnType<typeof expect.poll<Value>> =>
  expect.poll(ask, { timeout: PATIENCE, interval: 100 });

/**
 * Where something stands on the page once it has come to rest. The drawing is made anew for its scale a while after the
 * view was moved, so the place must hold twice for longer than that, by the page's own clock.
 */
export async function restingBox(
  page: Page,
  selector: string,
): Promise<{ x: number; y: number; width: number; height: number }> {
  await page.locator(selector).first().waitFor();
  return page.evaluate(async (selected) => {
    const look = () => document.querySelector(selected)?.getBoundingClientRect();
    let [box, held] = [look(), 0];
    while (!box || held < 2) {
      await new Promise((resolve) => setTimeout(resolve, 200));
      await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
      const now = look();
      held = JSON.stringify(now) === JSON.stringify(box) ? held + 1 : 0;
      box = now;
    }
    return { x: box.x, y: box.y, width: box.width, height: box.height };
  }, selector);
}

/** The middle of what is drawn of a thing, pixels of the page. */
export async function middleOf(page: Page, id: string): Promise<readonly [x: number, y: number]> {
  const box = await restingBox(page, drawn(id));
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** What the elevation shows of a thing. */
export const drawn = (id: string): string => `.drawing-host [data-of="${id}"]`;

/** Presses on a thing of the elevation, and waits until it is picked. */
export async function pickDrawn(page: Page, id: string): Promise<readonly [x: number, y: number]> {
  const middle = await middleOf(page, id);
  await page.mouse.click(...middle);
  await page
    .locator(`${drawn(id)}.picked`)
    .first()
    .waitFor();
  await soon(() => page.locator(".facts h2").textContent()).toBe(id);
  return middle;
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What shuts people out of a page as it stands, by axe-core: by all its rules, or by those of colour alone. */
export async function violations(page: Page, rules: "all" | "colour" = "all"): Promise<string[]> {
  // Findings of the facade before are faded until they are found anew.
  await page.locator("[aria-busy=true]").first().waitFor({ state: "detached" });
  // Run from outside the page, whose policy lets no foreign script in.
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axeSource);
  return page.evaluate(async (rules) => {
    const { axe } = window as unknown as {
      axe: {
        run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
      };
    };
    // What passes is not listed: on a drawing of thousands of elements that takes longer than the checks.
    const found = await axe.run({
      resultTypes: ["violations"],
      ...(rules === "colour"
        ? { runOnly: { type: "rule", values: ["color-contrast", "link-in-text-block"] } }
        : {}),
    });
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" | ")}`);
  }, rules);
}
