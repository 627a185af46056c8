/** The page on loopback, from its start until the reader stops it. */
import { join, resolve } from "node:path";
import { printProject } from "../project/print.ts";
import { type FoundCertificate, givenCertificate, ownCertificate } from "../server/certificate.ts";
import { diskFiles, type Files } from "../server/files.ts";
import { asInHeader, serveLan } from "../server/lan.ts";
import { liveNews } from "../server/live.ts";
import { outsideAddresses, ownHosts } from "../server/own-hosts.ts";
import { serve } from "../server/serve.ts";
import { openStore } from "../store/open.ts";
import { type Message, message } from "../text/message.ts";
import { type Reader, say } from "../text/say.ts";
import { isRefusal, type Refusal } from "./answer.ts";
import type { Job } from "./job.ts";
import { openProject } from "./open-project.ts";
import { storeFolderOf } from "./store.ts";
import { VERSION } from "./version.ts";

/** Where the page is when no port is named. */
const USUAL_PORT = 4170;

/** Where phones find it when no port is named: the next one. */
export const LAN_PORT = USUAL_PORT + 1;

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
  const certificate = options.lan ? certificateFor(job) : undefined;
  if (certificate?.ok === false) return { refused: certificate.says };
  const opened = await openStore(storeFolderOf(job));
  if (certificate && !opened.ok) {
    return { refused: message("cli.refused.no-store", { why: opened.says }) };
  }
  const live = liveNews();
  const common = {
    live,
    version: VERSION,
    files: options.edit === undefined ? diskFiles : edited(job, file, projectFile),
    projectFile,
    documentsDir: resolve(io.cwd, documents),
    webDir: join(io.root, "dist", "web"),
    ...(opened.ok ? { store: opened.store } : {}),
    // A what-if is a project of its own.
    ...(options.edit === undefined ? {} : { keptAs: `${projectFile}\n${resolve(io.cwd, options.edit)}` }),
  };
  const hosts = ownHosts();
  const lan =
    certificate && (await serveLan({ ...common, certificate, hosts, port: port === 0 ? 0 : port + 1 }));
  const outside = lan && `https://${asInHeader(outsideAddresses()[0] ?? "localhost")}:${lan.port}`;
  const serving =
    certificate && !lan
      ? undefined
      : await serve({ ...common, port, ...(outside === undefined ? {} : { outside }) });
  const closeStore = (): void => {
    if (opened.ok) opened.store.close();
  };
  if (serving === undefined) {
    await lan?.close();
    closeStore();
    return {
      refused: message("cli.refused.no-port", { port: String(port) }),
      hint: message("cli.hint.port"),
    };
  }
  const untilStopped = new Promise<void>((stopped) => {
    const release = io.onStop(() => {
      release();
      void Promise.all([serving.close(), lan?.close()]).then(() => {
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
  const phones =
    outside === undefined || certificate === undefined
      ? []
      : [
          message("page.server.phones", { url: outside }),
          message("page.server.fingerprint", { fingerprint: certificate.fingerprint }),
        ];
  return { url: serving.url, says: [...serving.says, ...phones, ...kept], untilStopped };
}

/** The reader's own certificate, or the one that is made here. */
function certificateFor(job: Job): FoundCertificate {
  const { certificate, key } = job.options;
  if (certificate === undefined && key === undefined) {
    const folder = storeFolderOf(job);
    return { ok: true, ...ownCertificate({ folder, hosts: ownHosts(), now: new Date() }) };
  }
  if (certificate === undefined || key === undefined)
    return { ok: false, says: message("cli.refused.half-pem") };
  return givenCertificate({ certificate: resolve(job.io.cwd, certificate), key: resolve(job.io.cwd, key) });
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
