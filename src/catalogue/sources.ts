/** The documents that figures name. */
import { sourcesFile } from "./files.ts";
import type { Source } from "./schema/sources.ts";

export type { Source } from "./schema/sources.ts";

/** The document behind a source key, or undefined where no such key exists. */
export function source(key: string): Source | undefined {
  return Object.hasOwn(sourcesFile, key) ? sourcesFile[key] : undefined;
}

export function sourceKeys(): string[] {
  return Object.keys(sourcesFile);
}
