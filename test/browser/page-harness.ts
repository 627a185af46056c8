/** The built page, served by our own server, in a browser that reports every word of complaint. */
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { diskFiles } from "../../src/server/files.ts";
import { type Serving, serve } from "../../src/server/serve.ts";

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** Serves one of the examples with the documents of a folder. */
export async function serveExample(
  example: string,
  { documentsDir = at("examples") }: { documentsDir?: string } = {},
): Promise<Serving> {
  const serving = await serve({
    files: diskFiles,
    projectFile: at(`examples/${example}.outerleaf.json`),
    documentsDir,
    webDir: at("dist/web"),
    port: 0,
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
