import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The top folder of the checkout. */
export const checkout = fileURLToPath(new URL("../../", import.meta.url));

const configurations = [
  "package.json",
  "tsconfig.base.json",
  "tsconfig.core.json",
  "tsconfig.web.json",
  "tsconfig.node.json",
];

/**
 * Calls `use` with a folder outside the checkout that holds our configurations and the given files, and removes it afterwards.
 * Rules can be seen to refuse something there without touching the real sources.
 */
export async function withPlantedTree<T>(
  files: Record<string, string>,
  use: (tree: string) => T,
): Promise<Awaited<T>> {
  const tree = realpathSync(mkdtempSync(join(tmpdir(), "outerleaf-planted-")));
  try {
    for (const name of configurations) copyFileSync(join(checkout, name), join(tree, name));
    symlinkSync(join(checkout, "node_modules"), join(tree, "node_modules"), "junction");
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(tree, path)), { recursive: true });
      writeFileSync(join(tree, path), text);
    }
    return await use(tree);
  } finally {
    rmSync(tree, { recursive: true, force: true });
  }
}
