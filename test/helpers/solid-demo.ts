/** The demo as its file has it, designed once for the tests that look at it from all sides. */
import { readFileSync } from "node:fs";
import { designFile } from "../../src/design.ts";

const text = readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8");
const made = designFile({ name: "demo", text });
if (made.kind !== "designed") throw new Error("the demo reads");

export const solidDemo = made.design;
