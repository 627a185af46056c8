/** The built page with a project, the demo unless told, served, with a browser to open it in. */
import { fileURLToPath } from "node:url";
import { type Browser, chromium } from "playwright-core";
import { findChromium } from "../scripts/chromium.mjs";
import { diskFiles } from "../src/server/files.ts";
import { type Serving, serve } from "../src/server/serve.ts";
import type { Store } from "../src/store/store.ts";

const at = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

export async function servedPage(
  projectFile = at("examples/atelier-bouleau.outerleaf.json"),
  store?: Store,
): Promise<{ serving: Serving; browser: Browser }> {
  const serving = await serve({
    files: diskFiles,
    projectFile,
    documentsDir: at("examples"),
    webDir: at("dist/web"),
    port: 0,
    store,
  });
  const executablePath = findChromium();
  if (!serving || !executablePath) throw new Error("the bench needs a free port and Chromium");
  return { serving, browser: await chromium.launch({ executablePath, args: ["--no-sandbox"] }) };
}
