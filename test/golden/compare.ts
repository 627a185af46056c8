/** Comparing with committed files: a difference is written beside the old file, to be looked at. */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = dirname(fileURLToPath(import.meta.url));

/**
 * What is wrong with a drawing against its committed snapshot; undefined when nothing is. With `UPDATE_DRAWINGS=1` in
 * the environment the snapshot is replaced instead: look at it before committing it.
 */
export function differenceFromGolden(name: string, svg: string): string | undefined {
  const file = join(ROOT, "drawings", `${name}.svg`);
  const changed = join(ROOT, "drawings", `${name}.changed.svg`);
  if (process.env.UPDATE_DRAWINGS === "1") {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, svg);
  }
  if (existsSync(file) && readFileSync(file, "utf8") === svg) {
    rmSync(changed, { force: true });
    return undefined;
  }
  mkdirSync(dirname(changed), { recursive: true });
  writeFileSync(changed, svg);
  return `${name}.svg ${existsSync(file) ? "differs" : "is not there yet"}: look at drawings/${name}.changed.svg`;
}
