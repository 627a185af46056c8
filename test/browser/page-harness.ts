/** The built page, served by our own server, in a browser that reports every word of complaint. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
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
  }: { documentsDir?: string; store?: Store; port?: number; projectFile?: string } = {},
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

export async function openPage(
  browser: Browser,
  { url }: Serving,
  options: BrowserContextOptions = {},
): Promise<OpenPage> {
  const context = await browser.newContext({ viewport: { width: 1680, height: 1050 }, ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.goto(url);
  await page.locator(DRAWN).first().waitFor();
  return { page, complaints, close: () => context.close() };
}

/** Something of the project on the drawing: the sheet can be used. */
export const DRAWN = ".drawing-host [data-of]";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What shuts people out of a page as it stands, by axe-core. */
export async function violations(page: Page): Promise<string[]> {
  // Run from outside the page, whose policy lets no foreign script in.
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: {
        run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
      };
    };
    // What passes is not listed: on a drawing of thousands of elements that takes longer than the checks.
    const found = await axe.run({ resultTypes: ["violations"] });
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" | ")}`);
  });
}
