/** The program as it is started: joins the command line to the process. */
import { homedir } from "node:os";
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { dataFolder } from "../store/data-folder.ts";
import type { Language } from "../text/catalogue.ts";
import { run } from "./run.ts";
import { programSum } from "./sums.ts";

// Built or not, this file lies two folders below the top.
const root = resolve(dirname(fileURLToPath(import.meta.url)), "../..");

/** The system's language by POSIX's variables, the first that is set; none of ours is none. */
function systemLanguage(): Language | undefined {
  const { LC_ALL, LC_MESSAGES, LANG } = process.env;
  const set = [LC_ALL, LC_MESSAGES, LANG].find((value) => value !== undefined && value !== "");
  return set?.startsWith("fr") ? "fr" : undefined;
}

// A reader that closes early, such as `head`, is no error of ours.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

const SIGNALS = ["SIGINT", "SIGTERM"] as const;

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  watched: process.stderr.isTTY === true,
  cwd: process.cwd(),
  root,
  program: () => programSum(dirname(fileURLToPath(import.meta.url))),
  dataFolder: resolve(dataFolder({ platform: process.platform, env: process.env, home: homedir() })),
  language: systemLanguage(),
  onStop: (stop) => {
    for (const signal of SIGNALS) process.once(signal, stop);
    return () => {
      for (const signal of SIGNALS) process.off(signal, stop);
    };
  },
});
