/** The application: the page, the project file, the documents. It reads and never writes. */
import { createHash } from "node:crypto";
import { basename, join } from "node:path";
import { Hono } from "hono";
import type { Files } from "./files.ts";
import { type FileText, firstDesign } from "./first-design.ts";
import { isOwnHost, mediaType, policyHeaders } from "./policy.ts";
import { refuse } from "./refusals.ts";

export interface AppOptions {
  readonly files: Files;
  /** The project file; read anew for each request, so that a reload shows what was saved. */
  readonly projectFile: string;
  /** Folder of the written documents. */
  readonly documentsDir: string;
  /** Folder of the built page. */
  readonly webDir: string;
}

export interface DocumentsAnswer {
  readonly documents: readonly {
    readonly name: string;
    readonly bytes: number;
    readonly sha256: string;
  }[];
}

/** No address of ours comes near this length; longer ones are not looked at. */
const LONGEST_ADDRESS = 2048;

export function createApp({ files, projectFile, documentsDir, webDir }: AppOptions): Hono {
  const app = new Hono();

  app.use(async (context, next) => {
    const request = context.req.raw;
    if (!isOwnHost(request.headers.get("host") ?? new URL(request.url).host)) {
      return refuse("foreign-host", request);
    }
    if (request.url.length > LONGEST_ADDRESS) return refuse("address-too-long", request);
    if (request.method !== "GET" && request.method !== "HEAD") return refuse("method-not-allowed", request);
    return next();
  });

  const designed = firstDesign();
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
      ? send(designed(file), { request, type: mediaType("answer.json"), kind: "page" })
      : refuse("no-project", request);
  });

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

function sha256(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

function json(value: unknown, request: Request): Response {
  const bytes = new TextEncoder().encode(`${JSON.stringify(value)}\n`);
  return send(bytes, { request, type: mediaType("answer.json"), kind: "page" });
}

function send(
  bytes: Uint8Array,
  {
    request,
    type,
    kind,
    forever = false,
  }: { request: Request; type: string; kind: "page" | "document"; forever?: boolean },
): Response {
  const etag = `"${sha256(bytes).slice(0, 32)}"`;
  const headers = {
    ...policyHeaders(kind),
    ETag: etag,
    "Cache-Control": forever ? "public, max-age=31536000, immutable" : "no-cache",
  };
  const held = request.headers.get("if-none-match")?.split(",") ?? [];
  if (held.some((one) => one.trim().replace(/^W\//, "") === etag)) {
    return new Response(null, { status: 304, headers });
  }
  // A copy, because a view into a shared buffer is no body.
  return new Response(request.method === "HEAD" ? null : Uint8Array.from(bytes), {
    headers: { ...headers, "Content-Type": type, "Content-Length": String(bytes.byteLength) },
  });
}
