/** Where the documents of a project go when no folder is named: `out/` and the file's name without its endings. */
import { basename, join } from "node:path";

export function documentsFolder(file: string): string {
  const stem = basename(file).replace(/(?:\.outerleaf)?\.json$/i, "");
  return join("out", stem === "" ? "project" : stem);
}
