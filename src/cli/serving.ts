/** The page on loopback, from its start until the reader stops it. */
import { join, resolve } from "node:path";
import { printProject } from "../project/print.ts";
import { diskFiles, type Files } from "../server/files.ts";
import { serve } from "../server/serve.ts";
import { type Message, message } from "../text/message.ts";
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
  { file, documents }: { file: string; documents: string },
): Promise<ServingPage | Refusal> {
  const { io, options } = job;
  const port = options.port ?? USUAL_PORT;
  const projectFile = resolve(io.cwd, file);
  const serving = await serve({
    files: options.edit === undefined ? diskFiles : edited(job, file, projectFile),
    projectFile,
    documentsDir: resolve(io.cwd, documents),
    webDir: join(io.root, "dist", "web"),
    port,
  });
  if (serving === undefined) {
    return {
      refused: message("cli.refused.no-port", { port: String(port) }),
      hint: message("cli.hint.port"),
    };
  }
  const untilStopped = new Promise<void>((stopped) => {
    const release = io.onStop(() => {
      release();
      void serving.close().then(stopped);
    });
  });
  return { url: serving.url, says: serving.says, untilStopped };
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
