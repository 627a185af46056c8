/** The page on loopback, from its start until the reader stops it. */
import { join, resolve } from "node:path";
import { printProject } from "../project/print.ts";
import { diskFiles, type Files } from "../server/files.ts";
import { serve } from "../server/serve.ts";
import { openStore } from "../store/open.ts";
import { type Message, message } from "../text/message.ts";
import { type Reader, say } from "../text/say.ts";
import { isRefusal, type Refusal } from "./answer.ts";
import type { Job } from "./job.ts";
import { openProject } from "./open-project.ts";

/** Where the page is when no port is named. */
const USUAL_PORT = 4170;

export interface ServingPage {
  readonly url: string;
  readonly says: readonly Message[];
  /** Ends when the reader asks to stop. */
  readonly untilStopped: Promise<void>;
}

export async function servePage(
  job: Job,
  { file, documents, reader }: { file: string; documents: string; reader: Reader },
): Promise<ServingPage | Refusal> {
  const { io, options } = job;
  const port = options.port ?? USUAL_PORT;
  const projectFile = resolve(io.cwd, file);
  const opened = await openStore(options.data === undefined ? io.dataFolder : resolve(io.cwd, options.data));
  const serving = await serve({
    files: options.edit === undefined ? diskFiles : edited(job, file, projectFile),
    projectFile,
    documentsDir: resolve(io.cwd, documents),
    webDir: join(io.root, "dist", "web"),
    port,
    ...(opened.ok ? { store: opened.store } : {}),
    // A what-if is a project of its own.
    ...(options.edit === undefined ? {} : { keptAs: `${projectFile}\n${resolve(io.cwd, options.edit)}` }),
  });
  const closeStore = (): void => {
    if (opened.ok) opened.store.close();
  };
  if (serving === undefined) {
    closeStore();
    return {
      refused: message("cli.refused.no-port", { port: String(port) }),
      hint: message("cli.hint.port"),
    };
  }
  const untilStopped = new Promise<void>((stopped) => {
    const release = io.onStop(() => {
      release();
      void serving.close().then(() => {
        closeStore();
        stopped();
      });
    });
  });
  if (!opened.ok) {
    job.clear();
    io.err(`${say(message("store.none", { why: opened.says }), reader)}\n`);
  }
  const kept = opened.ok ? [message("store.at", { file: opened.file })] : [];
  return { url: serving.url, says: [...serving.says, ...kept], untilStopped };
}

/** The disk, with the edit applied to the project each time it is read; a file that cannot be edited is given as it is. */
function edited(job: Job, file: string, projectFile: string): Files {
  return {
    ...diskFiles,
    read: async (path) => {
      if (path !== projectFile) return diskFiles.read(path);
      const opened = await openProject(job, file);
      return isRefusal(opened)
        ? diskFiles.read(path)
        : new TextEncoder().encode(printProject(opened.document));
    },
  };
}
