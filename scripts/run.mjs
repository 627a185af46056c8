// `npm start` and `npm run outerleaf -- …`: makes sure of the libraries and the build, then hands over to the command line.

import { ensureBuilt, ensureInstalled } from "./ensure.mjs";
import { giveUp } from "./say.mjs";

await ensureInstalled();
if (!(await ensureBuilt())) giveUp("the build failed; nothing was started.");
await import(new URL("../bin/outerleaf.js", import.meta.url).href);
