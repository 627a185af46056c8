// `npm run soak`: the property and fault tests again, with as many cases as a night allows.

import { ensureBuilt, ensureInstalled } from "./ensure.mjs";
import { runTool } from "./processes.mjs";
import { giveUp } from "./say.mjs";

await ensureInstalled();
if (!(await ensureBuilt())) giveUp("the build failed; nothing was tested.");
const args = ["run", "test/property", "test/faults", "--testTimeout=3600000", ...process.argv.slice(2)];
const { code } = await runTool("vitest/vitest.mjs", args, { env: { OUTERLEAF_SOAK: "1" } });
process.exitCode = code;
