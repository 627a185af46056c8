// `npm run soak [part of a path …]`: the property and fault tests again, all or those named, with as many cases as a night allows.

import { ensureBuilt, ensureInstalled } from "./ensure.mjs";
import { runTool } from "./processes.mjs";
import { giveUp } from "./say.mjs";

await ensureInstalled();
if (!(await ensureBuilt())) giveUp("the build failed; nothing was tested.");
const named = process.argv.slice(2);
const parts = named.length > 0 ? named : ["test/property", "test/faults"];
const args = ["run", ...parts, "--testTimeout=3600000"];
const { code } = await runTool("vitest/vitest.mjs", args, { env: { OUTERLEAF_SOAK: "1" } });
process.exitCode = code;
