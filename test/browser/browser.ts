import { readlinkSync } from "node:fs";
import { join } from "node:path";
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium } from "playwright-core";
import { beforeAll, describe } from "vitest";
import { findChromium } from "../../scripts/chromium.mjs";

const program = process.env.OUTERLEAF_NO_BROWSER === "1" ? undefined : findChromium();

/** What keeps a browser quiet, and at work in a container that has no sandbox of its own. */
const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // A page lives for seconds here: compiling it for speed took a third of the whole run.
  "--js-flags=--no-maglev --no-turbofan",
];

/** Milliseconds for one test: the browser shares its cores with other tests, and none is a measure of speed. */
const LONG = 300_000;

/** One browser for all files that run in this process, which takes it along when it ends. */
let launched: Promise<Browser> | undefined;

/**
 * A group of tests that need a browser: one is open from before its first test on.
 * Where there is none the group is reported as skipped, and its name says why.
 */
export function describeInBrowser(name: string, tests: (browser: () => Browser) => void): void {
  if (program === undefined) {
    describe.skipIf(true)(`${name} (skipped: no Chromium here)`, () => tests(unopened));
    return;
  }
  describe(name, { timeout: LONG }, () => {
    let browser: Browser | undefined;
    beforeAll(async () => {
      launched ??= chromium.launch({ executablePath: program, args: flags });
      browser = await launched;
    });
    tests(() => browser ?? unopened());
  });
}

/** A browser of its own that keeps what it knows in a folder: closed and opened again, it is the same phone. */
export function openPhone(folder: string, options: BrowserContextOptions): Promise<BrowserContext> {
  const executablePath = program ?? unopened();
  return chromium.launchPersistentContext(folder, { executablePath, args: flags, ...options });
}

/** Ends a phone's browser as an empty battery does: nothing in it is asked first. Its process stands in the lock of its folder. */
export async function killPhone(folder: string, phone: BrowserContext): Promise<void> {
  const pid = Number(readlinkSync(join(folder, "SingletonLock")).split("-").at(-1));
  const gone = phone.waitForEvent("close");
  process.kill(pid, "SIGKILL");
  await gone;
}

function unopened(): never {
  throw new Error("the browser is open only while a test runs");
}
