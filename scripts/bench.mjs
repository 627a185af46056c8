// `npm run bench [name …]`: each bench on its own, one after another, so that none disturbs another's time or memory.

import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { ensureInstalled } from "./ensure.mjs";
import { root, run } from "./processes.mjs";
import { giveUp, say } from "./say.mjs";

await ensureInstalled();
const wanted = process.argv.slice(2);
const folder = join(root, "bench");
const benches = (existsSync(folder) ? readdirSync(folder) : [])
  .filter((name) => name.endsWith(".bench.ts"))
  .filter((name) => wanted.length === 0 || wanted.some((word) => name.includes(word)))
  .sort();
if (benches.length === 0)
  giveUp(`no bench is called ${wanted.join(" or ") || "*.bench.ts"}; they live in bench/.`);

for (const bench of benches) {
  say(`\n${bench}`);
  const { code } = await run(process.execPath, ["--expose-gc", "--import", "tsx", join("bench", bench)]);
  if (code !== 0) process.exitCode = 1;
}
