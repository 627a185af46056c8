/** Sums over bytes and over the program. */
import { createHash } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";

/** In hexadecimal. */
export function sha256(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

/** Over every script of the built program; undefined where it runs from its sources. */
export async function programSum(folder: string): Promise<string | undefined> {
  const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith(".js")).sort();
  if (!names.includes("main.js")) return undefined;
  const sum = createHash("sha256");
  for (const name of names) sum.update(name).update(await readFile(join(folder, name)));
  return sum.digest("hex");
}
