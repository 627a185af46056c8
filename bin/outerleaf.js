#!/usr/bin/env node
// Starts the built command line with plain Node.

import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";

const built = new URL("../dist/cli/main.js", import.meta.url);

if (existsSync(fileURLToPath(built))) {
  await import(built.href);
} else {
  process.stderr.write("Outerleaf is not built yet: run `npm start` or `npm run build` first.\n");
  process.exitCode = 2;
}
