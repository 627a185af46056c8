/** What the server needs of a disk, so that tests can stand in for it. Nothing here writes. */
import { lstat, readdir, readFile } from "node:fs/promises";
import { join } from "node:path";

export interface FileEntry {
  /** Path below the folder, with forward slashes. */
  readonly name: string;
  readonly bytes: number;
}

export interface Files {
  /** The bytes of a file, or undefined where there is none that can be read. */
  read(path: string): Promise<Uint8Array | undefined>;
  /** The plain files of a folder by name, `deep` with those of its folders; empty where there is no such folder. */
  list(folder: string, deep?: boolean): Promise<readonly FileEntry[]>;
}

/** The disk of this machine. Links are left out, so that nothing outside a folder can be reached through it. */
export const diskFiles: Files = {
  async read(path) {
    try {
      return await readFile(path);
    } catch {
      return undefined;
    }
  },
  async list(folder, deep = false) {
    const found: FileEntry[] = [];
    await collect(folder, { below: "", deep, found });
    return found.sort((a, b) => (a.name < b.name ? -1 : 1));
  },
};

async function collect(
  folder: string,
  { below, deep, found }: { below: string; deep: boolean; found: FileEntry[] },
): Promise<void> {
  let names: string[];
  try {
    names = await readdir(join(folder, below));
  } catch {
    return;
  }
  for (const name of names) {
    if (name.startsWith(".")) continue;
    const path = below === "" ? name : `${below}/${name}`;
    const info = await lstat(join(folder, path)).catch(() => undefined);
    if (info?.isFile()) found.push({ name: path, bytes: info.size });
    else if (deep && info?.isDirectory()) await collect(folder, { below: path, deep, found });
  }
}
