// `npm run docs`: makes every page and schema that comes from the code and the data, and lays them out as the formatter
// would. A test holds each of them to its source, so this is run when one of those tests asks for it.

import { mkdirSync, writeFileSync } from "node:fs";
import { equationPages } from "./docs-equations.ts";
import { apiDescriptionFile } from "./docs-openapi.ts";
import { projectSchemaFile } from "./docs-schema.ts";
import { commandSchemaFiles } from "./docs-schemas-cli.ts";
import { sourcesPage } from "./docs-sources.ts";
import { root, runTool } from "./processes.mjs";
import { giveUp, say } from "./say.mjs";

const files: Readonly<Record<string, string>> = {
  "docs/sources.md": sourcesPage(),
  ...Object.fromEntries(
    Object.entries(equationPages()).map(([name, text]) => [`docs/equations/${name}`, text]),
  ),
  "docs/openapi.json": apiDescriptionFile(),
  "schemas/project.schema.json": projectSchemaFile(),
  ...Object.fromEntries(
    Object.entries(commandSchemaFiles()).map(([name, text]) => [`schemas/${name}`, text]),
  ),
};

mkdirSync(`${root}docs/equations`, { recursive: true });
for (const [path, text] of Object.entries(files)) writeFileSync(`${root}${path}`, text);
const formatted = Object.keys(files).filter((path) => path.endsWith(".json"));
const { code } = await runTool("@biomejs/biome/bin/biome", ["format", "--write", ...formatted], {
  keep: true,
});
if (code !== 0) giveUp("the formatter refused what was made; look at `npx biome format schemas docs`.");
say(`Made ${Object.keys(files).length} files.`);
