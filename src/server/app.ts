/** The application: the page, the project file, the documents, and the projects that are kept. Files it only reads. */
import { basename, join } from "node:path";
import { Hono } from "hono";
import type { Store } from "../store/store.ts";
import { door } from "./access/door.ts";
import { joinPage } from "./access/join-page.ts";
import { accessRoutes } from "./access/routes.ts";
import { json, send, sha256 } from "./answers.ts";
import { apiDescription } from "./api/description.ts";
import { operationAt } from "./api/find.ts";
import { attachmentRoutes } from "./attachments.ts";
import type { Files } from "./files.ts";
import { type FileText, firstDesign } from "./first-design.ts";
import { type Live, liveNews } from "./live.ts";
import { isOwnHost, mediaType } from "./policy.ts";
import { projectRoutes } from "./projects.ts";
import { refuse } from "./refusals.ts";

export interface AppOptions {
  readonly files: Files;
  /** The project file; read anew for each request, so that a reload shows what was saved. */
  readonly projectFile: string;
  /** Folder of the written documents. */
  readonly documentsDir: string;
  /** Folder of the built page. */
  readonly webDir: string;
  /** None where the database could not be opened: the page then keeps edits by itself. */
  readonly store?: Store | undefined;
  /** The served project's edits are kept under an id made of this; its path unless told. */
  readonly keptAs?: string;
  readonly now?: () => Date;
  /** Shared by every listener of one program. */
  readonly live?: Live;
  /** The address that phones reach, such as https://192.0.2.7:4171; none while they are not let in. */
  readonly outside?: string;
  /** For the listener that phones reach: who asks must be signed in. Needs a store. */
  readonly guarded?: {
    /** The names and addresses of this machine, beside loopback. */
    readonly hosts: readonly string[];
  };
  readonly version?: string;
}

export interface DocumentsAnswer {
  readonly documents: readonly {
    readonly name: string;
    readonly bytes: number;
    readonly sha256: string;
  }[];
}

/** The header that names the id of the served project among those that are kept. */
export const KEPT_AS = "Outerleaf-Kept-As";

const PROJECTS = "/api/projects";
const ATTACHMENTS = "/api/attachments";

/** Below these something can be written; which methods an address takes is told by its own routes. */
const WRITTEN = [PROJECTS, ATTACHMENTS];

/** No address of ours comes near this length; longer ones are not looked at. */
const LONGEST_ADDRESS = 2048;

export function createApp({
  files,
  projectFile,
  documentsDir,
  webDir,
  store,
  keptAs = projectFile,
  now = () => new Date(),
  live = liveNews(),
  outside,
  guarded,
  version = "",
}: AppOptions): Hono {
  const app = new Hono();

  app.use(async (context, next) => {
    const request = context.req.raw;
    if (!isOwnHost(request.headers.get("host") ?? new URL(request.url).host, guarded?.hosts)) {
      return refuse("foreign-host", request);
    }
    if (request.url.length > LONGEST_ADDRESS) return refuse("address-too-long", request);
    const { path } = context.req;
    const writes = request.method !== "GET" && request.method !== "HEAD";
    const mayWrite =
      WRITTEN.some((kept) => `${path}/`.startsWith(`${kept}/`)) || operationAt(request.method, path);
    if (writes && !mayWrite) return refuse("method-not-allowed", request);
    return next();
  });

  if (guarded) {
    if (!store) throw new Error("who is signed in stands in the store");
    app.use(door({ people: store.people, now }));
    joinPage(app);
  }

  const designed = firstDesign();
  const served = { [KEPT_AS]: sha256(keptAs).slice(0, 24) };
  const project = async (): Promise<FileText | undefined> => {
    const bytes = await files.read(projectFile);
    // A byte that is no UTF-8 turns into U+FFFD, which reading the project reports as a finding.
    const text = bytes && new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
    return text === undefined ? undefined : { name: basename(projectFile), text };
  };

  app.get("/api/project", async (context) => {
    const file = await project();
    return file ? json(file, context.req.raw) : refuse("no-project", context.req.raw);
  });

  app.get("/api/design", async (context) => {
    const request = context.req.raw;
    const file = await project();
    return file
      ? send(designed(file), { request, type: mediaType("answer.json"), kind: "page", headers: served })
      : refuse("no-project", request);
  });

  if (store) {
    app.route(PROJECTS, projectRoutes({ store, now, live }));
    app.route(ATTACHMENTS, attachmentRoutes({ store, now }));
    app.route("/api", accessRoutes({ store, now, outside, guarded: guarded !== undefined }));
  } else {
    app.get(PROJECTS, (context) => json({ store: false, projects: [] }, context.req.raw));
    for (const kept of [`${PROJECTS}/*`, `${ATTACHMENTS}/*`]) {
      app.all(kept, (context) => refuse("no-store", context.req.raw));
    }
  }

  app.get("/api/openapi.json", (context) => json(apiDescription(version), context.req.raw));

  app.get("/api/documents", async (context) => {
    const documents: DocumentsAnswer["documents"][number][] = [];
    for (const { name } of await files.list(documentsDir)) {
      const bytes = await files.read(join(documentsDir, name));
      if (bytes) documents.push({ name, bytes: bytes.byteLength, sha256: sha256(bytes) });
    }
    return json({ documents } satisfies DocumentsAnswer, context.req.raw);
  });

  app.get("/documents/:name", async (context) => {
    const name = context.req.param("name");
    const known = (await files.list(documentsDir)).some((entry) => entry.name === name);
    const bytes = known ? await files.read(join(documentsDir, name)) : undefined;
    if (bytes === undefined) return refuse("not-found", context.req.raw);
    return send(bytes, { request: context.req.raw, type: mediaType(name), kind: "document" });
  });

  app.get("*", async (context) => {
    const name = context.req.path === "/" ? "index.html" : decoded(context.req.path.slice(1));
    // Only what the folder's own list holds can be asked for: a path that leads elsewhere is in no list.
    const known = (await files.list(webDir, true)).some((entry) => entry.name === name);
    const bytes = known && name ? await files.read(join(webDir, name)) : undefined;
    if (bytes === undefined || name === undefined) {
      return refuse(context.req.path === "/" ? "no-page" : "not-found", context.req.raw);
    }
    return send(bytes, {
      request: context.req.raw,
      type: mediaType(name),
      kind: "page",
      // Built files carry a hash of their content in their name.
      forever: name.startsWith("assets/"),
    });
  });

  app.onError((_, context) => refuse("cannot-answer", context.req.raw));
  return app;
}

function decoded(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}
