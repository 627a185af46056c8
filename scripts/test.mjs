// `npm test`: everything that must hold, and as its very last line how much of it did.

import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { ensureChromium } from "./chromium.mjs";
import { ensureBuilt, installInHalves } from "./ensure.mjs";
import { root, runTool } from "./processes.mjs";
import { say, seconds } from "./say.mjs";
import { countTests } from "./test-count.mjs";

const report = join(root, ".cache", "vitest.json");
const filters = process.argv.slice(2);
const began = performance.now();
const count = { passed: 0, failed: 0, skipped: 0 };

/** @param {string} name @param {boolean} held */
function step(name, held) {
  count[held ? "passed" : "failed"] += 1;
  say(`${held ? "passed" : "FAILED"}: ${name}\n`);
}

const { compiled } = await installInHalves();
const browser = await ensureChromium();
if (browser.path === undefined) process.env.OUTERLEAF_NO_BROWSER = "1";

step("build", await ensureBuilt());
step(
  "lint and format",
  (await runTool("@biomejs/biome/bin/biome", ["check", "--error-on-warnings"])).code === 0,
);
step("types", (await runTool("typescript/bin/tsc", ["-b"])).code === 0);

await compiled;
mkdirSync(join(root, ".cache"), { recursive: true });
rmSync(report, { force: true });
const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
const { code } = await runTool("vitest/vitest.mjs", ["run", ...reporters, ...filters]);
const tests = countTests(readReport(), code);
count.passed += tests.passed;
count.failed += tests.failed;
count.skipped += tests.skipped;

if (tests.passed + tests.failed === 0) say("No test ran at all, which counts as a failure.");
if (browser.path === undefined) say(`Browser tests were skipped: ${browser.reason}.`);
say(`Took ${seconds(performance.now() - began)}.`);

const failed = count.failed > 0 || tests.passed === 0;
const words = [`${count.passed} passed`, `${count.failed} failed`];
if (count.skipped > 0) words.push(`${count.skipped} skipped`);
process.exitCode = failed ? 1 : 0;
process.stdout.write(`${words.join(", ")}\n`);

/** @returns {unknown} undefined where the run ended before it could report */
function readReport() {
  try {
    return JSON.parse(readFileSync(report, "utf8"));
  } catch {
    return undefined;
  }
}
