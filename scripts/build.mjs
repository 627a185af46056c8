// `npm run build`: builds every part, up to date or not.

import { ensureBuilt, ensureInstalled } from "./ensure.mjs";
import { giveUp } from "./say.mjs";

await ensureInstalled();
if (!(await ensureBuilt({ always: true }))) giveUp("the build failed.");
