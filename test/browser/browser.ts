import { type Browser, chromium } from "playwright-core";
import { afterAll, beforeAll, describe } from "vitest";
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
];

/**
 * A group of tests that need a browser: one is open from before its first test until after its last.
 * Where there is none the group is reported as skipped, and its name says why.
 */
export function describeInBrowser(name: string, tests: (browser: () => Browser) => void): void {
  if (program === undefined) {
    describe.skipIf(true)(`${name} (skipped: no Chromium here)`, () => tests(unopened));
    return;
  }
  describe(name, () => {
    let browser: Browser | undefined;
    beforeAll(async () => {
      browser = await chromium.launch({ executablePath: program, args: flags });
    });
    afterAll(() => browser?.close());
    tests(() => browser ?? unopened());
  });
}

function unopened(): never {
  throw new Error("the browser is open only while a test runs");
}
