// `npm run bench [name …] [-- --option …]`: each bench on its own, one after another, so that none disturbs another's time or memory. A bench is
// bundled as the command line is, since that is what users wait for: the loader that tests run under wraps every function.

import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { ensureInstalled } from "./ensure.mjs";
import { root, run } from "./processes.mjs";
import { giveUp, say } from "./say.mjs";

await ensureInstalled();
const words = process.argv.slice(2);
const firstOption = words.findIndex((word) => word.startsWith("--"));
const wanted = firstOption < 0 ? words : words.slice(0, firstOption);
/** From the first that begins with two dashes on: for the benches themselves. */
const options = words.slice(wanted.length);
const folder = join(root, "bench");
/** Beside `bench`, so that a path relative to a bench stays what it is. */
const BUNDLES = ".bench";

/** @param {string} bench */
async function bundle(bench) {
  const { build } = await import("vite");
  await build({
    configFile: join(root, "vite.cli.config.ts"),
    root,
    logLevel: "warn",
    build: {
      ssr: join(folder, bench),
      outDir: BUNDLES,
      emptyOutDir: false,
      rolldownOptions: { output: { entryFileNames: "[name].js", codeSplitting: false } },
    },
  });
}

const benches = (existsSync(folder) ? readdirSync(folder) : [])
  .filter((name) => name.endsWith(".bench.ts"))
  .filter((name) => wanted.length === 0 || wanted.some((word) => name.includes(word)))
  .sort();
if (benches.length === 0)
  giveUp(`no bench is called ${wanted.join(" or ") || "*.bench.ts"}; they live in bench/.`);

for (const bench of benches) {
  say(`\n${bench}`);
  await bundle(bench);
  const { code } = await run(process.execPath, [
    "--expose-gc",
    join(BUNDLES, bench.replace(/ts$/, "js")),
    ...options,
  ]);
  if (code !== 0) process.exitCode = 1;
}
