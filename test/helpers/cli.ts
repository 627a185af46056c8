/** Runs the command line in this process, in a folder of its own. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Io } from "../../src/cli/io.ts";
import { run } from "../../src/cli/run.ts";

export const checkout = fileURLToPath(new URL("../../", import.meta.url));

export const EXAMPLES = ["atelier-bouleau", "imperial", "l-plan", "porch", "two-storey"].map(
  (name) => `${name}.outerleaf.json`,
);

export interface Ran {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
}

export interface Bench {
  readonly folder: string;
  /** Runs one command line given as its words. */
  readonly run: (...argv: string[]) => Promise<Ran>;
  /** Runs a command that serves; once it has printed its address and `meanwhile` is done, it is stopped as by Ctrl-C. */
  readonly serve: (
    meanwhile: (url: string) => Promise<unknown>,
    ...argv: string[]
  ) => Promise<Ran & { url: string }>;
  readonly write: (name: string, content: unknown) => string;
  readonly read: (name: string) => string;
  readonly bytes: (name: string) => Buffer;
  /** Names in the folder or one below it, hidden ones too. */
  readonly names: (below?: string) => string[];
  readonly clear: () => void;
}

/** A fresh folder that holds the examples. */
export function bench(io: Partial<Io> = {}): Bench {
  const folder = mkdtempSync(join(tmpdir(), "outerleaf-cli-"));
  for (const name of EXAMPLES) cpSync(join(checkout, "examples", name), join(folder, name));
  const runWith = async (argv: readonly string[], printed?: (out: string, stop: () => void) => void) => {
    let out = "";
    let err = "";
    const stops = new Set<() => void>();
    const stopAll = (): void => {
      for (const stop of stops) stop();
    };
    const exit = await run(argv, {
      out: (text) => {
        out += text;
        printed?.(out, stopAll);
      },
      err: (text) => {
        err += text;
      },
      watched: false,
      cwd: folder,
      root: checkout,
      program: async () => "the program under test",
      dataFolder: join(folder, ".data"),
      language: undefined,
      onStop: (stop) => {
        stops.add(stop);
        return () => stops.delete(stop);
      },
      ...io,
    });
    return { exit, out, err };
  };
  return {
    folder,
    run: (...argv) => runWith(argv),
    serve: async (meanwhile, ...argv) => {
      let url = "";
      const ran = await runWith(argv, (out, stop) => {
        url = /http:\/\/[^\s"]+/.exec(out)?.[0] ?? "";
        // The command begins to listen for the wish to stop once it has printed.
        if (url !== "") setTimeout(() => meanwhile(url).finally(stop), 0);
      });
      return { ...ran, url };
    },
    write: (name, content) => {
      writeFileSync(join(folder, name), typeof content === "string" ? content : JSON.stringify(content));
      return name;
    },
    read: (name) => readFileSync(join(folder, name), "utf8"),
    bytes: (name) => readFileSync(join(folder, name)),
    names: (below = ".") => readdirSync(join(folder, below)).sort(),
    clear: () => rmSync(folder, { recursive: true, force: true }),
  };
}
